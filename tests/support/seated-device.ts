import { seatOf } from '#server/auth/seat.ts'
import { live } from '#server/live.ts'
import { turn } from './loopback-room.ts'
import { loopback } from './loopback-socket.ts'
import { type SyncClient, syncClient } from './sync-client.ts'

/** A device of somebody with a seat, in this process, on the live rooms and their real log. */
export interface SeatedDevice {
  readonly client: SyncClient
  readonly memberId: string
  /** Carries frames to and fro until it holds. */
  until(holds: (client: SyncClient) => boolean): Promise<void>
  /** Until all that was sent is stored. */
  saved(): Promise<void>
  leave(): void
}

export const seatedDevice = async (userId: string, eveningId: string): Promise<SeatedDevice> => {
  const seat = await seatOf(userId, eveningId)
  if (!seat) throw new Error('they have no seat')
  const [line, client] = [loopback(), syncClient()]
  live().rooms.connect(line.server, seat)
  client.connect({ send: (frame) => void line.toServer.push(frame.slice()) })
  const until = async (holds: (client: SyncClient) => boolean) => {
    while (!holds(client)) {
      if (line.closed && line.toClient.length === 0) throw new Error(`the server closed with ${line.closed.code}`)
      while (line.toServer.length > 0) line.deliverToServer()
      for (const frame of line.toClient.splice(0)) client.hear(frame)
      await turn()
    }
  }
  const saved = () => until((one) => one.hello !== null && one.sent > 0 && one.acked === one.sent && one.unanswered === 0)
  await saved()
  return { client, memberId: seat.memberId, until, saved, leave: () => line.cut() }
}
