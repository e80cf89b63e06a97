import { expect, test } from 'vitest'
import { planEvening } from '#lib/order/engine.ts'
import { toHint } from '#lib/order/hint.ts'
import { toProblem } from '#lib/order/to-problem.ts'
import { solve } from '#lib/scheduling/solve.ts'
import { randomEvening, SIZES } from '#tests/support/random-evening.ts'

test('O13 a running order read back is the schedule that it was written from', () => {
  for (const seed of [1, 2, 3]) {
    const evening = randomEvening(seed, SIZES.small)
    const { problem, index } = toProblem(evening)
    const budget = { steps: 60, seed }
    const { placements, servings } = solve(problem, budget)
    const hint = toHint(problem, index, planEvening(evening, { budget }))
    const byId = (list: typeof placements) => [...list].sort((a, b) => (a.activity < b.activity ? -1 : 1))
    expect(byId(hint.placements)).toEqual(byId(placements))
    expect(hint.servings).toEqual(servings)
  }
})

test('O13 an order of another date serves too, and what is gone from the evening is not in it', () => {
  const evening = randomEvening(4, SIZES.small)
  const order = planEvening(evening, { budget: { steps: 60, seed: 1 } })
  const moved = toProblem({ ...evening, date: '2026-12-05' })
  expect(toHint(moved.problem, moved.index, order).placements).toHaveLength(moved.problem.activities.length)
  const [first] = evening.dishes
  const fewer = toProblem({
    ...evening,
    dishes: evening.dishes.map((dish) => (dish === first ? { ...dish, state: 'dropped' } : dish)),
  })
  const ids = new Set(fewer.problem.activities.map(({ id }) => id))
  expect(toHint(fewer.problem, fewer.index, order).placements.every(({ activity }) => ids.has(activity))).toBe(true)
  expect(ids.size).toBeLessThan(order.cues.length)
})
