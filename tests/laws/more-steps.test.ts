import { test } from 'vitest'
import { toProblem } from '#lib/order/to-problem.ts'
import { cost } from '#lib/scheduling/cost.ts'
import type { Problem } from '#lib/scheduling/problem.ts'
import { repair } from '#lib/scheduling/repair.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import { solve } from '#lib/scheduling/solve.ts'
import { randomEvening, SIZES } from '#tests/support/random-evening.ts'
import { randomProblem } from '#tests/support/random-problem.ts'
import { holdsOnAll, seeds } from './seeds.ts'

/** Each cost is at most the one before it. */
const neverDearer = (problem: Problem, seed: number, budgets: readonly number[], hint?: Schedule): string | null => {
  let last = hint ? cost(problem, repair(problem, hint)).total : Number.POSITIVE_INFINITY
  for (const steps of budgets) {
    const { total } = cost(problem, solve(problem, { steps, seed }, hint))
    if (total > last + 1e-6) return `${steps} steps cost ${total}, fewer cost ${last}`
    last = total
  }
  return null
}

test('S10 more steps are never dearer on a random problem', () => {
  holdsOnAll(seeds(1, 100), (seed) => neverDearer(randomProblem(seed), seed, [3, 10, 40, 41, 90, 200]))
})

test('S10 no steps make a schedule that was kept dearer than its repair, on a random problem', () => {
  holdsOnAll(seeds(3001, 60), (seed) => {
    const before = solve(randomProblem(seed, 4), { steps: 30, seed })
    return neverDearer(randomProblem(seed), seed, [1, 20, 60, 150], before)
  })
})

test('S10 more steps are never dearer on a random evening', () => {
  holdsOnAll(seeds(1, 6), (seed) => {
    const { problem } = toProblem(randomEvening(seed, [SIZES.small, SIZES.small, SIZES.middle][seed % 3]))
    return neverDearer(problem, seed, [20, 100, 250, 600, 1000])
  })
})
