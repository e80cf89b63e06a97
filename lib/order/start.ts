import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { epochMsOf, instantOfMs } from '#lib/domain/time.ts'

/** What an evening is planned from: on the night from what was told, before it with the last order as a first try. */
export interface Start {
  readonly now?: string
  readonly previous?: RunningOrder
  readonly hint?: RunningOrder
}

/**
 * From the first word of the night until the next day is over. Before that word nobody has said what was done ahead, and an order
 * that counted from now would have it all still to do.
 */
export const isTonight = (evening: Evening, nowMs: number): boolean =>
  evening.night.length > 0 && nowMs < epochMsOf(evening, { day: 2, time: '00:00' })

/** `last` is the last order that people have seen of this evening, of whatever plan. */
export const startOf = (evening: Evening, last: RunningOrder | null, nowMs: number): Start => {
  if (!isTonight(evening, nowMs)) return last ? { hint: last } : {}
  return { now: instantOfMs(evening, nowMs), ...(last ? { previous: last } : {}) }
}
