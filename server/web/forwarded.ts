import type { IncomingMessage } from 'node:http'
import type { Settings } from '#server/env.ts'

/**
 * Says in the request's headers where it came from, in one way for everything after: x-forwarded-proto, -host and -for,
 * and x-path. What the client itself said in them is believed only of a proxy that we were told to trust.
 */
export const setForwarded = (request: IncomingMessage, settings: Settings): void => {
  const { headers } = request
  const said = (name: string): string | undefined => {
    const value = settings.trustProxy ? headers[name] : undefined
    // The nearest proxy is the last to add its word.
    return (Array.isArray(value) ? value.join(',') : value)?.split(',').at(-1)?.trim() || undefined
  }
  const host = said('x-forwarded-host') ?? headers.host ?? 'localhost'
  const isPublic = settings.publicAddress !== null && new URL(settings.publicAddress).host === host
  const publicly = isPublic ? new URL(settings.publicAddress ?? '').protocol.slice(0, -1) : undefined
  const proto = said('x-forwarded-proto') ?? publicly ?? 'http'
  const from = said('x-forwarded-for') ?? request.socket.remoteAddress ?? 'unknown'
  for (const name of ['forwarded', 'x-forwarded-port', 'x-forwarded-server', 'x-middleware-subrequest']) delete headers[name]
  headers['x-forwarded-host'] = host
  headers['x-forwarded-proto'] = proto === 'https' ? 'https' : 'http'
  headers['x-forwarded-for'] = from
  headers['x-path'] = pathOf(request.url ?? '/')
}

/** Without the marks that Next's own requests carry. */
const pathOf = (url: string): string => {
  const [path, query = ''] = url.split('?', 2)
  const search = new URLSearchParams(query)
  search.delete('_rsc')
  return `${path}${search.size > 0 ? `?${search}` : ''}`
}
