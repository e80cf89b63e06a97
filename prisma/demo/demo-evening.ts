import type { Evening } from '#lib/domain/evening.ts'
import { parseEvening } from '#lib/domain/parse.ts'
import evening from './evening.json' with { type: 'json' }

/** Our own invented evening, complete and planned without a clash, on a date (yyyy-mm-dd) of the caller's. */
export const demoEvening = (date: string): Evening => {
  const parsed = parseEvening({ ...evening, date })
  if (parsed.ok) return parsed.value
  throw new Error(`the demo evening is not an evening: ${parsed.error.map(({ path, why }) => `${path} ${why}`).join('; ')}`)
}
