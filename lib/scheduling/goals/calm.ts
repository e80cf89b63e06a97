import { placedOf, tableWindow } from '#lib/scheduling/placed.ts'
import { CALM_HOUR, type Problem } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import { busy, length, union } from './stretches.ts'

/** C6: the last hour before the first serving is calm. */
export const calm = (problem: Problem, schedule: Schedule): number => {
  const window = tableWindow(problem, schedule)
  if (!window) return 0
  const hour = { from: window.from - CALM_HOUR, to: window.from }
  const placed = placedOf(problem, schedule)
  return problem.cooks.reduce(
    (sum, cook) => sum + problem.weights.calm * length(union(busy(placed, cook.id, { eye: false, atTable: true }), hour)),
    0,
  )
}
