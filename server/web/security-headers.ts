import { randomBytes } from 'node:crypto'
import type { IncomingMessage, ServerResponse } from 'node:http'

/**
 * Headers of every answer. Next finds the policy among the request's headers and puts its nonce on the scripts it writes;
 * pages find it in x-nonce. React and React Aria set style attributes, so styles may be inline.
 */
export const setSecurityHeaders = (request: IncomingMessage, response: ServerResponse, dev: boolean): void => {
  const nonce = randomBytes(16).toString('base64')
  const host = request.headers.host ?? ''
  const sockets = /^[A-Za-z0-9.:[\]-]+$/.test(host) ? ` ws://${host} wss://${host}` : ''
  const policy = [
    "default-src 'self'",
    // Next's development tools evaluate code.
    `script-src 'self' 'nonce-${nonce}'${dev ? " 'unsafe-eval'" : ''}`,
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "font-src 'self'",
    `connect-src 'self'${sockets}`,
    "worker-src 'self' blob:",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ')
  request.headers['content-security-policy'] = policy
  request.headers['x-nonce'] = nonce
  response.setHeader('Content-Security-Policy', policy)
  response.setHeader('X-Content-Type-Options', 'nosniff')
  const isLink = isLinkPath(request.url ?? '')
  response.setHeader('Referrer-Policy', isLink ? 'no-referrer' : 'same-origin')
  if (isLink) {
    response.setHeader('Cache-Control', 'no-store')
    response.setHeader('X-Robots-Tag', 'noindex, nofollow')
  }
  response.setHeader('X-Frame-Options', 'DENY')
  response.setHeader('Cross-Origin-Opener-Policy', 'same-origin')
  response.setHeader('Permissions-Policy', 'camera=(), microphone=(), geolocation=()')
  if (request.headers['x-forwarded-proto'] === 'https') response.setHeader('Strict-Transport-Security', 'max-age=31536000')
}

/** Pages whose address is a secret: it goes to no other site, into no store and into no index. */
export const isLinkPath = (path: string): boolean => /^\/(reply|join|calendar|unsubscribe)\//.test(path)
