import { dateAt } from '#lib/domain/time.ts'
import type { Summary } from '#server/evenings/summary.ts'

/** Days after the evening that guests and their answers are kept, unless its hosts chose otherwise. */
export const KEEP_DAYS = 30

/** No shorter than their links are good; no longer than a year. */
export const LEAST_KEEP_DAYS = 7
export const MOST_KEEP_DAYS = 365

/**
 * The last day on which guests and their answers are kept: yyyy-mm-dd in the evening's zone. An evening that was brought in
 * after its date has its days from then on.
 */
export const keptUntil = ({ date, zone }: Pick<Summary, 'date' | 'zone'>, createdAt: Date, keepDays: number): string => {
  const from = Math.max(Date.parse(`${date}T00:00:00Z`), Date.parse(`${dateAt(zone, createdAt.getTime())}T00:00:00Z`))
  return new Date(from + keepDays * 86_400_000).toISOString().slice(0, 10)
}
