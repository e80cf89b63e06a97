import type { IncomingMessage } from 'node:http'
import type { Duplex } from 'node:stream'
import { WebSocketServer } from 'ws'
import type { Rooms, Seat } from '#server/live.ts'
import { LIMITS } from './limits.ts'

/** Whether somebody may come in, decided at the upgrade. */
export type Entrance = { readonly kind: 'seat'; readonly seat: Seat } | { readonly kind: 'refused'; readonly code: number }

/** Where sockets come in. */
export interface SyncDoor {
  /** Takes over an upgrade request. The refused are let in only to be told why with a close code, or they would try for ever. */
  admit(request: IncomingMessage, socket: Duplex, head: Buffer, entrance: Entrance): void
  /** Ends what has not ended by itself; after `rooms.close()`. */
  close(): Promise<void>
}

export const openSyncDoor = (rooms: Rooms): SyncDoor => {
  const server = new WebSocketServer({
    noServer: true,
    maxPayload: LIMITS.payload,
    maxFragments: LIMITS.fragments,
    perMessageDeflate: false,
  })
  return {
    admit(request, socket, head, entrance) {
      // The request's own socket, until it is a web socket; one without a listener ends the process.
      const ignore = () => socket.destroy()
      socket.on('error', ignore)
      server.handleUpgrade(request, socket, head, (ws) => {
        socket.off('error', ignore)
        if (entrance.kind === 'seat') rooms.connect(ws, entrance.seat)
        else {
          ws.on('error', () => ws.terminate())
          ws.close(entrance.code)
        }
      })
    },
    close: () =>
      new Promise((resolve) => {
        for (const ws of server.clients) ws.terminate()
        server.close(() => resolve())
      }),
  }
}
