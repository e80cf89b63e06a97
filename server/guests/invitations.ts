import { randomUUID } from 'node:crypto'
import { UNANSWERED } from '#lib/domain/people.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import type { Invitation, Prisma } from '#prisma/client/client.ts'
import { live } from '#server/live.ts'
import type { Change, Invite } from './command.ts'
import { MOST_GUESTS } from './most.ts'
import type { GuestRefusal } from './refusal.ts'
import { guestRow } from './rows.ts'
import { hashOf, newToken } from './token.ts'

// What hosts do with invitations. Who may is asked in do-command.ts.

/** As many households as a dinner has people. */
const MOST_INVITATIONS = 60

export interface MadeLink {
  readonly invitation: string
  readonly token: string
}

/** An invitation with its guests: new ones by name, and those that the host had written down and that have no link yet. */
export const invite = async (eveningId: string, asked: Invite): Promise<Result<MadeLink, GuestRefusal>> => {
  const { db } = live()
  const [invitations, all] = await Promise.all([
    db.invitation.count({ where: { eveningId } }),
    db.guest.findMany({ where: { eveningId }, select: { id: true, place: true, invitationId: true } }),
  ])
  const known = all.filter(({ id, invitationId }) => asked.guests.includes(id) && invitationId === null)
  if (known.length < new Set(asked.guests).size) return fail({ kind: 'gone' })
  const isFull = known.length + asked.names.length > asked.places || all.length + asked.names.length > MOST_GUESTS
  if (invitations >= MOST_INVITATIONS || isFull) return fail({ kind: 'too-many' })
  const invitation = randomUUID()
  const token = newToken()
  const first = nextPlace(all)
  await db.$transaction([
    db.invitation.create({
      data: {
        id: invitation,
        eveningId,
        label: asked.label,
        places: asked.places,
        tokenHash: hashOf(token),
        email: asked.email ?? null,
      },
    }),
    db.guest.updateMany({ where: { eveningId, id: { in: known.map(({ id }) => id) } }, data: { invitationId: invitation } }),
    db.guest.createMany({
      data: asked.names.map((name, at) => ({
        ...guestRow({ ...UNANSWERED, name }),
        eveningId,
        id: randomUUID(),
        place: first + at,
        invitationId: invitation,
      })),
    }),
  ])
  return ok({ invitation, token })
}

/** The next place in the list of guests. */
export const nextPlace = (guests: readonly { readonly place: number }[]): number =>
  Math.max(-1, ...guests.map(({ place }) => place)) + 1

/** A new link; the old one is dead when this is stored. One that was withdrawn comes to life again by it. */
export const rotate = async (eveningId: string, id: string): Promise<Result<MadeLink, GuestRefusal>> => {
  const found = await invitationOf(eveningId, id)
  if (!found) return fail({ kind: 'gone' })
  if (found.erasedAt) return fail({ kind: 'withdrawn' })
  const token = newToken()
  await live().db.invitation.update({ where: { id }, data: { tokenHash: hashOf(token), revokedAt: null } })
  return ok({ invitation: id, token })
}

/** The link opens nothing any more; what was answered by it stays. */
export const revoke = async (eveningId: string, id: string): Promise<Result<null, GuestRefusal>> => {
  const found = await invitationOf(eveningId, id)
  if (!found) return fail({ kind: 'gone' })
  if (found.revokedAt || found.erasedAt) return ok(null)
  await live().db.invitation.update({ where: { id }, data: { tokenHash: null, revokedAt: new Date() } })
  return ok(null)
}

/** Takes the invitation away; its guests stay in the list, and the host writes for them. */
export const forget = async (eveningId: string, id: string): Promise<Result<null, GuestRefusal>> => {
  const { count } = await live().db.invitation.deleteMany({ where: { id, eveningId } })
  return count === 0 ? fail({ kind: 'gone' }) : ok(null)
}

export const change = async (eveningId: string, asked: Change): Promise<Result<null, GuestRefusal>> => {
  const { invitation: id, label, places, email } = asked
  const found = await invitationOf(eveningId, id)
  if (!found) return fail({ kind: 'gone' })
  if (found.erasedAt) return fail({ kind: 'withdrawn' })
  const { db } = live()
  if (places !== undefined && places < (await db.guest.count({ where: { invitationId: id } }))) return fail({ kind: 'too-many' })
  const data: Prisma.InvitationUpdateInput = { ...(label && { label }), ...(places && { places }) }
  await db.invitation.update({ where: { id }, data: email === undefined ? data : { ...data, email } })
  return ok(null)
}

/** The invitation of this evening; null when it is another one's. */
export const invitationOf = (eveningId: string, id: string): Promise<Invitation | null> =>
  live().db.invitation.findFirst({ where: { id, eveningId } })
