import http, { type IncomingMessage, type ServerResponse } from 'node:http'
import type { Duplex } from 'node:stream'
import sirv from 'sirv'
import type { Settings } from '#server/env.ts'
import { root } from '#server/root.ts'

/** What answers requests that are not for the shared plan. */
export interface Pages {
  readonly ready: Promise<void>
  handle(request: IncomingMessage, response: ServerResponse): Promise<void>
  /** Takes a socket of the development tools; false when it is none. */
  upgrade(request: IncomingMessage, socket: Duplex, head: Buffer): boolean
  close(): Promise<void>
}

const BUILT = '/_next/static'
const YEAR_S = 31_536_000

/** What was built for the browsers, packed already (server/cli/finish-static.ts); each is named by what is in it, so it never changes. */
const builtFiles = (handle: Pages['handle']): Pages['handle'] => {
  const serve = sirv(`${root}.next/static`, { immutable: true, maxAge: YEAR_S, gzip: true, brotli: true })
  return async (request, response) => {
    const { url = '' } = request
    if (!url.startsWith(`${BUILT}/`)) return handle(request, response)
    request.url = url.slice(BUILT.length)
    serve(request, response, () => {
      request.url = url
      handle(request, response).catch((cause: unknown) => response.destroy(cause instanceof Error ? cause : undefined))
    })
  }
}

/** The screens, by Next. */
export const openPages = async (settings: Settings, port: number): Promise<Pages> => {
  const { default: next } = await import('next')
  // Never listens. Next hangs its own upgrade listener on it: in development the hot-reload sockets are passed there.
  const hotReload = new http.Server()
  const web = next({ dev: settings.dev, dir: root, hostname: settings.host ?? 'localhost', port, httpServer: hotReload })
  const handle = web.getRequestHandler()
  return {
    ready: web.prepare(),
    handle: settings.dev ? handle : builtFiles(handle),
    // Next leaves every other upgrade open, neither taken nor refused.
    upgrade: (request, socket, head) =>
      settings.dev && request.url?.startsWith('/_next/hmr') === true && hotReload.emit('upgrade', request, socket, head),
    close: () => web.close(),
  }
}
