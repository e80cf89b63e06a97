import { dateAt } from '#lib/domain/time.ts'
import type { Erased } from '#server/backup/copies.ts'
import { scrub } from '#server/db/scrub.ts'
import { live } from '#server/live.ts'
import { inTurn } from './in-turn.ts'
import { KEEP_DAYS, keptUntil } from './kept.ts'
import { summaryOf } from './table.ts'

/**
 * Erases the guests of every evening that has kept them for its days: who they are, what they answered, their words, their
 * invitations. An evening is done only when nothing of them is left, also in the copies. Gives how many were erased.
 */
export const eraseOverdue = async (nowMs: number): Promise<number> => {
  const { db, rooms } = live()
  const rows = await db.evening.findMany({
    where: { OR: [{ erasedAt: null }, { guests: { some: {} } }, { invitations: { some: {} } }] },
    select: { id: true, summary: true, createdAt: true, replies: { select: { keepDays: true } } },
  })
  const overdue = rows.filter(({ summary, createdAt, replies }) => {
    const told = summaryOf(summary)
    return dateAt(told.zone, nowMs) > keptUntil(told, createdAt, replies?.keepDays ?? KEEP_DAYS)
  })
  if (overdue.length === 0) return 0
  for (const { id: eveningId } of overdue)
    await inTurn(eveningId, () =>
      db.$transaction([db.guest.deleteMany({ where: { eveningId } }), db.invitation.deleteMany({ where: { eveningId } })]),
    )
  await scrub(overdue.flatMap(({ id }) => answersErased(id)))
  await db.evening.updateMany({ where: { id: { in: overdue.map(({ id }) => id) } }, data: { erasedAt: new Date(nowMs) } })
  for (const { id } of overdue) rooms.tellGuests(id)
  return overdue.length
}

const answersErased = (eveningId: string): readonly Erased[] =>
  (['GuestWords', 'Guest', 'Invitation'] as const).map((table) => ({ table, where: { eveningId } }))
