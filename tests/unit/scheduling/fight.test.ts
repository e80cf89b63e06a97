import { describe, expect, test } from 'vitest'
import { toProblem } from '#lib/order/to-problem.ts'
import { breaches } from '#lib/scheduling/breaches.ts'
import { fightOf } from '#lib/scheduling/fight.ts'
import { type Demand, wishKey } from '#lib/scheduling/fight-relax.ts'
import { smallest } from '#lib/scheduling/fight-smallest.ts'
import type { Breach, Schedule } from '#lib/scheduling/schedule.ts'
import { solve } from '#lib/scheduling/solve.ts'
import { loadEvening } from '#tests/support/load-evening.ts'
import { dinner, inOven, lag, onRing, oven, ring } from '#tests/support/problem-builders.ts'
import { activity, cook, mode } from '#tests/support/small-problem.ts'

const BUDGET = { steps: 60_000, seed: 1 }

const said = (fight: readonly Demand[]): string[] =>
  fight.map((demand) => {
    if (demand.kind === 'wish') return wishKey(demand.wish)
    if (demand.kind === 'cooks' || demand.kind === 'from') return `${demand.kind} ${demand.activity}`
    return `${demand.of} ${'activity' in demand.by ? demand.by.activity : demand.by.delivery}`
  })

const broken = (problem: Parameters<typeof solve>[0], schedule: Schedule): Breach => {
  const [first, ...others] = breaches(problem, schedule)
  expect(others).toEqual([])
  if (!first) throw new Error('nothing is broken')
  return first
}

describe('the smallest set', () => {
  test('S9 a smallest set that fails is found among many', () => {
    const all = Array.from({ length: 40 }, (_, k) => k)
    for (const fight of [[3], [0, 39], [7, 8, 30], [1, 2, 3, 4, 5]]) {
      let asked = 0
      const found = smallest(all, (some) => {
        asked++
        return fight.every((one) => some.includes(one))
      })
      expect(found.sort((a, b) => a - b)).toEqual(fight)
      expect(asked).toBeLessThan(60)
    }
  })

  test('S9 of two sets that fail it is one of them, and nothing when everything fails', () => {
    const fails = (some: readonly number[]) =>
      [1, 2].every((one) => some.includes(one)) || [2, 3].every((one) => some.includes(one))
    expect(smallest([1, 2, 3], fails).sort()).toSatisfy((found: number[]) => ['1,2', '2,3'].includes(found.join()))
    expect(smallest([1, 2, 3], () => true)).toEqual([])
  })
})

describe('fights', () => {
  test('S9 lags that no times can keep are a fight on their own, and nothing else is in it', () => {
    const problem = dinner({
      activities: ['a', 'b', 'c', 'd'].map((id) => activity(id, mode('hands-on', 10), { delivery: 'dish' })),
      cooks: [cook('kim'), cook('lou')],
      lags: [
        lag('a', 'b', { least: 20 }),
        lag('b', 'c', { least: 20 }),
        lag('a', 'c', { most: 30 }),
        lag('a', 'd', { most: 100 }),
        lag('d', 'c', { most: 100 }),
      ],
    })
    const schedule = solve(problem, { steps: 300, seed: 1 })
    const fight = fightOf(problem, schedule, broken(problem, schedule), BUDGET).demands
    expect(said(fight)).toEqual(['lag 2'])
  })

  test('S9 two roasts that want one oven at different heats just before the table fight over it', () => {
    const roast = (id: string, low: number) =>
      activity(id, mode('leave', 20, { cooks: 0, uses: [inOven(low, low + 10)] }), { delivery: 'dish' })
    const problem = dinner({
      activities: [roast('lamb', 150), roast('pie', 200), activity('plate', mode('hands-on', 4), { delivery: 'dish' })],
      cooks: [cook('kim')],
      kit: [oven(), ring(1)],
      lags: [lag('lamb', 'plate', { most: 5 }), lag('pie', 'plate', { most: 5 })],
    })
    const schedule = solve(problem, { steps: 600, seed: 1 })
    const fight = fightOf(problem, schedule, broken(problem, schedule), BUDGET).demands
    expect(said(fight)).toEqual(['lag 0', 'lag 1', 'oven lamb', 'oven pie'])
  })

  test('S9 two pans for one ring fight over it, and a cook who is wanted twice is named', () => {
    const fry = (id: string, uses: boolean) =>
      activity(id, mode('hands-on', 20, { uses: uses ? [onRing()] : [] }), { delivery: 'dish' })
    const of = (cooks: number, onOneRing: boolean) => {
      const problem = dinner({
        activities: [fry('fish', onOneRing), fry('egg', onOneRing), activity('plate', mode('hands-on', 4), { delivery: 'dish' })],
        cooks: Array.from({ length: cooks }, (_, k) => cook(`cook-${k}`)),
        kit: [ring(1)],
        lags: [lag('fish', 'plate', { most: 5 }), lag('egg', 'plate', { most: 5 })],
      })
      const schedule = solve(problem, { steps: 600, seed: 1 })
      return said(fightOf(problem, schedule, broken(problem, schedule), BUDGET).demands)
    }
    expect(of(2, true)).toEqual(['lag 0', 'lag 1', 'ring fish', 'ring egg'])
    expect(of(1, false)).toEqual(['lag 0', 'lag 1', 'cooks fish', 'cooks egg'])
  })

  test('S9 what may not begin so early fights with sit-down', () => {
    const problem = dinner({
      activities: [
        activity('chop', mode('hands-on', 10), { delivery: 'dish', from: 60 }),
        activity('simmer', mode('hands-on', 40), { delivery: 'dish', from: 0 }),
      ],
      cooks: [cook('kim')],
      lags: [lag('chop', 'simmer')],
    })
    const schedule = solve(problem, { steps: 300, seed: 1 })
    const fight = fightOf(problem, schedule, broken(problem, schedule), BUDGET).demands
    expect(said(fight)).toEqual(['sit-down main', 'from chop'])
  })

  test('S9 what can be kept is no fight', () => {
    const problem = dinner({
      activities: ['a', 'b'].map((id) => activity(id, mode('hands-on', 10), { delivery: 'dish' })),
      cooks: [cook('kim')],
      lags: [lag('a', 'b', { most: 5 })],
    })
    const good = solve(problem, { steps: 300, seed: 1 })
    const bad: Schedule = {
      ...good,
      placements: good.placements.map((one) =>
        one.activity === 'a' ? { ...one, start: one.start - 30, end: one.end - 30 } : one,
      ),
    }
    expect(fightOf(problem, bad, broken(problem, bad), BUDGET).demands).toEqual([])
  })

  test('S9 fact C1: the pork rests, is carved, the potatoes keep, and crackle and potatoes want one oven', () => {
    const { problem, index } = toProblem(loadEvening('c-pork'))
    const schedule = solve(problem, { steps: 10_000, seed: 1 })
    const [breach] = breaches(problem, schedule)
    expect(breach).toBeDefined()
    if (breach) {
      const fight = fightOf(problem, schedule, breach, BUDGET).demands
      expect(
        fight.map((demand) => {
          if (demand.kind === 'cooks' || demand.kind === 'from') return demand
          if (demand.kind === 'kit') return [demand.of, demand.by]
          return demand.wish.kind === 'lag' ? index.lags[demand.wish.lag] : demand.wish
        }),
      ).toEqual([
        { step: 'P4', after: 'P3' },
        { step: 'Z', after: 'P4' },
        { step: 'Z', after: 'R3' },
        ['oven', { activity: 'P3' }],
        ['oven', { activity: 'R3' }],
      ])
    }
  })

  test('S9 out of budget there is no fight to tell', () => {
    const { problem } = toProblem(loadEvening('c-pork'))
    const schedule = solve(problem, { steps: 2_000, seed: 1 })
    const [breach] = breaches(problem, schedule)
    expect(breach && fightOf(problem, schedule, breach, { steps: 0, seed: 1 }).demands).toEqual([])
    expect(breach && fightOf(problem, schedule, breach, { ...BUDGET, stop: () => true }).demands).toEqual([])
  })
})
