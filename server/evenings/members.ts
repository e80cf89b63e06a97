import { randomUUID } from 'node:crypto'
import { z } from 'zod'
import { Id } from '#lib/domain/atoms.ts'
import { refusals } from '#lib/domain/parse.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import { CLOSE } from '#lib/plan/wire.ts'
import { Email } from '#server/auth/accounts.ts'
import { roleOf, seatOf } from '#server/auth/seat.ts'
import { isTaken } from '#server/db/taken.ts'
import { live } from '#server/live.ts'
import { canManageMembers, canReadEvening, canRemoveMember, canSeeMembers, canSetCook } from './may.ts'
import { noteChange } from './note-change.ts'
import type { EveningRefusal } from './refusal.ts'

export interface MemberLine {
  readonly id: string
  readonly userId: string
  readonly name: string
  /** Told to hosts, and of oneself; null: not told, or none. */
  readonly email: string | null
  /** They have an account; else they came by a link. */
  readonly account: boolean
  readonly role: 'host' | 'cook'
  readonly cook: string | null
  readonly you: boolean
}

const NewMember = z.strictObject({ email: Email, role: z.enum(['host', 'cook']), cook: z.nullable(Id) })

/** Everybody with a seat, hosts first. */
export const listMembers = async (userId: string, eveningId: string): Promise<Result<readonly MemberLine[], EveningRefusal>> => {
  const seat = await seatOf(userId, eveningId)
  if (!canSeeMembers(seat)) return fail({ kind: 'not-found' })
  const members = await live().db.member.findMany({ where: { eveningId, revokedAt: null }, include: { user: true } })
  const lines = members.map(({ id, userId: whose, role, cook, user }) => ({
    id,
    userId: whose,
    name: user.name,
    email: canManageMembers(seat) || whose === userId ? user.email : null,
    account: user.email !== null,
    role: roleOf(role),
    cook,
    you: whose === userId,
  }))
  const rank = (line: MemberLine) => `${line.role === 'host' ? 0 : 1} ${line.name} ${line.id}`
  return ok(lines.sort((a, b) => (rank(a) < rank(b) ? -1 : 1)))
}

/** Gives somebody who has an account a seat; somebody who was removed gets theirs back. */
export const addMember = async (
  userId: string,
  eveningId: string,
  data: unknown,
): Promise<Result<{ readonly memberId: string }, EveningRefusal>> => {
  const parsed = NewMember.safeParse(data)
  const seat = await seatOf(userId, eveningId)
  if (!canReadEvening(seat)) return fail({ kind: 'not-found' })
  if (!canManageMembers(seat)) return fail({ kind: 'not-allowed' })
  if (!parsed.success) return fail({ kind: 'invalid', refusals: refusals(parsed.error) })
  const { email, role, cook } = parsed.data
  const { db } = live()
  const user = await db.user.findUnique({ where: { email } })
  if (!user) return fail({ kind: 'no-such-account' })
  const why = await whyNotCook(eveningId, cook, null)
  if (why) return fail(why)
  const before = await db.member.findUnique({ where: { eveningId_userId: { eveningId, userId: user.id } } })
  if (before && !before.revokedAt) return fail({ kind: 'already-member' })
  if (before) {
    await db.member.update({ where: { id: before.id }, data: { role, cook, revokedAt: null } })
    await noteChange(eveningId, seat.memberId, 'members', 'add')
    return ok({ memberId: before.id })
  }
  try {
    const made = await db.member.create({ data: { id: randomUUID(), eveningId, userId: user.id, role, cook } })
    await noteChange(eveningId, seat.memberId, 'members', 'add')
    return ok({ memberId: made.id })
  } catch (cause) {
    if (isTaken(cause)) return fail({ kind: 'already-member' })
    throw cause
  }
}

/** Takes a seat away and closes its sockets at once; its link opens nothing any more. The evening keeps at least one host. */
export const removeMember = async (
  userId: string,
  eveningId: string,
  memberId: string,
): Promise<Result<null, EveningRefusal>> => {
  const seat = await seatOf(userId, eveningId)
  if (!canReadEvening(seat)) return fail({ kind: 'not-found' })
  if (!canRemoveMember(seat, memberId)) return fail({ kind: 'not-allowed' })
  const { db, rooms } = live()
  const seated = { id: memberId, eveningId, revokedAt: null }
  if (!(await db.member.findFirst({ where: seated }))) return fail({ kind: 'not-found' })
  // One statement: two hosts who remove each other at once do not both get their way.
  const removed = await db.$executeRaw`
    UPDATE "Member" SET "revokedAt" = ${new Date()}
    WHERE "id" = ${memberId} AND "eveningId" = ${eveningId} AND "revokedAt" IS NULL
      AND EXISTS (SELECT 1 FROM "Member" AS other WHERE other."eveningId" = ${eveningId} AND other."id" <> ${memberId}
                  AND other."role" = 'host' AND other."revokedAt" IS NULL)`
  if (removed === 0) return fail({ kind: 'last-host' })
  await db.$transaction([
    db.seatLink.deleteMany({ where: { memberId } }),
    db.pushDevice.deleteMany({ where: { memberId } }),
    db.calendarFeed.deleteMany({ where: { memberId } }),
    db.notice.deleteMany({ where: { memberId } }),
  ])
  rooms.closeMember(memberId, CLOSE.removed)
  await noteChange(eveningId, seat.memberId, 'members', 'remove')
  return ok(null)
}

/** Says which cook of the plan a member is; each cook is one member at most. */
export const setCook = async (
  userId: string,
  eveningId: string,
  memberId: string,
  cook: string | null,
): Promise<Result<null, EveningRefusal>> => {
  const seat = await seatOf(userId, eveningId)
  if (!canReadEvening(seat)) return fail({ kind: 'not-found' })
  if (!canSetCook(seat, memberId)) return fail({ kind: 'not-allowed' })
  const { db, rooms } = live()
  if (!(await db.member.findFirst({ where: { id: memberId, eveningId, revokedAt: null } }))) return fail({ kind: 'not-found' })
  const why = await whyNotCook(eveningId, cook, memberId)
  if (why) return fail(why)
  await db.member.update({ where: { id: memberId }, data: { cook } })
  rooms.reseat(memberId)
  await noteChange(eveningId, seat.memberId, 'members', 'cook')
  return ok(null)
}

const Role = z.enum(['host', 'cook'])

/** Makes a host of somebody who has an account, or a cook of a host. The evening keeps at least one host. */
export const setRole = async (
  userId: string,
  eveningId: string,
  memberId: string,
  asked: unknown,
): Promise<Result<null, EveningRefusal>> => {
  const seat = await seatOf(userId, eveningId)
  if (!canReadEvening(seat)) return fail({ kind: 'not-found' })
  if (!canManageMembers(seat)) return fail({ kind: 'not-allowed' })
  const role = Role.safeParse(asked)
  if (!role.success) return fail({ kind: 'invalid', refusals: refusals(role.error) })
  const { db, rooms } = live()
  const found = await db.member.findFirst({ where: { id: memberId, eveningId, revokedAt: null }, include: { user: true } })
  if (!found) return fail({ kind: 'not-found' })
  // Whoever made a link could come in by it: nobody becomes a host on the strength of one.
  if (role.data === 'host' && found.user.email === null) return fail({ kind: 'needs-account' })
  // One statement: two hosts who step down at once do not both get their way.
  const changed = await db.$executeRaw`
    UPDATE "Member" SET "role" = ${role.data}
    WHERE "id" = ${memberId} AND "eveningId" = ${eveningId} AND "revokedAt" IS NULL
      AND (${role.data} = 'host' OR EXISTS (SELECT 1 FROM "Member" AS other WHERE other."eveningId" = ${eveningId}
           AND other."id" <> ${memberId} AND other."role" = 'host' AND other."revokedAt" IS NULL))`
  if (changed === 0) return fail({ kind: 'last-host' })
  rooms.reseat(memberId)
  await noteChange(eveningId, seat.memberId, 'members', 'role')
  return ok(null)
}

const whyNotCook = async (eveningId: string, cook: string | null, memberId: string | null): Promise<EveningRefusal | null> => {
  if (cook === null) return null
  const { db, rooms } = live()
  const { cooks } = await rooms.read(eveningId)
  if (!cooks.some(({ id }) => id === cook)) return { kind: 'unknown-cook' }
  const others = { eveningId, cook, revokedAt: null, ...(memberId === null ? {} : { NOT: { id: memberId } }) }
  return (await db.member.findFirst({ where: others })) ? { kind: 'cook-taken' } : null
}
