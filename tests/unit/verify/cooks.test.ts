import { test } from 'vitest'
import type { Activity } from '#lib/scheduling/problem.ts'
import { activity, cook, mode, placed, problem, schedule } from '#tests/support/small-problem.ts'
import { expectRule } from './broken.ts'

const [ann, bo, cy] = [cook('ann'), cook('bo'), cook('cy')]

test('H6 as many different cooks as the mode asks, those who claimed it first', () => {
  const evening = (claimed: string[], care: 'hands-on' | 'eye' | 'leave' = 'hands-on') =>
    problem({ cooks: [ann, bo, cy], activities: [activity('plate', mode(care, 5, { cooks: 2 }), { claimed })] })
  const by = (...cooks: string[]) => schedule([placed('plate', 0, 5, { cooks })])
  expectRule(evening([]), by('ann', 'cy'), [
    [by('ann'), 'H6 crowd plate'],
    [by('ann', 'ann'), 'H6 crowd plate'],
    [by('ann', 'bo', 'cy'), 'H6 crowd plate'],
    [by('ann', 'dee'), 'H6 unknown plate'],
  ])
  expectRule(evening(['bo']), by('ann', 'bo'), [[by('ann', 'cy'), 'H6 unclaimed plate']])
  expectRule(evening(['cy', 'bo', 'ann']), by('bo', 'cy'), [[by('ann', 'cy'), 'H6 unclaimed plate']])
  expectRule(evening(['cy', 'bo'], 'eye'), by('cy'), [
    [by('bo'), 'H6 unclaimed plate'],
    [by('cy', 'bo'), 'H6 crowd plate'],
  ])
  expectRule(evening([], 'leave'), by(), [[by('ann'), 'H6 crowd plate']])
})

test('H6 a fact was done by whoever did it', () => {
  const fact = { kind: 'done', start: 0, end: 5, cooks: ['bo'] } as const
  const evening = problem({ cooks: [ann, bo], activities: [activity('plate', mode('hands-on', 5, { cooks: 2 }), { fact })] })
  expectRule(evening, schedule([placed('plate', 0, 5, { cooks: ['bo'] })]), [
    [schedule([placed('plate', 0, 5, { cooks: ['ann'] })]), 'H6 moved plate'],
  ])
})

test('H7 a cook does one hands-on thing at a time, touches among them', () => {
  const roast = activity('roast', mode('leave', 20, { touches: [{ when: { every: 10 }, takes: 2, lateBy: 5 }] }))
  const evening = problem({ cooks: [ann, bo], activities: [activity('chop', mode('hands-on', 6)), roast] })
  const at = (chop: number, touch: number, by = 'ann') =>
    schedule([
      placed('roast', 0, 20, { touches: [{ touch: 0, at: touch, cook: by }] }),
      placed('chop', chop, chop + 6, { cooks: ['ann'] }),
    ])
  expectRule(evening, at(4, 10), [[at(5, 10), 'H7 overlap roast,chop']])
  expectRule(evening, at(5, 11), [])
  expectRule(evening, at(5, 10, 'bo'), [])
})

test('H7 H20 what is carried in one hole between presences is one trip, and leaves at one moment', () => {
  const car = cook('ann', {
    presence: [
      { place: 'mill', from: 0, to: 20 },
      { place: 'home', from: 50, to: 80 },
    ],
  })
  const carry = (id: string): Activity =>
    activity(id, mode('hands-on', 20), { place: 'mill', at: 'outside', road: { to: 'home' } })
  const evening = problem({ cooks: [car], activities: [carry('pie'), carry('tart')] })
  const trip = (tart: number) =>
    schedule([placed('pie', 22, 42, { cooks: ['ann'] }), placed('tart', tart, tart + 20, { cooks: ['ann'] })])
  expectRule(evening, trip(22), [
    [trip(25), 'H20 apart pie,tart'],
    [trip(29), 'H20 apart pie,tart'],
  ])
  const homely = problem({
    cooks: [ann],
    activities: [activity('pie', mode('hands-on', 20)), activity('tart', mode('hands-on', 20))],
  })
  expectRule(homely, trip(42), [[trip(25), 'H7 overlap pie,tart']])
})

test('H8 a cook who keeps an eye on something stays in that spot and does short things only', () => {
  const elsewhere = (id: string, at: Activity['at']) => activity(id, mode('hands-on', 4), { at })
  const watch = activity('watch', mode('eye', 60))
  const evening = (...others: Activity[]) => problem({ cooks: [ann, bo], activities: [watch, ...others] })
  const doing = (id: string, length: number, by: string) =>
    schedule([placed('watch', 0, 60, { cooks: ['ann'] }), placed(id, 10, 10 + length, { cooks: [by] })])
  expectRule(evening(activity('chop', mode('hands-on', 20))), doing('chop', 20, 'ann'), [])
  expectRule(evening(activity('chop', mode('hands-on', 21))), doing('chop', 21, 'bo'), [
    [doing('chop', 21, 'ann'), 'H8 too-long watch,chop'],
  ])
  expectRule(evening(elsewhere('lay', 'table')), doing('lay', 4, 'bo'), [[doing('lay', 4, 'ann'), 'H8 elsewhere watch,lay']])
  expectRule(evening(activity('stir', mode('eye', 40))), doing('stir', 40, 'ann'), [])
  const eyeAtTable = activity('carve', mode('eye', 40), { at: 'table' })
  expectRule(evening(eyeAtTable), doing('carve', 40, 'bo'), [[doing('carve', 40, 'ann'), 'H8 elsewhere watch,carve']])
})

test('H9 what is attended or touched lies in one presence of the cook there', () => {
  const twice = cook('ann', {
    presence: [
      { place: 'home', from: 0, to: 20 },
      { place: 'home', from: 20, to: 40 },
    ],
  })
  const roast = activity('roast', mode('leave', 30, { touches: [{ when: 'out', takes: 2, lateBy: 10 }] }))
  const evening = problem({ cooks: [twice], activities: [roast, activity('chop', mode('hands-on', 6))] })
  const at = (chop: number, out: number) =>
    schedule([
      placed('roast', 2, 32, { touches: [{ touch: 0, at: out, cook: 'ann' }] }),
      placed('chop', chop, chop + 6, { cooks: ['ann'] }),
    ])
  expectRule(evening, at(14, 38), [
    [at(15, 38), 'H9 absent chop'],
    [at(20, 39), 'H9 absent roast'],
  ])
  const far = problem({ ...evening, activities: [roast, activity('chop', mode('hands-on', 6), { place: 'mill' })] })
  expectRule(
    problem({ ...far, cooks: [cook('ann', { presence: [{ place: 'home', from: 0, to: 50 }] })] }),
    schedule([placed('roast', 2, 32, { touches: [{ touch: 0, at: 30, cook: 'ann' }] })], {
      left: [{ activity: 'chop', because: 'no-cook' }],
    }),
    [[at(20, 38), 'H9 absent chop']],
  )
})

test('H9 what is carried lies between a presence where it was made and the next one, where it goes', () => {
  const car = (next: string) =>
    cook('ann', {
      presence: [
        { place: 'mill', from: 0, to: 20 },
        { place: next, from: 50, to: 80 },
        { place: 'home', from: 90, to: 99 },
      ],
    })
  const pie = activity('pie', mode('hands-on', 20), { place: 'mill', at: 'outside', road: { to: 'home' } })
  const evening = problem({ cooks: [car('home')], activities: [pie] })
  const at = (start: number) => schedule([placed('pie', start, start + 20, { cooks: ['ann'] })])
  expectRule(evening, at(30), [
    [at(19), 'H9 absent pie'],
    [at(31), 'H9 absent pie'],
  ])
  expectRule(problem({ ...evening, cooks: [car('inn')] }), schedule([], { left: [{ activity: 'pie', because: 'no-cook' }] }), [
    [at(25), 'H9 absent pie'],
  ])
})
