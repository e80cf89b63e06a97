import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { type Hello, LAYOUT_VERSION, type OrderMessage } from '#lib/plan/wire.ts'
import { live, type Seat } from '#server/live.ts'

export interface FirstLook {
  /** As its cooks have it, without guests. */
  readonly evening: Evening
  /** What is said of the order of this plan; null: there is none yet. */
  readonly message: OrderMessage | null
  /** The last order there was, perhaps of an earlier plan. */
  readonly last: RunningOrder | null
  readonly me: Hello
  readonly nowMs: number
}

/** What somebody who sits at an evening is shown of it before the shared plan is open in their browser. Nothing is planned for it. */
export const firstLookOf = async ({ eveningId, memberId, role, cook }: Seat): Promise<FirstLook> => {
  const { planner, rooms } = live()
  const evening = await rooms.read(eveningId)
  const { message, last } = await planner.peek(eveningId, evening)
  const nowMs = Date.now()
  const me = { epoch: '', layout: LAYOUT_VERSION, minClient: LAYOUT_VERSION, member: memberId, role, cook, serverMs: nowMs }
  return { evening, message, last, me, nowMs }
}
