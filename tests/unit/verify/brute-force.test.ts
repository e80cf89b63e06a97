import { expect, test } from 'vitest'
import type { Kit, Problem, Use } from '#lib/scheduling/problem.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { bruteForce, TOO_BIG } from '#tests/support/brute-force.ts'
import { randomProblem } from '#tests/support/random-problem.ts'
import { activity, cook, delivery, mode, problem, schedule, serving } from '#tests/support/small-problem.ts'

const best = (of: Problem) => {
  const found = bruteForce({ ...of, horizon: { from: 0, to: 30 } })
  if (found === TOO_BIG) throw new Error('too big for brute force')
  return found
}
const home = [{ place: 'home', from: 0, to: 30 }]
const first = serving('first', { role: { kind: 'first', sitDown: 20 }, earliest: 20 })
const keeps = (most: number) => ({ most, bound: 'quality' as const, place: 'home', uses: [] })

test('brute force puts the shorter of two dishes last: 7 ticks of work, 3 hundredths early', () => {
  const found = best(
    problem({
      cooks: [cook('ann', { presence: home })],
      servings: [first],
      activities: [
        activity('four', mode('hands-on', 4), { delivery: 'one' }),
        activity('three', mode('hands-on', 3), { delivery: 'one' }),
      ],
      deliveries: [delivery('one', 'first')],
    }),
  )
  expect(found.cost.total).toBeCloseTo(7.03, 9)
  expect(found.schedule.placements.map(({ activity: id, start }) => [id, start])).toEqual([
    ['four', 13],
    ['three', 17],
  ])
})

test('brute force heats the oven rather than cooling it: 3 ticks of ramp, not 5', () => {
  const oven: Kit = { kind: 'oven', id: 'oven', place: 'home', shelves: 2, maxC: 250, up: 20, down: 10 }
  const bake = (lowC: number, highC: number): Use => ({ kind: 'oven', shelves: 1, lowC, highC, preheated: false })
  const found = best(
    problem({
      kit: [oven],
      servings: [{ ...first, role: { kind: 'first', sitDown: 28 }, earliest: 28 }],
      activities: [
        activity('low', mode('leave', 8, { uses: [bake(150, 160)] }), { delivery: 'low' }),
        activity('high', mode('leave', 8, { uses: [bake(205, 220)] }), { delivery: 'high' }),
      ],
      deliveries: [delivery('low', 'first', { early: 0, keeps: keeps(30) }), delivery('high', 'first', { early: 0 })],
    }),
  )
  expect(found.cost.total).toBeCloseTo(0.11, 9)
  expect(found.schedule.placements.map(({ activity: id, start }) => [id, start])).toEqual([
    ['low', 9],
    ['high', 20],
  ])
})

test('brute force breaks a wish where the cook is away, by as little as can be', () => {
  const away = [
    { place: 'home', from: 0, to: 5 },
    { place: 'home', from: 12, to: 30 },
  ]
  const found = best(
    problem({
      cooks: [cook('ann', { presence: away })],
      activities: [activity('soak', mode('hands-on', 3), { to: 8 }), activity('peel', mode('hands-on', 2), { from: 6 })],
      lags: [{ from: 'soak', edge: 'end', to: 'peel', least: 0, most: 2, bound: 'quality' }],
    }),
  )
  expect(found.cost.total).toBe(300 * (12 - 5 - 2))
})

test('brute force takes the way that keeps the cook at the table', () => {
  const next = serving('next', { eating: 5, wait: { ideal: [0, 2], most: 4 } })
  const either = activity('warm', mode('hands-on', 4), { delivery: 'pie' })
  const out = mode('leave', 6, { touches: [{ when: 'out', takes: 1, lateBy: 0 }] })
  const found = best(
    problem({
      cooks: [cook('ann', { eats: true, presence: home })],
      servings: [{ ...first, role: { kind: 'first', sitDown: 10 }, earliest: 10, eating: 8, clearing: 0 }, next],
      activities: [{ ...either, modes: [...either.modes, out] }],
      deliveries: [delivery('pie', 'next', { early: 0, keeps: keeps(0) })],
    }),
  )
  expect(found.cost.total).toBe(10 + 5)
  expect(found.schedule.placements[0]?.mode).toBe(1)
})

test('brute force leaves out what cannot be, and serves late rather than leave out', () => {
  const fixed = { from: 4, to: 8 }
  const clash = problem({
    cooks: [cook('ann', { presence: home })],
    activities: [activity('a', mode('hands-on', 4), fixed), activity('b', mode('hands-on', 4), fixed)],
  })
  expect(best(clash).cost.total).toBe(1_000_000)
  const late = problem({
    servings: [{ ...first, role: { kind: 'first', sitDown: 10 }, earliest: 10 }],
    activities: [activity('bake', mode('leave', 12), { delivery: 'pie' })],
    deliveries: [delivery('pie', 'first')],
  })
  expect(best(late).cost.total).toBe(2 * 2_000)
})

test('brute force gives the empty schedule for the empty problem', () => {
  expect(best(problem({})).schedule).toEqual(schedule([]))
})

test('brute force gives only schedules that the verifier accepts, at a cost that the verifier finds too', () => {
  for (let seed = 1000; seed < 1030; seed += 1) {
    const of = randomProblem(seed, 3)
    const found = bruteForce(of)
    if (found === TOO_BIG) throw new Error(`seed ${seed} is too big`)
    expect(verify(of, found.schedule).violations, `seed ${seed}`).toEqual([])
    expect(verify(of, found.schedule).cost, `seed ${seed}`).toEqual(found.cost)
  }
})
