import type { IncomingMessage } from 'node:http'
import type { Settings } from '#server/env.ts'
import { isLinkPath } from '#server/web/security-headers.ts'

/**
 * Whether a request that can change something comes from a page of this site. A browser always says where from; what
 * says nothing is no browser, has no person's cookies, and is let by.
 */
export const isOwnOrigin = (request: IncomingMessage, settings: Settings): boolean => {
  const { origin } = request.headers
  // A form on a page without referrers is posted from "null" (Fetch, 3.3). Who posts to a secret address knows the secret; where a
  // cookie counts too, as on the page of a seat, it is one that no other site can have sent (SameSite).
  if (origin === 'null' && isLinkPath(request.url ?? '')) return request.headers['sec-fetch-site'] !== 'cross-site'
  if (origin === undefined) return request.headers['sec-fetch-site'] !== 'cross-site'
  const host = request.headers['x-forwarded-host'] ?? request.headers.host
  const own = `${request.headers['x-forwarded-proto']}://${host}`
  return [own, settings.publicAddress, ...settings.origins].includes(origin)
}
