import { cookies, headers } from 'next/headers'
import { redirect } from 'next/navigation'
import { live } from '#server/live.ts'
import { addressOf, isSecure, pathOf } from './request.ts'
import { cookieName, SESSION_SECONDS, sessionToken, type User, userOfCookies } from './session.ts'

/** Who asks; null when nobody is signed in. Asks the database each time: a session may have been ended. */
export const currentUser = async (): Promise<User | null> => {
  const all = Object.fromEntries((await cookies()).getAll().map(({ name, value }) => [name, value]))
  return userOfCookies(all, isSecure(await headers()))
}

/** Who asks; sends everybody else to sign in and back to this page. */
export const requireUser = async (): Promise<User> => {
  const user = await currentUser()
  if (user) return user
  redirect(`/sign-in?next=${encodeURIComponent(pathOf(await headers()))}`)
}

/** Lets this browser alone in again, after every session of its user was ended at its wish. In an action only. */
export const stayIn = async (userId: string): Promise<void> => {
  const { id, sessionVersion } = await live().db.user.findUniqueOrThrow({ where: { id: userId } })
  const secure = isSecure(await headers())
  const value = await sessionToken({ userId: id, sessionVersion })
  const cookie = { httpOnly: true, sameSite: 'lax', path: '/', secure, maxAge: SESSION_SECONDS } as const
  ;(await cookies()).set(cookieName(secure), value, cookie)
}

export const requestAddress = async (): Promise<string> => addressOf(await headers())
