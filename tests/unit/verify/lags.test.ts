import { test } from 'vitest'
import type { Lag } from '#lib/scheduling/problem.ts'
import { activity, mode, placed, problem, schedule } from '#tests/support/small-problem.ts'
import { expectRule } from './broken.ts'

const lag = (parts: Partial<Lag>): Lag => ({ from: 'cook', edge: 'end', to: 'cool', least: 0, bound: 'quality', ...parts })
const activities = [activity('cook', mode('leave', 10)), activity('cool', mode('leave', 10))]

test('H4 a least lag holds from its edge, and the most of a safety lag', () => {
  const evening = problem({
    activities,
    lags: [lag({ least: 2, most: 8, bound: 'safety' }), lag({ edge: 'start', least: 13, most: 14 })],
  })
  const at = (start: number) => schedule([placed('cook', 0, 10), placed('cool', start, start + 10)])
  expectRule(evening, at(13), [
    [at(12), 'H4 early cook,cool'],
    [at(19), 'H4 late cook,cool'],
  ])
  expectRule(evening, at(18), [])
})

test('H4 a lag says nothing about what has happened, nor about what is left out', () => {
  const happened = activity('cool', mode('leave', 10), { fact: { kind: 'done', start: 5, end: 15 } })
  const lags = [lag({ least: 20 })]
  expectRule(
    problem({ activities: [...activities.slice(0, 1), happened], lags }),
    schedule([placed('cook', 0, 10), placed('cool', 5, 15)]),
    [],
  )
  const left = [{ activity: 'cook', because: 'safety' as const }]
  expectRule(problem({ activities, lags }), schedule([placed('cool', 0, 10)], { left }), [])
})

test('H5 no more of a group run at once than it allows, facts among themselves excepted', () => {
  const batch = (id: string) => activity(id, mode('leave', 10))
  const evening = problem({
    activities: [batch('a'), batch('b'), batch('c')],
    together: [{ activities: ['a', 'b', 'c'], most: 2 }],
  })
  const at = (c: number) => schedule([placed('a', 0, 10), placed('b', 4, 14), placed('c', c, c + 10)])
  expectRule(evening, at(10), [[at(9), 'H5 crowd a,b,c']])
  const done = (id: string, start: number) => activity(id, mode('leave', 10), { fact: { kind: 'done', start, end: start + 10 } })
  expectRule(problem({ ...evening, activities: [done('a', 0), done('b', 4), done('c', 9)] }), at(9), [])
  expectRule(problem({ ...evening, activities: [done('a', 0), done('b', 4), batch('c')] }), at(10), [[at(9), 'H5 crowd a,b,c']])
})
