import * as decoding from 'lib0/decoding'
import * as encoding from 'lib0/encoding'
import { z } from 'zod'
import { LIMITS } from './limits.ts'
import type { Peer } from './peer.ts'

/** The presence message of the y-websocket connection. */
export const PRESENCE = 1

interface Shown {
  readonly peer: Peer
  /** The sender's clock, by which an old message is known. */
  readonly heard: number
  readonly clock: number
  readonly state: string
}

/** Who is looking at the plan just now. Never stored. */
export interface Presence {
  /** Takes in what a socket says of itself; gives the frame to pass on, or null when there is none. */
  hear(peer: Peer, message: Uint8Array): Uint8Array | null
  /** Forgets a socket; gives the frame that tells the others. */
  leave(peer: Peer): Uint8Array | null
  /** Everybody, for a newcomer. */
  all(): Uint8Array | null
}

const State = z.record(z.string(), z.json())

/**
 * One presence id a socket, the first that no other member has; entries for other ids are echoes and are not heard. The name in
 * it is the server's. Throws on bytes that are no presence message.
 */
export const openPresence = (): Presence => {
  const shown = new Map<number, Shown>()
  // Clocks that are told are the room's own: who comes again is newer than the word that they had gone.
  let ticks = 0
  const tick = (): number => {
    ticks += 1
    return ticks
  }

  const mayBe = (peer: Peer, client: number): boolean => {
    const other = shown.get(client)?.peer
    // A device that comes again may be there before the server has seen its old line end.
    const isFree = other === undefined || other === peer || other.seat.memberId === peer.seat.memberId
    return isFree && (peer.presence === null || peer.presence === client)
  }

  return {
    hear(peer, message) {
      const decoder = decoding.createDecoder(message)
      let own: { client: number; clock: number; state: string } | null = null
      const count = decoding.readVarUint(decoder)
      if (count > LIMITS.socketsARoom) throw new RangeError('too many presences in one message')
      for (let n = 0; n < count; n += 1) {
        const entry = {
          client: decoding.readVarUint(decoder),
          clock: decoding.readVarUint(decoder),
          state: decoding.readVarString(decoder),
        }
        if (own === null && mayBe(peer, entry.client)) own = entry
      }
      if (own === null || own.clock <= (shown.get(own.client)?.heard ?? -1)) return null
      if (own.state.length > LIMITS.presenceBytes) throw new RangeError('a presence too large')
      const said: unknown = JSON.parse(own.state)
      if (said === null) {
        peer.presence = null
        shown.delete(own.client)
        return frameOf([[own.client, tick(), 'null']])
      }
      const { memberId, cook, name } = peer.seat
      const state = JSON.stringify({ ...State.parse(said), who: { member: memberId, cook, name } })
      const before = shown.get(own.client)?.peer
      if (before && before !== peer) before.presence = null
      peer.presence = own.client
      const clock = tick()
      shown.set(own.client, { peer, heard: own.clock, clock, state })
      return frameOf([[own.client, clock, state]])
    },
    leave(peer) {
      const client = peer.presence
      const was = client === null ? undefined : shown.get(client)
      if (client === null || was?.peer !== peer) return null
      shown.delete(client)
      return frameOf([[client, tick(), 'null']])
    },
    all: () => (shown.size === 0 ? null : frameOf([...shown].map(([client, { clock, state }]) => [client, clock, state]))),
  }
}

const frameOf = (entries: readonly (readonly [client: number, clock: number, state: string])[]): Uint8Array => {
  const inner = encoding.createEncoder()
  encoding.writeVarUint(inner, entries.length)
  for (const [client, clock, state] of entries) {
    encoding.writeVarUint(inner, client)
    encoding.writeVarUint(inner, clock)
    encoding.writeVarString(inner, state)
  }
  const frame = encoding.createEncoder()
  encoding.writeVarUint(frame, PRESENCE)
  encoding.writeVarUint8Array(frame, encoding.toUint8Array(inner))
  return encoding.toUint8Array(frame)
}
