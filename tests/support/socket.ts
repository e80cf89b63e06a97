import { once } from 'node:events'
import WebSocket from 'ws'

/** Opens a socket as a browser would; resolves with how it went: open, or closed with a code, or refused with a status. */
export const knock = (
  url: string,
  headers: Readonly<Record<string, string>>,
): Promise<
  | { readonly kind: 'open'; readonly socket: WebSocket; readonly closed: Promise<number> }
  | { readonly kind: 'closed'; readonly code: number }
  | { readonly kind: 'refused'; readonly status: number }
> =>
  new Promise((resolve, reject) => {
    const socket = new WebSocket(url, { headers: { ...headers } })
    socket.on('unexpected-response', (_request, response) => {
      resolve({ kind: 'refused', status: response.statusCode ?? 0 })
      response.resume()
      socket.terminate()
    })
    const closed = once(socket, 'close').then(([code]) => Number(code))
    // Its first frame says hello; a socket that is not wanted is closed without one.
    socket.on('message', () => resolve({ kind: 'open', socket, closed }))
    closed.then((code) => resolve({ kind: 'closed', code }), reject)
    socket.on('error', () => undefined)
  })
