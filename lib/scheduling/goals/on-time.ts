import { momentOf } from '#lib/scheduling/placed.ts'
import type { Problem } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'

/** C2: the first serving is on the table at sit-down. */
export const onTime = (problem: Problem, schedule: Schedule): number =>
  problem.servings.reduce((sum, { id, role }) => {
    if (role.kind !== 'first') return sum
    return sum + problem.weights.late * Math.max(0, (momentOf(schedule, id) ?? role.sitDown) - role.sitDown)
  }, 0)
