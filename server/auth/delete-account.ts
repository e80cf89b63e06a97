import { fail, ok, type Result } from '#lib/domain/result.ts'
import { CLOSE } from '#lib/plan/wire.ts'
import { scrub } from '#server/db/scrub.ts'
import { takeAway } from '#server/evenings/delete.ts'
import { Summary } from '#server/evenings/summary.ts'
import { live } from '#server/live.ts'
import { passwordIs } from './passwords.ts'

export interface Stake {
  readonly id: string
  readonly name: string
}

/** What hangs on an account. */
export interface Stakes {
  /** Evenings that others have a seat at and nobody else is host of: they need another host first. */
  readonly needHost: readonly Stake[]
  /** Evenings that nobody else has a seat at: they go with the account. */
  readonly alone: readonly Stake[]
}

export type DeleteRefusal =
  | { readonly kind: 'wrong-password' }
  | { readonly kind: 'not-the-name' }
  | { readonly kind: 'too-many-tries'; readonly seconds: number }
  | { readonly kind: 'last-host'; readonly evenings: readonly Stake[] }

/** What would become of this user's evenings. */
export const stakesOf = async (userId: string): Promise<Stakes> => {
  const seats = await live().db.member.findMany({
    where: { userId, revokedAt: null, evening: { deletedAt: null } },
    include: { evening: { include: { members: { where: { revokedAt: null, NOT: { userId } }, select: { role: true } } } } },
  })
  const stake = ({ evening }: (typeof seats)[number]): Stake => ({
    id: evening.id,
    name: Summary.parse(JSON.parse(evening.summary)).name,
  })
  const isOnlyHost = ({ role, evening }: (typeof seats)[number]) =>
    role === 'host' && evening.members.length > 0 && !evening.members.some((other) => other.role === 'host')
  return {
    needHost: seats.filter(isOnlyHost).map(stake),
    alone: seats.filter(({ evening }) => evening.members.length === 0).map(stake),
  }
}

/**
 * Deletes an account with its seats and the evenings that nobody else has a seat at. What they wrote in others' plans stays there.
 * `typed`: their password, or their name when they came by a link.
 */
export const deleteAccount = async (userId: string, typed: string): Promise<Result<null, DeleteRefusal>> => {
  const { db, limits, rooms } = live()
  const user = await db.user.findUniqueOrThrow({ where: { id: userId } })
  if (user.passwordHash === null) {
    if (typed.trim() !== user.name.trim()) return fail({ kind: 'not-the-name' })
  } else {
    const seconds = await limits.try('change-password', userId)
    if (seconds > 0) return fail({ kind: 'too-many-tries', seconds })
    if (!(await passwordIs(user.passwordHash, typed))) return fail({ kind: 'wrong-password' })
    await limits.forgive('change-password', userId)
  }
  const { needHost, alone } = await stakesOf(userId)
  if (needHost.length > 0) return fail({ kind: 'last-host', evenings: needHost })
  const members = await db.member.findMany({ where: { userId }, select: { id: true } })
  await takeAway(alone.map(({ id }) => id))
  await db.user.delete({ where: { id: userId } })
  for (const { id } of members) rooms.closeMember(id, CLOSE.signIn)
  await scrub([{ table: 'User', where: { id: userId } }])
  return ok(null)
}
