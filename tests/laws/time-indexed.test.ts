import highsLoader from 'highs'
import { expect, test } from 'vitest'
import { solve } from '#lib/scheduling/solve.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { plainProblem, timeIndexed } from '#tests/support/time-indexed.ts'
import { holdsOnAll, seeds } from './seeds.ts'

test('S4 on up to ten plain steps the cost is the optimum of a time-indexed linear program', async () => {
  const highs = await highsLoader()
  let compared = 0
  holdsOnAll(seeds(1, 6), (seed) => {
    const of = plainProblem(seed)
    const exact = highs.solve(timeIndexed(of))
    const schedule = solve(of, { steps: 20_000, seed })
    const { violations, cost } = verify(of, schedule)
    if (violations.length > 0) return JSON.stringify(violations)
    if (exact.Status === 'Infeasible') return schedule.left.length > 0 ? null : 'placed what cannot be placed'
    if (exact.Status !== 'Optimal') return exact.Status
    compared += 1
    const apart = cost.total - exact.ObjectiveValue
    return Math.abs(apart) < 1e-4 ? null : `${cost.total} and not ${exact.ObjectiveValue}`
  })
  if (process.env.SEED === undefined) expect(compared).toBeGreaterThan(4)
})
