import { fail, ok, type Result } from '#lib/domain/result.ts'
import { CLOSE } from '#lib/plan/wire.ts'
import { seatOf } from '#server/auth/seat.ts'
import { scrub } from '#server/db/scrub.ts'
import { live } from '#server/live.ts'
import { canDeleteEvening, canReadEvening } from './may.ts'
import type { EveningRefusal } from './refusal.ts'

/** A host deletes an evening for everybody, for good; `name` is what they typed so that it is this one they mean. */
export const deleteEvening = async (userId: string, eveningId: string, name: string): Promise<Result<null, EveningRefusal>> => {
  const seat = await seatOf(userId, eveningId)
  if (!canReadEvening(seat)) return fail({ kind: 'not-found' })
  if (!canDeleteEvening(seat)) return fail({ kind: 'not-allowed' })
  const evening = await live().rooms.read(eveningId)
  if (name.trim() !== evening.name.trim()) return fail({ kind: 'not-the-name' })
  await takeAway([eveningId])
  return ok(null)
}

/**
 * Deletes evenings with their plans, guests, answers, links and seats, and who came to them by a link and has nothing else here; leaves
 * nothing of all that in the database or its copies.
 */
export const takeAway = async (eveningIds: readonly string[]): Promise<void> => {
  if (eveningIds.length === 0) return
  const { db, rooms, planner } = live()
  const which = { id: { in: [...eveningIds] } }
  // First of all nobody gets in any more; what is on its way to the disk then finds no evening.
  await db.evening.updateMany({ where: which, data: { deletedAt: new Date() } })
  for (const eveningId of eveningIds) {
    rooms.closeEvening(eveningId, CLOSE.gone)
    planner.forget(eveningId)
  }
  const byLink = await db.user.findMany({
    where: { email: null, memberships: { some: { evening: which } } },
    select: { id: true },
  })
  await db.evening.deleteMany({ where: which })
  // With an account by now, they stay.
  const gone = { id: { in: byLink.map(({ id }) => id) }, email: null, memberships: { none: {} } }
  const users = await db.user.findMany({ where: gone, select: { id: true } })
  await db.user.deleteMany({ where: gone })
  await scrub([
    ...eveningIds.map((id) => ({ table: 'Evening' as const, where: { id } })),
    ...users.map(({ id }) => ({ table: 'User' as const, where: { id } })),
  ])
}
