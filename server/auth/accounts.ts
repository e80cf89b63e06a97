import { randomUUID } from 'node:crypto'
import { z } from 'zod'
import { line } from '#lib/domain/atoms.ts'
import { refusals } from '#lib/domain/parse.ts'
import { fail, ok, type Refusal, type Result } from '#lib/domain/result.ts'
import { CLOSE } from '#lib/plan/wire.ts'
import { isTaken } from '#server/db/taken.ts'
import { live } from '#server/live.ts'
import { hashPassword, passwordIs } from './passwords.ts'
import type { User } from './session.ts'
import { requestAddress } from './who.ts'

export const Email = z
  .string()
  .trim()
  .toLowerCase()
  .pipe(z.email('must be an e-mail address').max(254, 'must be an e-mail address'))

const Password = z.string().min(10, 'must be at least 10 characters long').max(200, 'must be at most 200 characters long')

const SignUp = z.strictObject({
  email: Email,
  name: z.string().trim().min(1, 'must not be empty').pipe(line(80)),
  password: Password,
})

const SignIn = z.object({ email: Email, password: z.string().min(1).max(200) })

const Change = z.strictObject({ current: z.string().max(200), next: Password })

type TooMany = { readonly kind: 'too-many-tries'; readonly seconds: number }
type Invalid = { readonly kind: 'invalid'; readonly refusals: readonly Refusal[] }
export type SignUpRefusal = Invalid | TooMany | { readonly kind: 'email-taken' }
export type SignInRefusal = TooMany | { readonly kind: 'wrong' }
export type ChangeRefusal = Invalid | TooMany | { readonly kind: 'wrong-password' }

/** `from`: the address tries are counted for; that of the request when absent. */
export const signUp = async (data: unknown, from?: string): Promise<Result<{ readonly userId: string }, SignUpRefusal>> => {
  const parsed = SignUp.safeParse(data)
  if (!parsed.success) return fail({ kind: 'invalid', refusals: refusals(parsed.error) })
  const { email, name, password } = parsed.data
  const seconds = await live().limits.try('sign-up', from ?? (await requestAddress()))
  if (seconds > 0) return fail({ kind: 'too-many-tries', seconds })
  try {
    const user = await live().db.user.create({
      data: { id: randomUUID(), email, name, passwordHash: await hashPassword(password) },
    })
    return ok({ userId: user.id })
  } catch (cause) {
    if (isTaken(cause)) return fail({ kind: 'email-taken' })
    throw cause
  }
}

/** Never says which of the two was wrong, and takes as long for an e-mail address that nobody has. */
export const signIn = async (
  data: unknown,
  from: string,
): Promise<Result<User & { readonly sessionVersion: number }, SignInRefusal>> => {
  const parsed = SignIn.safeParse(data)
  if (!parsed.success) return fail({ kind: 'wrong' })
  const { email, password } = parsed.data
  const { db, limits } = live()
  const one = `${from} ${email}`
  const seconds = (await limits.try('sign-in', one)) || (await limits.try('sign-in-all', from))
  if (seconds > 0) return fail({ kind: 'too-many-tries', seconds })
  const user = await db.user.findUnique({ where: { email } })
  if (!(await passwordIs(user?.passwordHash ?? null, password)) || !user) return fail({ kind: 'wrong' })
  await Promise.all([limits.forgive('sign-in', one), limits.forgive('sign-in-all', from)])
  return ok({ id: user.id, email, name: user.name, sessionVersion: user.sessionVersion })
}

const Account = SignUp.omit({ name: true })
export type AccountRefusal = SignUpRefusal | { readonly kind: 'has-account' }

/**
 * Gives somebody who came by a link an e-mail address and a password. Every session ends, the one that asks too, and the link lets
 * nobody in any more: whoever made it knows it. Sign in with the password.
 */
export const makeAccount = async (userId: string, data: unknown, from?: string): Promise<Result<null, AccountRefusal>> => {
  const parsed = Account.safeParse(data)
  if (!parsed.success) return fail({ kind: 'invalid', refusals: refusals(parsed.error) })
  const { db, limits } = live()
  const seconds = await limits.try('sign-up', from ?? (await requestAddress()))
  if (seconds > 0) return fail({ kind: 'too-many-tries', seconds })
  const user = await db.user.findUniqueOrThrow({ where: { id: userId } })
  if (user.email !== null) return fail({ kind: 'has-account' })
  const { email, password } = parsed.data
  try {
    await endSessions(userId, { email, passwordHash: await hashPassword(password) })
    return ok(null)
  } catch (cause) {
    if (isTaken(cause)) return fail({ kind: 'email-taken' })
    throw cause
  }
}

/** Ends every session of this user, the one that asks too: sign in again with the new password. */
export const changePassword = async (userId: string, data: unknown): Promise<Result<null, ChangeRefusal>> => {
  const parsed = Change.safeParse(data)
  if (!parsed.success) return fail({ kind: 'invalid', refusals: refusals(parsed.error) })
  const { db, limits } = live()
  const seconds = await limits.try('change-password', userId)
  if (seconds > 0) return fail({ kind: 'too-many-tries', seconds })
  const user = await db.user.findUniqueOrThrow({ where: { id: userId } })
  if (!(await passwordIs(user.passwordHash, parsed.data.current))) return fail({ kind: 'wrong-password' })
  await limits.forgive('change-password', userId)
  await endSessions(userId, { passwordHash: await hashPassword(parsed.data.next) })
  return ok(null)
}

/** Ends every session of this user and closes their sockets. */
export const signOutEverywhere = (userId: string): Promise<void> => endSessions(userId)

/** Ends every session of this user, calls their devices no more, and closes their sockets. */
export const endSessions = async (
  userId: string,
  also: { readonly passwordHash?: string; readonly email?: string } = {},
): Promise<void> => {
  const { db, rooms } = live()
  await db.user.update({ where: { id: userId }, data: { ...also, sessionVersion: { increment: 1 } } })
  await db.pushDevice.deleteMany({ where: { member: { userId } } })
  for (const member of await db.member.findMany({ where: { userId } })) rooms.closeMember(member.id, CLOSE.signIn)
}
