import { encode } from 'next-auth/jwt'
import { cookieName } from '#server/auth/session.ts'

/** The cookie of somebody who has signed in over plain http, as next-auth would have set it. */
export const sessionCookie = async (secret: string, userId: string, sessionVersion = 1): Promise<string> =>
  `${cookieName(false)}=${await encode({ token: { userId, sessionVersion }, secret })}`
