import type { RawData, WebSocket } from 'ws'
import { CLOSE } from '#lib/plan/wire.ts'
import type { Seat } from '#server/live.ts'
import type { Clock } from './clock.ts'
import { AGAIN, LIMITS, TIMES } from './limits.ts'

/** One socket of a room, and who sits on it. */
export interface Peer {
  readonly seat: Seat
  /** Document frames received so far, and how many of them are stored. */
  frames: number
  stored: number
  /** What was last acknowledged. */
  acked: number
  /** The one presence id that this socket speaks for. */
  presence: number | null
  /** How many running orders it was sent. */
  orders: number
  readonly open: boolean
  send(frame: Uint8Array): void
  /** Says goodbye: nothing is heard from it or sent to it any more. */
  close(code: number, reason?: string): void
  /** Ends it without a word when it has been silent for too long, otherwise asks for a sign of life. */
  check(ping: boolean): void
}

export interface PeerEvents {
  message(frame: Uint8Array): void
  gone(): void
  log(what: string): void
}

/** Takes over a socket: hears it within its limits, and never lets an error of it reach the process. */
export const openPeer = (socket: WebSocket, seat: Seat, clock: Clock, events: PeerEvents): Peer => {
  let open = true
  let heardAt = clock.now()
  let tokens: number = LIMITS.burst
  let countedAt = heardAt
  const leave = () => {
    if (!open) return
    open = false
    events.gone()
  }
  const mayCome = (): boolean => {
    const now = clock.now()
    tokens = Math.min(LIMITS.burst, tokens + (Math.max(0, now - countedAt) / 1000) * LIMITS.messagesASecond)
    countedAt = now
    if (tokens < 1) return false
    tokens -= 1
    return true
  }
  const peer: Peer = {
    seat,
    frames: 0,
    stored: 0,
    acked: 0,
    presence: null,
    orders: 0,
    get open() {
      return open
    },
    send(frame) {
      if (!open) return
      if (socket.bufferedAmount > LIMITS.waiting) {
        events.log('closed a socket that does not read')
        leave()
        socket.terminate()
        return
      }
      socket.send(frame)
    },
    close(code, reason = '') {
      if (!open) return
      leave()
      socket.close(code, reason)
    },
    check(ping) {
      if (!open) return
      if (clock.now() - heardAt > TIMES.silence) {
        leave()
        socket.terminate()
      } else if (ping) socket.ping()
    },
  }
  socket.on('error', (cause) => events.log(`a socket of ${seat.memberId} failed: ${cause.message}`))
  socket.on('close', leave)
  socket.on('pong', () => {
    heardAt = clock.now()
  })
  socket.on('message', (data, isBinary) => {
    if (!open) return
    heardAt = clock.now()
    if (!mayCome()) {
      events.log(`${seat.memberId} sends too fast`)
      peer.close(AGAIN.tooFast, 'too many messages')
    } else if (!isBinary) peer.close(CLOSE.refused, 'text is not spoken here')
    else events.message(bytesOf(data))
  })
  return peer
}

const bytesOf = (data: RawData): Uint8Array => {
  if (Array.isArray(data)) return new Uint8Array(Buffer.concat(data))
  return data instanceof ArrayBuffer ? new Uint8Array(data) : new Uint8Array(data.buffer, data.byteOffset, data.byteLength)
}
