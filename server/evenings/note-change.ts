import { live } from '#server/live.ts'

const SPAN_MS = 10 * 60_000

/** Notes that somebody changed something that stands beside the plan: what kind of thing it was, and nothing of what it says. */
export const noteChange = async (
  eveningId: string,
  memberId: string,
  root: 'guests' | 'members',
  field: string,
  entry = '',
): Promise<void> => {
  const now = Date.now()
  const span = Math.floor(now / SPAN_MS)
  const place = { eveningId, span, memberId, root, entry, field }
  await live().db.planChange.upsert({
    where: { eveningId_span_memberId_root_entry_field: place },
    create: { ...place, times: 1, at: new Date(now) },
    update: { times: { increment: 1 }, at: new Date(now) },
  })
}
