import { randomUUID } from 'node:crypto'
import { z } from 'zod'
import { Id, line } from '#lib/domain/atoms.ts'
import { refusals } from '#lib/domain/parse.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import { endSessions } from '#server/auth/accounts.ts'
import { seatOf } from '#server/auth/seat.ts'
import { canMakeLink, canReadEvening } from '#server/evenings/may.ts'
import { noteChange } from '#server/evenings/note-change.ts'
import type { EveningRefusal } from '#server/evenings/refusal.ts'
import { inTurn } from '#server/guests/in-turn.ts'
import { hashOf, newToken } from '#server/guests/token.ts'
import { live } from '#server/live.ts'

/** For whom a link is made. One person has one link: a new one takes the place of the one before, which opens nothing any more. */
export const NewSeatLink = z.discriminatedUnion('for', [
  /** A cook of the plan whom nobody is yet. */
  z.strictObject({ for: z.literal('cook'), cook: Id }),
  /** Somebody who says which cook they are when they sit down. */
  z.strictObject({ for: z.literal('new'), label: z.string().trim().min(1, 'must not be empty').pipe(line(80)) }),
  /** Somebody who has sat down by a link. `out`: each device that came by it is out at once and needs the new one. */
  z.strictObject({ for: z.literal('member'), member: Id, out: z.boolean() }),
])
type NewSeatLink = z.infer<typeof NewSeatLink>

/** Told once: only the hash of what is in it is kept. */
export interface MadeSeatLink {
  readonly label: string
  readonly path: string
}

export interface SeatLinkLine {
  readonly id: string
  readonly label: string
  readonly cook: string | null
  /** Who has sat down by it; null: nobody yet. */
  readonly member: string | null
}

/** The links that open a seat now: all of them for a host, one's own for a cook. */
export const listSeatLinks = async (
  userId: string,
  eveningId: string,
): Promise<Result<readonly SeatLinkLine[], EveningRefusal>> => {
  const seat = await seatOf(userId, eveningId)
  if (!canReadEvening(seat)) return fail({ kind: 'not-found' })
  const whose = seat.role === 'host' ? {} : { memberId: seat.memberId }
  const links = await live().db.seatLink.findMany({
    where: { eveningId, ...whose },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
  })
  return ok(links.map(({ id, label, cook, memberId }) => ({ id, label, cook, member: memberId })))
}

/** Makes the link of one person: a host for everybody, a cook for another device of their own. */
export const makeSeatLink = async (
  userId: string,
  eveningId: string,
  data: unknown,
): Promise<Result<MadeSeatLink, EveningRefusal>> => {
  const seat = await seatOf(userId, eveningId)
  if (!canReadEvening(seat)) return fail({ kind: 'not-found' })
  const parsed = NewSeatLink.safeParse(data)
  if (!parsed.success) return fail({ kind: 'invalid', refusals: refusals(parsed.error) })
  if (!canMakeLink(seat, parsed.data.for === 'member' ? parsed.data.member : null)) return fail({ kind: 'not-allowed' })
  const made = await inTurn(eveningId, () => make(eveningId, parsed.data))
  if (made.ok) await noteChange(eveningId, seat.memberId, 'members', 'link')
  return made
}

/** More than an evening has cooks. */
const MOST_LINKS = 60

const make = async (eveningId: string, asked: NewSeatLink): Promise<Result<MadeSeatLink, EveningRefusal>> => {
  const { db, rooms } = live()
  // The link of somebody who sits here can always be replaced: it may be in other hands.
  if (asked.for !== 'member' && (await db.seatLink.count({ where: { eveningId } })) >= MOST_LINKS)
    return fail({ kind: 'too-many' })
  if (asked.for === 'new') return ok(await replace(eveningId, { label: asked.label, cook: null, memberId: null }))
  if (asked.for === 'member') {
    const member = await db.member.findFirst({ where: { id: asked.member, eveningId, revokedAt: null }, include: { user: true } })
    if (!member) return fail({ kind: 'not-found' })
    if (member.user.email !== null) return fail({ kind: 'has-account' })
    const made = await replace(eveningId, { label: member.user.name, cook: member.cook, memberId: member.id })
    if (asked.out) await endSessions(member.userId)
    return ok(made)
  }
  const cook = (await rooms.read(eveningId)).cooks.find(({ id }) => id === asked.cook)
  if (!cook) return fail({ kind: 'unknown-cook' })
  if (await db.member.findFirst({ where: { eveningId, cook: cook.id, revokedAt: null } })) return fail({ kind: 'cook-taken' })
  // Somebody who was this cook and was taken out comes back as the person they were, with what their devices have kept.
  const former = await db.member.findFirst({
    where: { eveningId, cook: cook.id, user: { email: null } },
    orderBy: { revokedAt: 'desc' },
  })
  return ok(await replace(eveningId, { label: cook.name, cook: cook.id, memberId: former?.id ?? null }))
}

interface Wanted {
  readonly label: string
  readonly cook: string | null
  readonly memberId: string | null
}

const replace = async (eveningId: string, wanted: Wanted): Promise<MadeSeatLink> => {
  const { db } = live()
  const token = newToken()
  const tokenHash = hashOf(token)
  if (tokenHash === null) throw new Error('a token of ours is no token')
  const before = [
    ...(wanted.memberId === null ? [] : [{ memberId: wanted.memberId }]),
    ...(wanted.cook === null ? [] : [{ cook: wanted.cook, memberId: null }]),
  ]
  await db.$transaction([
    ...(before.length === 0 ? [] : [db.seatLink.deleteMany({ where: { eveningId, OR: before } })]),
    db.seatLink.create({ data: { id: randomUUID(), eveningId, tokenHash, ...wanted } }),
  ])
  return { label: wanted.label, path: `/join/${token}` }
}

/** The link opens nothing any more. Who has sat down by it stays. */
export const endSeatLink = async (userId: string, eveningId: string, id: string): Promise<Result<null, EveningRefusal>> => {
  const seat = await seatOf(userId, eveningId)
  if (!canReadEvening(seat)) return fail({ kind: 'not-found' })
  const whose = seat.role === 'host' ? {} : { memberId: seat.memberId }
  return inTurn(eveningId, async () => {
    const { count } = await live().db.seatLink.deleteMany({ where: { id, eveningId, ...whose } })
    return count === 0 ? fail({ kind: 'not-found' }) : ok(null)
  })
}
