import { cookies, headers } from 'next/headers'
import { redirect } from 'next/navigation'
import { addressOf, isSecure, pathOf } from './request.ts'
import { type User, userOfCookies } from './session.ts'

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

export const requestAddress = async (): Promise<string> => addressOf(await headers())
