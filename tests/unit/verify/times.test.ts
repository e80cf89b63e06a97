import { test } from 'vitest'
import { activity, cook, mode, placed, problem, schedule } from '#tests/support/small-problem.ts'
import { expectRule } from './broken.ts'

const ann = cook('ann')

test('H1 every activity is placed once or left out, and nothing else is', () => {
  const evening = problem({
    activities: [activity('peel', mode('leave', 4)), activity('rest', mode('leave', 6))],
  })
  const [peel, rest] = [placed('peel', 0, 4), placed('rest', 5, 11)]
  const left = [{ activity: 'rest', because: 'no-kit' as const }]
  expectRule(evening, schedule([peel, rest]), [
    [schedule([peel]), 'H1 missing rest'],
    [schedule([peel, rest], { left }), 'H1 twice rest'],
    [schedule([peel, rest, placed('stew', 20, 30)]), 'H1 unknown stew'],
    [schedule([rest, peel]), 'H1 order peel'],
    [schedule([peel, { ...rest, mode: 1 }]), 'H1 unknown rest'],
  ])
  expectRule(evening, schedule([peel], { left }), [])
})

test('H1 a fact is placed, in the mode last told', () => {
  const started = { kind: 'running', start: 2, atLeast: 4 } as const
  const evening = problem({
    now: 3,
    activities: [{ ...activity('rest', mode('leave', 4), { fact: started }), modes: [mode('leave', 6), mode('leave', 4)] }],
    previous: [{ activity: 'rest', start: 2, mode: 1, cooks: [], frozen: false }],
  })
  expectRule(evening, schedule([placed('rest', 2, 6, { mode: 1 })]), [
    [schedule([placed('rest', 2, 6, { mode: 0 })]), 'H1 moved rest'],
    [schedule([], { left: [{ activity: 'rest', because: 'safety' }] }), 'H1 missing rest'],
  ])
})

test('H2 a planned activity lies in the horizon and its own window, and starts no earlier than now', () => {
  const evening = problem({
    horizon: { from: 10, to: 50 },
    now: 14,
    activities: [activity('chill', mode('leave', 6), { from: 12, to: 40 }), activity('soak', mode('leave', 6))],
  })
  const [chill, soak] = [placed('chill', 14, 20), placed('soak', 44, 50)]
  expectRule(evening, schedule([chill, soak]), [
    [schedule([placed('chill', 13, 19), soak]), 'H2 early chill'],
    [schedule([placed('chill', 35, 41), soak]), 'H2 late chill'],
    [schedule([chill, placed('soak', 45, 51)]), 'H2 late soak'],
  ])
})

test('H3 a length is that of the mode, stretched by the slowest cook or by choice', () => {
  const evening = problem({
    cooks: [ann, cook('bo', { pace: 1.1 })],
    activities: [
      activity('knead', mode('hands-on', 10, { cooks: 2 })),
      activity('prove', mode('leave', 10, { upTo: 14 })),
      activity('watch', mode('eye', 10)),
    ],
  })
  const knead = placed('knead', 0, 11, { cooks: ['ann', 'bo'] })
  const prove = placed('prove', 20, 34)
  const watch = placed('watch', 40, 50, { cooks: ['bo'] })
  expectRule(evening, schedule([knead, prove, watch]), [
    [schedule([{ ...knead, end: 12 }, prove, watch]), 'H3 length knead'],
    [schedule([{ ...knead, end: 10 }, prove, watch]), 'H3 length knead'],
    [schedule([knead, { ...prove, end: 35 }, watch]), 'H3 length prove'],
    [schedule([knead, { ...prove, end: 29 }, watch]), 'H3 length prove'],
    [schedule([knead, prove, { ...watch, end: 51 }]), 'H3 length watch'],
  ])
})

test('H3 a fact keeps its start, and what is running ends no earlier than now and than it must', () => {
  const evening = problem({
    now: 20,
    activities: [
      activity('soup', mode('leave', 5), { fact: { kind: 'done', start: 3, end: 9 } }),
      activity('stew', mode('leave', 5), { fact: { kind: 'running', start: 12, atLeast: 11 } }),
      activity('stock', mode('leave', 5, { upTo: 15 }), { fact: { kind: 'running', start: 10, atLeast: 5 } }),
    ],
  })
  const [soup, stock, stew] = [placed('soup', 3, 9), placed('stock', 10, 25), placed('stew', 12, 23)]
  expectRule(evening, schedule([soup, stock, stew]), [
    [schedule([placed('soup', 4, 10), stock, stew]), 'H3 moved soup'],
    [schedule([placed('soup', 3, 8), stock, stew]), 'H3 length soup'],
    [schedule([soup, stock, placed('stew', 12, 22)]), 'H3 length stew'],
    [schedule([soup, placed('stock', 10, 19), stew]), 'H3 length stock'],
    [schedule([soup, placed('stock', 10, 26), stew]), 'H3 length stock'],
  ])
})
