import type { IncomingMessage } from 'node:http'
import type { Duplex } from 'node:stream'
import { WebSocketServer } from 'ws'
import { isOwnOrigin } from '#server/auth/origins.ts'
import { entryOf } from '#server/auth/upgrade.ts'
import type { Settings } from '#server/env.ts'
import type { Rooms } from '#server/live.ts'
import { LIMITS } from '#server/sync/limits.ts'

export interface SyncGate {
  handleUpgrade(request: IncomingMessage, socket: Duplex, head: Buffer): void
}

/**
 * Lets people in at /sync/ID. A page of another site gets no socket at all; somebody who may not be here gets one that is
 * closed at once with the reason, as a y-websocket client retries for ever on a refused upgrade.
 */
export const openSyncGate = (rooms: Rooms, settings: Settings, log: (why: unknown) => void): SyncGate => {
  const sockets = new WebSocketServer({
    noServer: true,
    clientTracking: false,
    perMessageDeflate: false,
    maxPayload: LIMITS.payload,
    maxFragments: LIMITS.fragments,
  })
  return {
    handleUpgrade: (request, socket, head) => {
      if (!isOwnOrigin(request, settings)) {
        socket.end('HTTP/1.1 403 Forbidden\r\nConnection: close\r\nContent-Length: 0\r\n\r\n')
        return
      }
      entryOf(request)
        .then((entry) => {
          if (socket.destroyed) return
          sockets.handleUpgrade(request, socket, head, (open) => {
            open.on('error', () => open.terminate())
            if (entry.kind === 'refused') {
              open.close(entry.code)
              return
            }
            rooms.connect(open, entry.seat)
            // A seat that was taken away between the look and the room's list of sockets would stay open.
            entryOf(request)
              .then((now) => now.kind === 'refused' && open.close(now.code))
              .catch(log)
          })
        })
        .catch((why: unknown) => {
          log(why)
          socket.destroy()
        })
    },
  }
}
