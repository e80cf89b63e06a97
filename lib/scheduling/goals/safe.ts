import { placedOf } from '#lib/scheduling/placed.ts'
import type { Problem } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import { touchesToCome } from '#lib/scheduling/touches-to-come.ts'

/** C1: nothing is left out, and somebody comes to everything that is under way. */
export const safe = (problem: Problem, schedule: Schedule): number => {
  const missing = placedOf(problem, schedule).reduce((sum, { activity, mode, placement }) => {
    if (activity.fact?.kind !== 'running') return sum
    return sum + touchesToCome(mode, placement.start, placement.end, problem.now).length - placement.touches.length
  }, 0)
  return problem.weights.left * (schedule.left.length + missing)
}
