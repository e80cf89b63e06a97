import type { Names } from '#app/_words/names.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { doings } from './picture/doings.ts'

const WINDOW_MS = 15 * 60_000

/** A stretch of a cook at a dish in the quarter of an hour before its course is to reach the table, in ms since 1970. */
interface LastStretch {
  readonly course: string
  readonly dish: string
  readonly cook: string
  readonly from: number
  readonly to: number
}

const lastStretches = (order: RunningOrder, names: Names): readonly LastStretch[] => {
  const moments = new Map(order.courses.map((course) => [course.course, Date.parse(course.toTable)]))
  return doings(order, names).flatMap((doing) => {
    const dish = names.dish(names.step(doing.cue.step)?.dish ?? null)
    const moment = dish ? moments.get(dish.course) : undefined
    if (!dish || moment === undefined) return []
    const [from, to] = [Math.max(doing.from, moment - WINDOW_MS), Math.min(doing.to, moment)]
    return from < to ? [{ course: dish.course, dish: dish.id, cook: doing.cook, from, to }] : []
  })
}

/** Minutes that cooks are at each dish in the quarter of an hour before its course is to reach the table. */
export const lastMinuteMinutes = (order: RunningOrder, names: Names): ReadonlyMap<string, number> => {
  const sums = new Map<string, number>()
  for (const { dish, from, to } of lastStretches(order, names)) sums.set(dish, (sums.get(dish) ?? 0) + (to - from) / 60_000)
  return sums
}

/** Two things at a time are one stretch. */
const minutesOfAll = (stretches: readonly LastStretch[]): number => {
  let [sum, until] = [0, Number.NEGATIVE_INFINITY]
  for (const { from, to } of stretches.toSorted((a, b) => a.from - b.from)) {
    sum += Math.max(0, to - Math.max(from, until))
    until = Math.max(until, to)
  }
  return sum / 60_000
}

/** How long each cook is at a course in that quarter of an hour, who is longest first; a course without any is left out. */
export const lastMinutesOfCooks = (
  order: RunningOrder,
  names: Names,
): readonly { readonly course: string; readonly cooks: readonly { readonly cook: string; readonly minutes: number }[] }[] => {
  const all = lastStretches(order, names)
  return order.courses.flatMap(({ course }) => {
    const own = all.filter((one) => one.course === course)
    const cooks = [...new Set(own.map(({ cook }) => cook))]
      .map((cook) => ({ cook, minutes: minutesOfAll(own.filter((one) => one.cook === cook)) }))
      .toSorted((a, b) => b.minutes - a.minutes)
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
