import { EventEmitter } from 'node:events'
import type { WebSocket } from 'ws'

/**
 * A socket pair in memory. Frames lie in two queues until they are delivered by hand, one by one, in any order, twice or
 * never: what a network may do, done on purpose.
 */
export interface Loopback {
  /** What the server holds. */
  readonly server: WebSocket
  readonly toServer: Uint8Array[]
  readonly toClient: Uint8Array[]
  /** Set when the server has closed it; the client learns of it when its queue is empty. */
  readonly closed: { code: number } | null
  /** Gives the server the frame at `index` of its queue. */
  deliverToServer(index?: number): void
  /** The line is cut: what was under way is lost, and the server hears of it. */
  cut(): void
  /** The other side answers a ping. */
  pong(): void
}

export const loopback = (): Loopback => {
  const events = new EventEmitter()
  const toServer: Uint8Array[] = []
  const toClient: Uint8Array[] = []
  let closed: { code: number } | null = null
  let pings = 0
  const end = (code: number) => {
    if (closed) return
    closed = { code }
    toServer.length = 0
    events.emit('close', code)
  }
  const server = {
    bufferedAmount: 0,
    get readyState() {
      return closed ? 3 : 1
    },
    on: (event: string, listener: (...values: unknown[]) => void) => events.on(event, listener),
    send: (frame: Uint8Array) => {
      if (!closed) toClient.push(frame.slice())
    },
    close: end,
    terminate: () => end(1006),
    ping: () => {
      pings += 1
    },
  }
  return {
    server: server as unknown as WebSocket,
    toServer,
    toClient,
    get closed() {
      return closed
    },
    deliverToServer(index = 0) {
      const [frame] = toServer.splice(index, 1)
      if (frame && !closed) events.emit('message', Buffer.from(frame), true)
    },
    cut() {
      toClient.length = 0
      end(1006)
    },
    pong() {
      if (pings > 0) events.emit('pong')
    },
  }
}
