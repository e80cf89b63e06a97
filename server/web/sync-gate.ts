import type { IncomingMessage } from 'node:http'
import type { Duplex } from 'node:stream'
import { isOwnOrigin } from '#server/auth/origins.ts'
import { entryOf } from '#server/auth/upgrade.ts'
import type { Settings } from '#server/env.ts'
import type { Rooms } from '#server/live.ts'
import { openSyncDoor } from '#server/sync/handler.ts'

export interface SyncGate {
  handleUpgrade(request: IncomingMessage, socket: Duplex, head: Buffer): void
  /** After `rooms.close()`. */
  close(): Promise<void>
}

/**
 * Lets people in at /sync/ID. A page of another site gets no socket at all; somebody who may not be here gets one that is
 * closed at once with the reason, as a y-websocket client retries for ever on a refused upgrade.
 */
export const openSyncGate = (rooms: Rooms, settings: Settings, log: (why: unknown) => void): SyncGate => {
  const door = openSyncDoor(rooms)

  const letIn = async (request: IncomingMessage, socket: Duplex, head: Buffer): Promise<void> => {
    const entrance = await entryOf(request)
    if (socket.destroyed) return
    door.admit(request, socket, head, entrance)
    if (entrance.kind === 'refused') return
    // A seat that was taken away between the look and the room's list of sockets would stay open.
    const now = await entryOf(request)
    if (now.kind === 'refused') rooms.closeMember(entrance.seat.memberId, now.code)
  }

  return {
    handleUpgrade: (request, socket, head) => {
      if (!isOwnOrigin(request, settings)) {
        socket.end('HTTP/1.1 403 Forbidden\r\nConnection: close\r\nContent-Length: 0\r\n\r\n')
        return
      }
      letIn(request, socket, head).catch((why: unknown) => {
        log(why)
        socket.destroy()
      })
    },
    close: () => door.close(),
  }
}
