import { expect, test } from 'vitest'
import { solve } from '#lib/scheduling/solve.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { loadOptima, SETS } from '#tests/support/optima.ts'

test('N4 sixty stored optima are of the evenings that the generator makes now, no evening is in both sets', () => {
  const [tuning, holdOut] = SETS.map((set) => loadOptima(set).map(({ optimum }) => optimum.digest))
  expect(new Set([...(tuning ?? []), ...(holdOut ?? [])]).size).toBe(60)
  expect(tuning?.length).toBe(30)
  expect(holdOut?.length).toBe(30)
})

test('N4 nor is the quick tier below what was proved of the evenings that it is tuned on', () => {
  const below = loadOptima('tuning').flatMap(({ optimum, problem }) => {
    const { cost } = verify(problem, solve(problem, { steps: 300, seed: 1 }))
    return cost.total < optimum.cost - 0.006 ? [`${optimum.size} ${optimum.seed}: ${cost.total} < ${optimum.cost}`] : []
  })
  expect(below).toEqual([])
})
