import { type Placed, placedOf, tableWindow } from '#lib/scheduling/placed.ts'
import { CALM_HOUR, type Problem } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import { busy, length, meet, union } from './stretches.ts'

/** C6, C20: the last hour before the first serving is calm, and who is to be spared is. */
export const calm = (problem: Problem, schedule: Schedule): number =>
  hourBefore(problem, schedule) + spared(problem, placedOf(problem, schedule))

const hourBefore = (problem: Problem, schedule: Schedule): number => {
  const window = tableWindow(problem, schedule)
  if (!window) return 0
  const hour = { from: window.from - CALM_HOUR, to: window.from }
  const placed = placedOf(problem, schedule)
  return problem.cooks.reduce(
    (sum, cook) => sum + problem.weights.calm * length(union(busy(placed, cook.id, { eye: false, atTable: true }), hour)),
    0,
  )
}

const spared = ({ spares = [] }: Problem, placed: readonly Placed[]): number =>
  spares.reduce((sum, { cook, from, to, price, activities }) => {
    const asked = placed.filter(({ activity }) => activities?.includes(activity.id) ?? true)
    return sum + price * length(busy(asked, cook, { eye: true, atTable: true }).flatMap((one) => meet([one], [{ from, to }])))
  }, 0)
