import { momentOf, placedOf } from '#lib/scheduling/placed.ts'
import type { Problem } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'

/** C7: what is made is made fresh rather than early. */
export const fresh = (problem: Problem, schedule: Schedule): number => {
  const servingOf = new Map(problem.deliveries.map((delivery) => [delivery.id, delivery.serving]))
  return placedOf(problem, schedule).reduce((sum, { activity, placement }) => {
    const moment = momentOf(schedule, servingOf.get(activity.delivery ?? '') ?? '')
    if (activity.fact || moment === undefined || placement.end >= moment) return sum
    return sum + (problem.weights.early * (moment - placement.end)) / 100
  }, 0)
}
