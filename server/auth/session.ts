import { encode, getToken } from 'next-auth/jwt'
import { z } from 'zod'
import { live } from '#server/live.ts'

export interface User {
  readonly id: string
  /** null: they came by a link, and have that one seat and no account. */
  readonly email: string | null
  readonly name: string
}

/** What a session's token says beside next-auth's own fields. */
export const Claims = z.object({ userId: z.string(), sessionVersion: z.int() })

export const cookieName = (secure: boolean): string => `${secure ? '__Secure-' : ''}tableward.session`

export const SESSION_SECONDS = 30 * 24 * 60 * 60

/** What a browser keeps to be this user, as from next-auth's own sign-in. */
export const sessionToken = (claims: z.infer<typeof Claims>): Promise<string> =>
  encode({ token: { ...claims }, secret: secret(), maxAge: SESSION_SECONDS })

/** The line that lets a browser in as this user. */
export const sessionCookieLine = async (claims: z.infer<typeof Claims>, secure: boolean): Promise<string> => {
  const value = await sessionToken(claims)
  return `${cookieName(secure)}=${value}; Path=/; Max-Age=${SESSION_SECONDS}; HttpOnly; SameSite=Lax${secure ? '; Secure' : ''}`
}

/** The secret of the data folder, which server/main.ts hands on in the environment: Next's half of the process needs it too. */
export const secret = (): string => {
  const found = process.env.NEXTAUTH_SECRET
  if (!found) throw new Error('the server has not started: there is no secret')
  return found
}

/** Who these cookies are, if they still are: a session ends when the user's session version rises. */
export const userOfCookies = async (cookies: Partial<Record<string, string>>, secure: boolean): Promise<User | null> => {
  const token = await getToken({
    // No headers: next-auth would also take a bearer token.
    req: { cookies, headers: {} } as unknown as Parameters<typeof getToken>[0]['req'],
    secret: secret(),
    cookieName: cookieName(secure),
    secureCookie: secure,
  })
  const claims = Claims.safeParse(token)
  return claims.success ? userOfClaims(claims.data) : null
}

export const userOfClaims = async ({ userId, sessionVersion }: z.infer<typeof Claims>): Promise<User | null> => {
  const user = await live().db.user.findUnique({ where: { id: userId } })
  return user && user.sessionVersion === sessionVersion ? { id: user.id, email: user.email, name: user.name } : null
}
