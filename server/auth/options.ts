import type { NextAuthOptions } from 'next-auth'
import Credentials from 'next-auth/providers/credentials'
import { signIn } from './accounts.ts'
import { addressOf, isSecure, type RequestHeaders } from './request.ts'
import { Claims, cookieName, SESSION_SECONDS, secret, userOfClaims } from './session.ts'

/** next-auth's settings for one request: whether cookies are for TLS alone depends on how it came in. */
export const authOptions = (headers: RequestHeaders): NextAuthOptions => {
  const secure = isSecure(headers)
  return {
    secret: secret(),
    useSecureCookies: secure,
    cookies: {
      sessionToken: {
        name: cookieName(secure),
        options: { httpOnly: true, sameSite: 'lax', path: '/', secure },
      },
    },
    session: { strategy: 'jwt', maxAge: SESSION_SECONDS },
    pages: { signIn: '/sign-in', signOut: '/', error: '/sign-in' },
    // A session that was ended, or whose secret is gone, is an everyday thing and no error.
    logger: { error: (code, metadata) => code !== 'JWT_SESSION_ERROR' && console.error(code, metadata), warn: () => undefined },
    providers: [
      Credentials({
        name: 'Tableward',
        credentials: { email: { label: 'E-mail', type: 'email' }, password: { label: 'Password', type: 'password' } },
        authorize: async (credentials) => {
          const signed = await signIn(credentials, addressOf(headers))
          if (signed.ok) return signed.value
          // The only way in which next-auth hands a reason to the page.
          throw new Error(signed.error.kind === 'wrong' ? 'wrong' : `too-many-tries:${signed.error.seconds}`)
        },
      }),
    ],
    callbacks: {
      jwt: async ({ token, user }) => {
        if (user) return { ...token, userId: user.id, sessionVersion: 'sessionVersion' in user ? user.sessionVersion : 0 }
        if ((await userOfClaims(Claims.parse(token))) === null) throw new Error('this session has been ended')
        return token
      },
    },
  }
}
