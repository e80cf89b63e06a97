import { expect, test } from 'vitest'
import type { Problem } from '#lib/scheduling/problem.ts'
import { solve } from '#lib/scheduling/solve.ts'
import { at, dinner, fromStore, lag, plan, store } from '#tests/support/problem-builders.ts'
import { activity, cook, mode, problem } from '#tests/support/small-problem.ts'

test('S2 the same problem, seed and steps give the same schedule, and a stop gives one too', () => {
  const of = dinner({
    cooks: [cook('ann', { eats: true }), cook('bo', { eats: true })],
    activities: Array.from({ length: 8 }, (_, i) => activity(`a${i}`, mode('hands-on', 4 + i), { delivery: 'dish' })),
  })
  const once = solve(of, { steps: 400, seed: 3 })
  expect(solve(of, { steps: 400, seed: 3 })).toEqual(once)
  const stopped = solve(of, { steps: 400, seed: 3, stop: () => true })
  expect(stopped.placements).toHaveLength(8)
})

/**
 * Six activities with people (Cal Poly, CSC 308 handout): A5 2p; B4 3p; C3(A) 1p; D7(B) 3p; E2(C) 3p; F1(D,E) 1p. The
 * optimal lengths for 6, 5, 4 and 3 people are 12, 14, 19 and 22, by full enumeration. Here the last one must end by then.
 */
const network = (people: number, by: number): Problem => {
  const task = (id: string, length: number, hands: number) =>
    activity(id, mode('leave', length, { uses: [fromStore('people', hands)] }), { from: 0, to: by })
  return problem({
    horizon: { from: 0, to: by },
    kit: [store('people', people)],
    activities: [task('A', 5, 2), task('B', 4, 3), task('C', 3, 1), task('D', 7, 3), task('E', 2, 3), task('F', 1, 1)],
    lags: [lag('A', 'C'), lag('B', 'D'), lag('C', 'E'), lag('D', 'F'), lag('E', 'F')],
  })
}

test.each([
  [6, 12],
  [5, 14],
  [4, 19],
  [3, 22],
])('S4 six activities with %i people fit in %i and not in one less', (people, length) => {
  const made = plan(network(people, length))
  expect(made.left).toEqual([])
  expect(at(made, 'F').end).toBe(length)
  expect(plan(network(people, length - 1)).left.length).toBeGreaterThan(0)
})
