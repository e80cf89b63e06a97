import type { RunningOrder } from '#lib/domain/running-order.ts'
import type { CookNow } from '#lib/night/board.ts'

/** Shorter than this nobody sits down. */
const LEAST_MS = 3 * 60_000

/** After what a cook does now and before what calls them next: until when they sit, or null. */
export const sitsNext = (order: RunningOrder, one: CookNow, nowMs: number): number | null => {
  if (!one.hands || !one.next) return null
  const from = Math.max(nowMs, one.hands.end)
  const { at } = one.next
  const sits = order.cooks.find(({ cook }) => cook === one.cook)?.sits ?? []
  const isSitting = sits.some((sit) => Date.parse(sit.from) < at && Date.parse(sit.to) > from)
  return isSitting && at - from >= LEAST_MS ? at : null
}
