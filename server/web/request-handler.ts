import type { IncomingMessage, ServerResponse } from 'node:http'
import { isOwnOrigin } from '#server/auth/origins.ts'
import type { Settings } from '#server/env.ts'
import { setForwarded } from './forwarded.ts'
import { paintFirst } from './paint-first.ts'
import { setSecurityHeaders } from './security-headers.ts'

type Handler = (request: IncomingMessage, response: ServerResponse) => Promise<void>

const SAFE: ReadonlySet<string | undefined> = new Set(['GET', 'HEAD', 'OPTIONS'])

/** What stands before every page: where the request comes from, the security headers, and no changes from other sites. */
export const requestHandler =
  (handle: Handler, settings: Settings) =>
  (request: IncomingMessage, response: ServerResponse): void => {
    setForwarded(request, settings)
    setSecurityHeaders(request, response, settings.dev)
    if (!SAFE.has(request.method) && !isOwnOrigin(request, settings)) {
      response.writeHead(403, { 'content-type': 'text/plain' }).end('This comes from another site.\n')
      return
    }
    if (!settings.dev) paintFirst(request, response)
    handle(request, response).catch((cause: unknown) => {
      console.error('a request failed', cause)
      if (!response.headersSent) response.writeHead(500)
      response.end()
    })
  }
