import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import type { Hello, OrderMessage } from '#lib/plan/wire.ts'

/** An evening as a page is first drawn, on the server, before the shared plan is open in the browser. */
export interface Look {
  readonly evening: Evening
  readonly message: OrderMessage | null
  /** The last order there was, perhaps of an earlier plan. */
  readonly last: RunningOrder | null
  readonly me: Hello
  readonly nowMs: number
  /** How wide the window probably is, in CSS pixels. */
  readonly width: number
}

const KEY = Symbol.for('tableward.looks')
type Holder = { [KEY]?: Map<string, Look> }

/** More than are drawn at the same moment; what was never fetched is forgotten. */
const MOST = 64

const looks = (): Map<string, Look> => {
  const holder = globalThis as Holder
  holder[KEY] ??= new Map()
  return holder[KEY]
}

/**
 * From the part of a page that only the server runs to the part that is drawn there as well as in the browser (decision 038): a ticket
 * goes into the page in its place, a few letters instead of the whole plan a second time. The two parts are bundles of
 * their own, so what is handed over waits on globalThis.
 */
export const handLook = (look: Look): string => {
  const kept = looks()
  const ticket = crypto.randomUUID()
  kept.set(ticket, look)
  for (const old of kept.keys()) {
    if (kept.size <= MOST) break
    kept.delete(old)
  }
  return ticket
}

export const lookOf = (ticket: string): Look | null => looks().get(ticket) ?? null
