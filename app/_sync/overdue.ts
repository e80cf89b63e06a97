import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import { GRACE } from '#lib/night/told.ts'
import { nightOf } from '#lib/plan/night-facts.ts'

/** Whether time has passed over something on the night that nobody has told: the order no longer says what can still be. */
export const isOverdue = (evening: Evening, { cues }: RunningOrder, nowMs: number): boolean => {
  if (evening.night.length === 0 || nightOf(evening)?.closed !== undefined) return false
  const isPast = (instant: string) => msOfInstant(instant) + GRACE < nowMs
  return cues.some(({ state, start, end }) => (state === 'running' ? isPast(end) : state !== 'done' && isPast(start)))
}
