import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import type { Rooms, Seat } from '#server/live.ts'
import { openSyncDoor } from '#server/sync/handler.ts'
import { openRooms, type RoomsOptions } from '#server/sync/open-rooms.ts'
import { memberIn } from './plan-database.ts'

export interface RoomServer {
  readonly port: number
  readonly rooms: Rooms
  close(): Promise<void>
}

/**
 * The real rooms and sockets on a real port, without accounts: ws://127.0.0.1:PORT/sync/EVENING?who=NAME&role=host|cook&cook=ID
 * (a member is m-NAME-EVENING). `refuse=CODE` instead of a name is closed with that code.
 */
export const startRoomServer = async (options: RoomsOptions, port = 0): Promise<RoomServer> => {
  const rooms = await openRooms(options)
  const door = openSyncDoor(rooms)
  const server = createServer()
  server.on('upgrade', (request, socket, head) => {
    const url = new URL(request.url ?? '/', 'http://localhost')
    const [code, who] = [url.searchParams.get('refuse'), url.searchParams.get('who') ?? 'nobody']
    const eveningId = url.pathname.replace('/sync/', '')
    const seat: Seat = {
      eveningId,
      memberId: memberIn(eveningId, who),
      userId: `u-${who}`,
      name: who,
      role: url.searchParams.get('role') === 'host' ? 'host' : 'cook',
      cook: url.searchParams.get('cook'),
    }
    door.admit(request, socket, head, code ? { kind: 'refused', code: Number(code) } : { kind: 'seat', seat })
  })
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve))
  return {
    port: (server.address() as AddressInfo).port,
    rooms,
    async close() {
      const closed = new Promise<void>((resolve) => server.close(() => resolve()))
      await rooms.close()
      await door.close()
      server.closeAllConnections()
      await closed
    },
  }
}
