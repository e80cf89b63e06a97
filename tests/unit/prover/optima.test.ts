import { expect, test } from 'vitest'
import { solve } from '#lib/scheduling/solve.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { loadOptima, SETS } from '#tests/support/optima.ts'

test('N4 the stored optima are of the evenings that the generator makes now, no evening is in both sets', () => {
  const [tuning, holdOut] = SETS.map((set) => loadOptima(set).map(({ optimum }) => optimum.digest))
  expect(tuning?.filter((digest) => holdOut?.includes(digest))).toEqual([])
  for (const { optimum } of SETS.flatMap(loadOptima)) expect(optimum.bound).toBeLessThanOrEqual(optimum.cost)
})

test('N4 the quick tier is never below what was proved', () => {
  const below = SETS.flatMap(loadOptima).flatMap(({ optimum, problem }) => {
    const { cost } = verify(problem, solve(problem, { steps: 300, seed: 1 }))
    return cost.total < optimum.bound - 1e-6 ? [`${optimum.size} ${optimum.seed}: ${cost.total} < ${optimum.bound}`] : []
  })
  expect(below).toEqual([])
})
