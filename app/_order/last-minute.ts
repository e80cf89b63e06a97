import type { Names } from '#app/_words/names.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { doings } from './picture/doings.ts'

const WINDOW_MS = 15 * 60_000

/** A stretch of a cook at a dish in the quarter of an hour before its course is to reach the table. */
interface LastMinutes {
  readonly course: string
  readonly dish: string
  readonly cook: string
  readonly minutes: number
}

const lastMinutes = (order: RunningOrder, names: Names): readonly LastMinutes[] => {
  const moments = new Map(order.courses.map((course) => [course.course, Date.parse(course.toTable)]))
  return doings(order, names).flatMap((doing) => {
    const dish = names.dish(names.step(doing.cue.step)?.dish ?? null)
    const moment = dish ? moments.get(dish.course) : undefined
    if (!dish || moment === undefined) return []
    const minutes = (Math.min(doing.to, moment) - Math.max(doing.from, moment - WINDOW_MS)) / 60_000
    return minutes > 0 ? [{ course: dish.course, dish: dish.id, cook: doing.cook, minutes }] : []
  })
}

const sum = (all: readonly LastMinutes[], key: (one: LastMinutes) => string): ReadonlyMap<string, number> => {
  const sums = new Map<string, number>()
  for (const one of all) sums.set(key(one), (sums.get(key(one)) ?? 0) + one.minutes)
  return sums
}

/** Minutes that cooks are at each dish in the quarter of an hour before its course is to reach the table. */
export const lastMinuteMinutes = (order: RunningOrder, names: Names): ReadonlyMap<string, number> =>
  sum(lastMinutes(order, names), ({ dish }) => dish)

/** The same by course, in their order, and by cook, who is most at it first; a course without any is left out. */
export const lastMinutesOfCooks = (
  order: RunningOrder,
  names: Names,
): readonly { readonly course: string; readonly cooks: readonly { readonly cook: string; readonly minutes: number }[] }[] => {
  const all = lastMinutes(order, names)
  return order.courses.flatMap(({ course }) => {
    const own = sum(
      all.filter((one) => one.course === course),
      ({ cook }) => cook,
    )
    const cooks = [...own].map(([cook, minutes]) => ({ cook, minutes })).toSorted((a, b) => b.minutes - a.minutes)
    return cooks.length > 0 ? [{ course, cooks }] : []
  })
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
