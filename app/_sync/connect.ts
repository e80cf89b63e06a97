import type { Decoder } from 'lib0/decoding'
import type { Awareness } from 'y-protocols/awareness'
import { WebsocketProvider } from 'y-websocket'
import type * as Y from 'yjs'
import {
  readAck,
  readAlerts,
  readBeat,
  readGuests,
  readHello,
  readOrder,
  readOutcome,
  writeBeat,
  writeCommand,
} from '#lib/plan/frames.ts'
import {
  CLOSE,
  type Command,
  type Fired,
  type Hello,
  LAYOUT_VERSION,
  type OrderMessage,
  type Outcome,
  WIRE,
} from '#lib/plan/wire.ts'
import { countingSocket } from './counting-socket.ts'
import type { Link } from './plan.ts'
import type { Timers } from './timers.ts'
import type { Unsent } from './unsent.ts'

const BEAT_MS = 5_000
/** How often it is looked at whether the connection is dead: it is known within ten seconds of the last word. */
const LISTEN_MS = 1_000
/** So long without a word from the server, and the connection is taken for dead. */
const SILENCE_MS = 9_000
/**
 * So long for the first word. TCP asks at 0, 1, 3 and 7 s (RFC 6298): given up after 4 s and begun anew, an attempt into a silent
 * network never leaves more than about 2 s between two askings, and so is answered soon when the network is back.
 */
const GREETING_MS = 4_000
/** How many beats the server's clock is taken from. */
const BEATS_KEPT = 12
/** No beat is so late on a living connection: this device's clock was put forward. */
const JUMP_MS = 20_000
/** Commands that are on their way at once: the server hears so many together. */
const UNDER_WAY = 50

export type Shut = Extract<Link, { kind: 'closed' }>['why']

const SHUT: Readonly<Record<number, Shut>> = {
  [CLOSE.signIn]: 'sign-in',
  [CLOSE.removed]: 'removed',
  [CLOSE.gone]: 'gone',
  [CLOSE.otherEpoch]: 'other-epoch',
  [CLOSE.refused]: 'refused',
  [CLOSE.reload]: 'reload',
}

export interface Connection {
  readonly link: () => Link
  /** How far the server's clock is ahead of this device's, in ms, as far as it is known. */
  readonly offset: () => number
  /** Sends what waits; does nothing while there is no connection. */
  readonly sendCommands: () => void
  /** The browser says that the network has gone, or has come back. */
  readonly tryAgain: () => void
  readonly close: () => void
}

interface Parts {
  readonly doc: Y.Doc
  readonly eveningId: string
  /** ws://host/sync */
  readonly address: string
  /** The document that this device's copy is of; null when it has none. */
  readonly epoch: string | null
  readonly Socket: typeof WebSocket
  readonly timers: Timers
  readonly unsent: Unsent
  readonly commands: () => readonly Command[]
  /** What was last known of the server's clock, and what is known now: how far it is ahead of this device's, in ms. */
  readonly offset: number
  readonly onOffset: (ms: number) => void
  /** Edits that come from this device's stored copy, and are not new ones. */
  readonly isOwnCopy: (origin: unknown) => boolean
  /** `awareness`: who else is there, on this connection. */
  readonly onHello: (hello: Hello, awareness: Awareness) => void
  readonly onOutcome: (outcome: Outcome) => void
  readonly onOrder: (message: OrderMessage) => void
  readonly onAlerts: (alerts: readonly Fired[]) => void
  /** Something about the guests is new, or may be: the connection has just come back. */
  readonly onGuests: () => void
  readonly onLink: () => void
  /** The connection is over for good; `newEpoch` when it is known which document took the place of ours. */
  readonly onShut: (why: Shut, newEpoch: string | null) => void
  /** The longest time between two attempts: 1.5 s to 2.5 s, so that everybody does not come back at once. */
  readonly patience: number
}

const newLine = () => ({
  /** The server has said who this is. */
  greeted: false,
  /** Frames with the document in them, and how many of them the server has acknowledged. */
  sent: 0,
  acked: 0,
  /** An edit came too late for this connection; the next one brings it. */
  missed: false,
  commands: new Set<string>(),
})

const every = (timers: Timers, ms: number, run: () => void): (() => void) => {
  let cancel: () => void = () => undefined
  const again = () => {
    cancel = timers.after(ms, again)
    run()
  }
  cancel = timers.after(ms, again)
  return () => cancel()
}

/** Keeps the document and the server's the same, and knows whether they are. */
export const connect = (parts: Parts): Connection => {
  const { doc, timers, unsent } = parts
  let shut: Shut | null = null
  let epoch = parts.epoch
  /** What is known of the connection under way; made anew with each one. */
  let line = newLine()
  let tried = false
  let heardAt = timers.now()
  let offsets: readonly number[] = []

  const Counting = countingSocket(parts.Socket, (socket) => {
    if (socket !== provider.ws) return
    line.sent += 1
    if (line.sent === 1) sendCommands()
    parts.onLink()
  })
  const provider = new WebsocketProvider(parts.address, parts.eveningId, doc, {
    connect: false,
    disableBc: true,
    WebSocketPolyfill: Counting,
    maxBackoffTime: parts.patience,
  })
  provider.awareness.setLocalState(null)
  // What others say of themselves is not said again from here.
  const sayPresence = provider._awarenessUpdateHandler
  provider.awareness.off('update', sayPresence)
  provider._awarenessUpdateHandler = (changes, from) => {
    if (from === 'local') sayPresence(changes, from)
  }
  provider.awareness.on('update', provider._awarenessUpdateHandler)

  const settle = () => {
    if (isSaved()) unsent.clear()
    parts.onLink()
  }

  const isSaved = (): boolean =>
    provider.wsconnected && line.greeted && provider.synced && line.sent > 0 && line.acked >= line.sent && !line.missed

  const link = (): Link => {
    if (shut) return { kind: 'closed', why: shut, ...(unsent.any() && { unsent: true as const }) }
    if (isSaved()) return { kind: 'saved' }
    if (provider.wsconnected && line.greeted) return unsent.any() ? { kind: 'saving' } : { kind: 'connecting' }
    return tried ? { kind: 'offline', unsent: unsent.any() } : { kind: 'connecting' }
  }

  const end = (why: Shut, newEpoch: string | null = null) => {
    shut = why
    parts.onShut(why, newEpoch)
    provider.disconnect()
    parts.onLink()
  }

  // The answer to the server's question is on its way before them: what a command speaks of is known there by then.
  const sendCommands = () => {
    if (!provider.wsconnected || line.sent === 0) return
    const waiting = parts.commands()
    let free = UNDER_WAY - waiting.filter(({ op }) => line.commands.has(op)).length
    for (const command of waiting) {
      if (line.commands.has(command.op)) continue
      free -= 1
      if (free < 0) return
      line.commands.add(command.op)
      provider.ws?.send(writeCommand(command, timers.now()))
    }
  }

  /** What cannot be read is of a newer server, which says `reload` when that matters. */
  const hang = <T>(type: number, read: (body: Decoder) => T | null, hear: (message: T) => void) => {
    provider.messageHandlers[type] = (_encoder: unknown, body: Decoder) => {
      heardAt = timers.now()
      const message = read(body)
      if (message === null) console.warn(`a message of type ${type} could not be read`)
      else hear(message)
    }
  }

  hang(WIRE.hello, readHello, (hello) => {
    if (epoch !== null && hello.epoch !== epoch) return end('other-epoch', hello.epoch)
    if (hello.minClient > LAYOUT_VERSION) return end('reload')
    epoch = hello.epoch
    line.greeted = true
    learnClock(hello.serverMs)
    parts.onHello(hello, provider.awareness)
    parts.onGuests()
    parts.onLink()
  })
  hang(WIRE.outcome, readOutcome, (outcome) => {
    parts.onOutcome(outcome)
    sendCommands()
  })
  hang(WIRE.order, readOrder, parts.onOrder)
  hang(WIRE.guests, readGuests, parts.onGuests)
  hang(WIRE.alert, readAlerts, parts.onAlerts)
  hang(WIRE.beat, readBeat, (beat) => learnClock(beat.serverMs))
  hang(WIRE.ack, readAck, (frames) => {
    line.acked = frames
    settle()
  })

  /** A message is never early: of several beats, the one that was least late knows the server's clock best. */
  const learnClock = (serverMs: number) => {
    const heard = serverMs - timers.now()
    const kept = heard < offset() - JUMP_MS ? [] : offsets
    offsets = [...kept, heard].slice(-BEATS_KEPT)
    parts.onOffset(offset())
  }
  const offset = () => (offsets.length > 0 ? Math.max(...offsets) : parts.offset)

  provider.on('status', ({ status }) => {
    if (status === 'connecting') {
      line = newLine()
      heardAt = timers.now()
    }
    if (status === 'disconnected') tried = true
    parts.onLink()
  })
  provider.on('connection-error', () => {
    tried = true
    parts.onLink()
  })
  provider.on('connection-close', () => {
    tried = true
    parts.onLink()
  })
  // The client's own list of codes that end its trying is 4400-4499, as the server's.
  provider.on('closed', ({ code }) => end(SHUT[code] ?? 'reload'))
  provider.on('sync', settle)

  const onUpdate = (_update: Uint8Array, origin: unknown) => {
    heardAt = origin === provider ? timers.now() : heardAt
    if (origin === provider || parts.isOwnCopy(origin)) return
    unsent.add()
    // The provider drops an update when the socket is closing under it.
    if (provider.ws?.readyState !== provider.ws?.OPEN) line.missed = true
    parts.onLink()
  }
  doc.on('update', onUpdate)

  const tryAgain = () => {
    if (shut) return
    provider.disconnect()
    provider.connect()
    parts.onLink()
  }

  const stopListening = every(timers, LISTEN_MS, () => {
    const patience = line.greeted ? SILENCE_MS : GREETING_MS
    if (shut || provider.ws === null || timers.now() - heardAt < patience) return
    tried = true
    tryAgain()
  })
  const stopBeating = every(timers, BEAT_MS, () => {
    if (provider.wsconnected && line.greeted) provider.ws?.send(writeBeat(timers.now() + offset()))
  })
  provider.connect()

  return {
    link,
    offset,
    sendCommands,
    tryAgain,
    close() {
      stopListening()
      stopBeating()
      doc.off('update', onUpdate)
      provider.destroy()
    },
  }
}
