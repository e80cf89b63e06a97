import { listOf } from '#app/_shopping/list-of.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import type { Line } from '#lib/shopping/line.ts'

/** What somebody shops for on a day, counted from the evening's. */
export interface ShoppingDay {
  readonly day: number
  readonly lines: readonly Line[]
}

/** Whose a line is: who took it; else who cooks in the home whose it is; what nobody has taken is the hosts'. */
const isOf = (evening: Evening, cook: string, line: Line): boolean => {
  if (line.by !== null) return line.by === cook
  const found = evening.cooks.find(({ id }) => id === cook)
  if (line.home !== null && line.home !== evening.host)
    return found?.presence.some(({ kitchen }) => kitchen === line.home) ?? false
  return found?.host ?? false
}

/** The day on which a line is got at the latest: its own where it is bought fresh, else the day before, or before it is used. */
const dayOf = ({ when }: Line): number => {
  if (when.kind === 'on') return when.day
  const last = Math.min(-1, when.by ?? -1)
  return when.kind === 'from' ? Math.max(when.day, last) : last
}

/** The days on which a cook has something to buy, with what is not bought yet. */
export const shoppingDays = (evening: Evening, order: RunningOrder | null, cook: string): readonly ShoppingDay[] => {
  const { lines } = listOf(evening, order, null)
  const own = lines.filter(
    (line) => (line.standing.kind === 'open' || line.standing.kind === 'more') && isOf(evening, cook, line),
  )
  const days = [...new Set(own.map(dayOf))].toSorted((a, b) => a - b)
  return days.map((day) => ({ day, lines: own.filter((line) => dayOf(line) === day) }))
}
