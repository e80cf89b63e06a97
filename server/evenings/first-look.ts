import { type Hello, LAYOUT_VERSION } from '#lib/plan/wire.ts'
import { live, type Seat } from '#server/live.ts'

/** What somebody who sits at an evening is shown of it before the shared plan is open in their browser. Nothing is planned for it. */
export const firstLookOf = async ({ eveningId, memberId, role, cook }: Seat) => {
  const { planner, rooms } = live()
  const evening = await rooms.read(eveningId)
  const { message, last } = await planner.peek(eveningId, evening)
  const nowMs = Date.now()
  const me: Hello = {
    epoch: '',
    layout: LAYOUT_VERSION,
    minClient: LAYOUT_VERSION,
    member: memberId,
    role,
    cook,
    serverMs: nowMs,
  }
  return { evening, message, last, me, nowMs }
}
