import { expect, test } from 'vitest'
import { parseEvening } from '#lib/domain/parse.ts'
import { planEvening } from '#lib/order/engine.ts'
import { toHint } from '#lib/order/hint.ts'
import { toProblem } from '#lib/order/to-problem.ts'
import { type Problem, WEIGHTS } from '#lib/scheduling/problem.ts'
import { repair } from '#lib/scheduling/repair.ts'
import { solve } from '#lib/scheduling/solve.ts'
import { bruteForce, TOO_BIG } from '#tests/support/brute-force.ts'
import { movedIn, nightOfProblem } from '#tests/support/problem-night.ts'
import { randomEvening } from '#tests/support/random-evening.ts'
import { randomNight } from '#tests/support/random-night.ts'
import { randomProblem } from '#tests/support/random-problem.ts'
import { complaint } from './accepted.ts'
import { fixedSeeds, holdsOnAll, seeds } from './seeds.ts'

test('S6 a schedule that is repaired to any other problem is accepted by the verifier', () => {
  holdsOnAll(seeds(3001, 200), (seed) => {
    const of = randomProblem(seed)
    return complaint(of, repair(of, solve(randomProblem(seed, 4), { steps: 30, seed })))
  })
})

test('S6 an order repaired on the night, with slips, is accepted by the verifier', () => {
  holdsOnAll(seeds(1, 20), (seed) => {
    const evening = randomEvening(seed)
    const order = planEvening(evening, { budget: { steps: 50, seed } })
    const night = randomNight(evening, order, seed)
    const parsed = parseEvening(night.evening)
    if (!parsed.ok) return JSON.stringify(parsed.error)
    const { problem, index } = toProblem(parsed.value, { now: night.now, previous: order })
    return complaint(problem, repair(problem, toHint(problem, index, order)))
  })
})

/** Nothing but leaving out and moving costs anything. */
const FEWEST_MOVES = {
  ...WEIGHTS,
  ...{ late: 0, longWait: 0, wait: 0, past: 0, missed: 0, meal: 0, unfair: 0, allAway: 0, lead: 0, calm: 0, early: 0 },
}

interface Night {
  readonly of: Problem
  readonly moved: number
  readonly frozen: number
  readonly left: number
  readonly least: { readonly moved: number; readonly frozen: number; readonly left: number }
}

test('S6 on small nights hardly more is moved than must be: brute force says how few moves any schedule needs', () => {
  const nights = fixedSeeds(1, 110).flatMap((seed): Night[] => {
    const plain = randomProblem(seed)
    if (plain.now !== undefined) return []
    const told = solve(plain, { steps: 100, seed })
    const of = nightOfProblem(plain, told, seed)
    if (told.left.length > 0 || of.activities.every(({ fact }) => fact)) return []
    const least = bruteForce({ ...of, weights: FEWEST_MOVES }, 200_000)
    if (least === TOO_BIG) return []
    const frozen = new Set(of.previous?.flatMap((one) => (one.frozen ? [one.activity] : [])))
    const count = (schedule: Parameters<typeof movedIn>[1]) => {
      const moved = movedIn(of, schedule)
      return {
        moved: moved.length,
        frozen: moved.filter((id) => frozen.has(id)).length,
        left: schedule.left.length,
      }
    }
    return [{ of, ...count(repair(of, told)), least: count(least.schedule) }]
  })
  const sum = (of: (night: Night) => number) => nights.reduce((all, night) => all + of(night), 0)
  expect(nights.length).toBeGreaterThan(30)
  expect(sum(({ moved }) => moved)).toBeGreaterThan(10)
  // It does not search: once in fifty nights it has no room for something, or chooses the other of two moves.
  expect(sum(({ left, least }) => left - least.left)).toBeLessThanOrEqual(1)
  expect(sum(({ frozen, least }) => frozen - least.frozen)).toBeLessThanOrEqual(1)
  expect(Math.max(...nights.map(({ moved, least }) => moved - least.moved))).toBeLessThanOrEqual(1)
  expect(sum(({ moved, least }) => moved - least.moved)).toBeLessThanOrEqual(0.1 * nights.length)
})
