import { waitsOf } from '#lib/scheduling/placed.ts'
import type { Problem } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'

/** C3: guests wait as long as is pleasant between courses, and no longer than they may. */
export const waits = (problem: Problem, schedule: Schedule): number =>
  waitsOf(problem, schedule).reduce((sum, { serving, wait }) => {
    const [least, most] = serving.wait.ideal
    const outside = Math.max(0, least - wait) + Math.max(0, wait - most)
    return sum + problem.weights.wait * outside + problem.weights.longWait * Math.max(0, wait - serving.wait.most)
  }, 0)
