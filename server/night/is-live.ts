import type { Evening } from '#lib/domain/evening.ts'
import { epochMsOf } from '#lib/domain/time.ts'

/** When an evening is over, whatever was told: as its second day after it begins. */
export const overAt = (evening: Evening): number => epochMsOf(evening, { day: 2, time: '00:00' })

/**
 * Whether an evening is being cooked: from the word that it has begun until it is closed or over. Where nobody said that it
 * has begun, any other word of the night will do, from the first moment of its day.
 */
export const isLive = (evening: Evening, nowMs: number): boolean => {
  if (evening.night.length === 0 || nowMs >= overAt(evening)) return false
  const night = evening.night.find((fact) => 'night' in fact)
  if (night) return night.closed === undefined
  return nowMs >= epochMsOf(evening, { day: 0, time: '00:00' })
}
