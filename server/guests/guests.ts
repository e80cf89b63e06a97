import { randomUUID } from 'node:crypto'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import { live } from '#server/live.ts'
import type { Add, SetGuest, SetReplies } from './command.ts'
import { nextPlace } from './invitations.ts'
import { KEEP_DAYS } from './kept.ts'
import { MOST_GUESTS } from './most.ts'
import type { GuestRefusal } from './refusal.ts'
import { guestOf, guestRow, loadGuests } from './rows.ts'

// What hosts write about guests themselves. Who may is asked in do-command.ts.

export const addGuest = async (eveningId: string, { guest }: Add): Promise<Result<null, GuestRefusal>> => {
  const { db } = live()
  const all = await db.guest.findMany({ where: { eveningId }, select: { place: true } })
  if (all.length >= MOST_GUESTS) return fail({ kind: 'too-many' })
  const id = randomUUID()
  const row = { eveningId, id, place: nextPlace(all), ...guestRow(guest), changedAt: new Date() }
  await db.$transaction([
    db.guest.create({ data: row }),
    ...(guest.words === '' ? [] : [db.guestWords.create({ data: { eveningId, guestId: id, words: guest.words } })]),
  ])
  return ok(null)
}

/** What the guest told by phone, say. An answer that they are just writing is then told that theirs is of an older one. */
export const setGuest = async (eveningId: string, { guest: id, change }: SetGuest): Promise<Result<null, GuestRefusal>> => {
  const [row] = await loadGuests({ eveningId, id })
  if (!row) return fail({ kind: 'gone' })
  const { arrives, ...rest } = change
  const { arrives: before, ...guest } = guestOf(row)
  const time = arrives === undefined ? before : (arrives ?? undefined)
  const written = { ...guest, ...rest, ...(time && { arrives: time }) }
  const { db } = live()
  const words = { eveningId, guestId: id, words: written.words }
  await db.$transaction([
    db.guest.update({
      where: { eveningId_id: { eveningId, id } },
      data: { ...guestRow(written), changedAt: new Date(), byGuest: false },
    }),
    db.guestWords.deleteMany({ where: { eveningId, guestId: id } }),
    ...(written.words === '' ? [] : [db.guestWords.create({ data: words })]),
    db.invitation.updateMany({ where: { id: row.invitationId ?? '' }, data: { revision: { increment: 1 } } }),
  ])
  return ok(null)
}

/** Whether a guest agreed when it was said that their answer is kept for fewer days. */
const isPromised = async (eveningId: string, keepDays: number): Promise<boolean> => {
  const { db } = live()
  const [replies, agreed] = await Promise.all([
    db.replies.findUnique({ where: { eveningId }, select: { keepDays: true } }),
    db.invitation.count({ where: { eveningId, consentAt: { not: null } } }),
  ])
  return agreed > 0 && keepDays > (replies?.keepDays ?? KEEP_DAYS)
}

export const setReplies = async (eveningId: string, asked: SetReplies): Promise<Result<null, GuestRefusal>> => {
  const { closed, answerBy, sharesMenu, place, keepDays } = asked
  if (keepDays !== undefined && (await isPromised(eveningId, keepDays))) return fail({ kind: 'promised' })
  const data = {
    ...(closed !== undefined && { closedAt: closed ? new Date() : null }),
    ...(answerBy !== undefined && { answerBy }),
    ...(sharesMenu !== undefined && { sharesMenu }),
    ...(place !== undefined && { place }),
    ...(keepDays !== undefined && { keepDays }),
  }
  await live().db.replies.upsert({ where: { eveningId }, create: { eveningId, ...data }, update: data })
  return ok(null)
}
