import { fail, ok, type Result } from '#lib/domain/result.ts'
import type { Invitation } from '#prisma/client/client.ts'
import type { Erased } from '#server/backup/copies.ts'
import { scrub } from '#server/db/scrub.ts'
import { live } from '#server/live.ts'
import type { GuestRefusal } from './refusal.ts'

/** A host takes a guest out of the list, with all that was told. */
export const eraseGuest = async (eveningId: string, id: string): Promise<Result<null, GuestRefusal>> => {
  const { db } = live()
  const guest = await db.guest.findFirst({ where: { eveningId, id }, select: { invitationId: true } })
  if (!guest) return fail({ kind: 'gone' })
  await db.$transaction([
    db.guest.deleteMany({ where: { eveningId, id } }),
    db.invitation.updateMany({ where: { id: guest.invitationId ?? '' }, data: { revision: { increment: 1 } } }),
  ])
  await scrub(guestErased(eveningId, [id]))
  return ok(null)
}

/**
 * A household erases all that is stored of it: its guests, also as the host wrote them, its name and its address. What stays
 * is a line without a name, so that the host sees that somebody has gone; its link opens nothing any more.
 */
export const eraseHousehold = async ({ id, eveningId }: Invitation): Promise<void> => {
  const { db } = live()
  const guests = await db.guest.findMany({ where: { invitationId: id }, select: { id: true } })
  await db.$transaction([
    db.guest.deleteMany({ where: { invitationId: id } }),
    db.invitation.update({
      where: { id },
      data: { label: '', email: null, tokenHash: null, consentAt: null, answeredAt: null, erasedAt: new Date() },
    }),
  ])
  await scrub([
    ...guestErased(
      eveningId,
      guests.map((guest) => guest.id),
    ),
    { table: 'Invitation', where: { eveningId, id } },
  ])
}

/** What of guests stands in copies of the database. */
export const guestErased = (eveningId: string, ids: readonly string[]): readonly Erased[] =>
  ids.flatMap((id): readonly Erased[] => [
    { table: 'GuestWords', where: { eveningId, guestId: id } },
    { table: 'Guest', where: { eveningId, id } },
  ])
