import type { Names } from '#app/_words/names.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { doings } from './picture/doings.ts'

const WINDOW_MS = 15 * 60_000

/** Minutes that cooks are at each dish in the quarter of an hour before its course is to reach the table. */
export const lastMinuteMinutes = (order: RunningOrder, names: Names): ReadonlyMap<string, number> => {
  const moments = new Map(order.courses.map((course) => [course.course, Date.parse(course.toTable)]))
  const sums = new Map<string, number>()
  for (const doing of doings(order, names)) {
    const dish = names.dish(names.step(doing.cue.step)?.dish ?? null)
    const moment = dish ? moments.get(dish.course) : undefined
    if (!dish || moment === undefined) continue
    const minutes = (Math.min(doing.to, moment) - Math.max(doing.from, moment - WINDOW_MS)) / 60_000
    if (minutes > 0) sums.set(dish.id, (sums.get(dish.id) ?? 0) + minutes)
  }
  return sums
}

/** When work on each dish begins: days from the evening's date, and the moment. */
export const firstWork = (order: RunningOrder, names: Names): ReadonlyMap<string, number> => {
  const first = new Map<string, number>()
  for (const cue of order.cues) {
    const dish = names.step(cue.step)?.dish
    const at = Date.parse(cue.start)
    if (dish) first.set(dish, Math.min(first.get(dish) ?? at, at))
  }
  return first
}
