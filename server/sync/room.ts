import * as decoding from 'lib0/decoding'
import * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import {
  readCommand,
  readType,
  writeAck,
  writeAlerts,
  writeBeat,
  writeGuests,
  writeHello,
  writeOrder,
  writeOutcome,
} from '#lib/plan/frames.ts'
import { Meta, rootMap } from '#lib/plan/layout.ts'
import { readPlan } from '#lib/plan/read.ts'
import { CLOSE, type Fired, LAYOUT_VERSION, type OrderMessage, type Outcome, type Sent, WIRE } from '#lib/plan/wire.ts'
import { admit } from './admit.ts'
import { type Edited, openAnswers } from './answer-command.ts'
import type { Clock } from './clock.ts'
import { AGAIN, COMPACT, LIMITS, TIMES } from './limits.ts'
import { loadPlan, shadowOf } from './load-plan.ts'
import type { Peer } from './peer.ts'
import { openPresence, PRESENCE } from './presence.ts'
import { reasonOf } from './reason.ts'
import { answerFrame, askFrame, STEP, SYNC, updateFrame } from './sync-frames.ts'
import { touchedBy } from './touched.ts'
import type { LogEntry, StoredPlan, UpdateLog } from './update-log.ts'

export interface RoomEvents {
  /** The stored plan has changed, or somebody has come into an empty room, or it is held from now on. */
  plan(evening: Evening): void
  /** Nobody is at it any more: the last socket has gone, and it is not held. */
  empty(): void
  /** Something could not be stored: the room is closed and must be loaded again. */
  failed(): void
  log(what: string): void
}

/** One evening's plan while somebody looks at it: validate → commit → broadcast → acknowledge. */
export interface Room {
  readonly peers: ReadonlySet<Peer>
  /** With what has rung of late, so that who was away misses nothing. */
  join(peer: Peer, fired: readonly Fired[]): void
  leave(peer: Peer): void
  hear(peer: Peer, frame: Uint8Array): void
  read(): Evening
  /** Edits it as the server itself; resolves when that is stored, and throws when it could not be. */
  edit(change: (doc: Y.Doc) => void): Promise<void>
  /** A held room is told of as if somebody were there. */
  hold(isHeld: boolean): void
  readonly isHeld: boolean
  sendOrder(message: OrderMessage): void
  sendAlerts(fired: readonly Fired[]): void
  /** Tells hosts that something about the guests is new. */
  tellGuests(): void
  /** The running order for one who has just come. */
  greet(peer: Peer, message: OrderMessage): void
  beat(serverMs: number): void
  /** Resolves when all that was accepted is stored (or has failed). */
  settled(): Promise<void>
  /** Folds the log into a snapshot when there is anything to fold. */
  compact(): Promise<void>
}

/** What is on its way to the disk. */
interface Pending {
  readonly entry: LogEntry | null
  readonly peer: Peer | null
  /** Which of the peer's document frames it is; null when it is none. */
  readonly frame: number | null
  readonly outcome: Outcome | null
  seq: number | null
}

/** Throws when what is stored is no plan. */
export const openRoom = (eveningId: string, stored: StoredPlan, log: UpdateLog, clock: Clock, events: RoomEvents): Room => {
  const doc = loadPlan(stored)
  let shadow = shadowOf(doc, [])
  const owners = new Map<number, string>(stored.owners)
  const peers = new Set<Peer>()
  const presence = openPresence()
  const queue: Pending[] = []
  const waiting: (() => void)[] = []
  let failed = false
  let seq = stored.seq
  let since = { ...stored.sinceSnapshot }
  let compacting = false
  let tellAt = Number.NEGATIVE_INFINITY
  let telling = false
  let isHeld = false

  const broadcast = (frame: Uint8Array, but: Peer | null) => {
    for (const peer of [...peers]) if (peer !== but) peer.send(frame)
  }

  const tell = () => {
    if (telling || failed) return
    telling = true
    clock.after(Math.max(0, tellAt + TIMES.tell - clock.now()), () => {
      telling = false
      tellAt = clock.now()
      if (!failed && (isHeld || peers.size > 0)) events.plan(readPlan(doc).evening)
    })
  }

  const settle = () => {
    if (queue.length > 0 && !failed) return
    for (const done of waiting.splice(0)) done()
  }

  const settled = (): Promise<void> =>
    new Promise((resolve) => {
      waiting.push(resolve)
      settle()
    })

  const fail = (cause: unknown) => {
    if (failed) return
    failed = true
    events.log(`the plan of ${eveningId} could not be stored: ${reasonOf(cause)}`)
    for (const { peer, outcome } of queue.splice(0))
      if (peer && outcome) peer.send(writeOutcome({ op: outcome.op, kind: 'refused', why: { kind: 'not-stored' } }))
    for (const peer of [...peers]) peer.close(AGAIN.resync, 'not stored')
    events.failed()
    settle()
  }

  /** Takes from the queue's head what is stored, in order: shown to all, then said to be stored. */
  const flush = () => {
    const told = new Set<Peer>()
    let changed = false
    for (let next = queue[0]; next !== undefined && next.seq !== null && !failed; next = queue[0]) {
      queue.shift()
      const bytes = next.entry?.bytes
      if (bytes) {
        Y.applyUpdate(doc, bytes, 'stored')
        changed = true
        seq = next.seq
        since = { count: since.count + 1, bytes: since.bytes + bytes.length }
        broadcast(updateFrame(bytes), next.frame === null ? null : next.peer)
      }
      if (!next.peer) continue
      if (next.frame !== null) {
        next.peer.stored = next.frame
        told.add(next.peer)
      }
      if (next.outcome) next.peer.send(writeOutcome(next.outcome))
    }
    for (const peer of told) {
      if (peer.stored > peer.acked) peer.send(writeAck(peer.stored))
      peer.acked = peer.stored
    }
    if (changed) tell()
    if (since.count >= COMPACT.updates || since.bytes >= COMPACT.bytes) void compact()
    settle()
  }

  const enqueue = (pending: Pending) => {
    if (failed) return
    queue.push(pending)
    if (!pending.entry) {
      if (queue[0] === pending) flush()
      else pending.seq = 0
      return
    }
    log.append(eveningId, pending.entry).then((stored) => {
      pending.seq = stored
      if (!failed) attempt(flush)
    }, fail)
  }

  /** What is stored must be shown; when that fails the room is not what the disk says and must be loaded again. */
  const attempt = (work: () => void) => {
    try {
      work()
    } catch (cause) {
      fail(cause)
    }
  }

  const remakeShadow = () => {
    shadow = shadowOf(
      doc,
      queue.flatMap(({ entry }) => (entry?.bytes ? [entry.bytes] : [])),
    )
  }

  const refuse = (peer: Peer, why: string) => {
    events.log(`refused what ${peer.seat.memberId} sent to ${eveningId}: ${why}`)
    peer.close(CLOSE.refused, 'refused')
  }

  const hearUpdate = (peer: Peer, update: Uint8Array) => {
    const { memberId, role, cook } = peer.seat
    const admission = admit(shadow, owners, { memberId, role, cook }, update)
    if (admission.kind !== 'admitted') {
      remakeShadow()
      if (admission.kind === 'refused') refuse(peer, admission.why)
      else peer.close(AGAIN.resync, 'something is missing')
      return
    }
    peer.frames += 1
    for (const client of admission.clients) owners.set(client, memberId)
    const { effect, clients, places } = admission
    const entry = effect ? { bytes: effect, memberId, clients, op: null, change: { by: memberId, places } } : null
    enqueue({ entry, peer, frame: peer.frames, outcome: null, seq: entry ? null : 0 })
  }

  /** Edits the shadow as the server itself. */
  const edit = (change: (doc: Y.Doc) => void): Edited => {
    const effects: Uint8Array[] = []
    const transactions: Y.Transaction[] = []
    const collect = (effect: Uint8Array) => effects.push(effect)
    const note = (done: Y.Transaction) => transactions.push(done)
    shadow.on('update', collect)
    shadow.on('afterTransaction', note)
    shadow.transact(() => change(shadow), 'server')
    shadow.off('update', collect)
    shadow.off('afterTransaction', note)
    return { bytes: effects.length === 0 ? null : Y.mergeUpdates(effects), places: touchedBy(shadow, transactions) }
  }

  const answer = openAnswers(stored.ops, { read: () => readPlan(shadow).evening, edit, now: () => clock.now() })

  const hearCommand = (peer: Peer, sent: Sent) => {
    const { outcome, bytes, places, op } = answer(peer.seat, sent)
    // One asked again waits behind what is on its way: the first asking may not be stored yet.
    if (op === null) enqueue({ entry: null, peer, frame: null, outcome, seq: 0 })
    else {
      const change = { by: peer.seat.memberId, places }
      enqueue({ entry: { bytes, memberId: null, clients: [], op, change }, peer, frame: null, outcome, seq: null })
    }
  }

  const hearSync = (peer: Peer, body: decoding.Decoder) => {
    const step = decoding.readVarUint(body)
    const bytes = decoding.readVarUint8Array(body)
    if (decoding.hasContent(body)) throw new RangeError('more than one message in a frame')
    if (step === STEP.ask) peer.send(answerFrame(doc, bytes))
    else if (step === STEP.answer || step === STEP.update) hearUpdate(peer, bytes)
    else throw new RangeError(`no such sync step: ${step}`)
  }

  const hearFrame = (peer: Peer, frame: Uint8Array) => {
    const read = readType(frame)
    if (!read) throw new RangeError('no frame')
    if (read.type === SYNC) hearSync(peer, read.body)
    else if (read.type === PRESENCE) {
      const said = presence.hear(peer, decoding.readVarUint8Array(read.body))
      if (said) broadcast(said, peer)
    } else if (read.type === WIRE.command) {
      const sent = readCommand(read.body)
      if (!sent) throw new RangeError('no command')
      hearCommand(peer, sent)
    } else if (read.type === ASK_PRESENCE) sendIf(peer, presence.all())
    else if (read.type !== WIRE.beat) throw new RangeError(`no such message: ${read.type}`)
  }

  const compact = async () => {
    if (compacting || failed || since.count === 0) return
    compacting = true
    const folded = { ...since }
    try {
      await log.compact(eveningId, Y.encodeStateAsUpdate(doc), seq)
      since = { count: since.count - folded.count, bytes: since.bytes - folded.bytes }
    } catch (cause) {
      events.log(`the log of ${eveningId} could not be folded: ${reasonOf(cause)}`)
      since = { count: 0, bytes: 0 }
    } finally {
      compacting = false
    }
  }

  const hello = (peer: Peer): Uint8Array => {
    const meta = Meta.parse(Object.fromEntries(rootMap(doc, 'meta')?.entries() ?? []))
    return writeHello({
      epoch: stored.epoch,
      layout: LAYOUT_VERSION,
      minClient: meta.minClient,
      member: peer.seat.memberId,
      role: peer.seat.role,
      cook: peer.seat.cook,
      serverMs: clock.now(),
    })
  }

  if (doc.getMap('meta').get('epoch') !== stored.epoch) {
    const { bytes } = edit((ahead) => ahead.getMap('meta').set('epoch', stored.epoch))
    enqueue({
      entry: { bytes, memberId: null, clients: [], op: null, change: null },
      peer: null,
      frame: null,
      outcome: null,
      seq: null,
    })
  }

  return {
    peers,
    get isHeld() {
      return isHeld
    },
    join(peer, fired) {
      const first = peers.size === 0
      peers.add(peer)
      peer.send(hello(peer))
      if (fired.length > 0) peer.send(writeAlerts(fired))
      peer.send(askFrame(doc))
      sendIf(peer, presence.all())
      if (first) tell()
    },
    leave(peer) {
      if (!peers.delete(peer)) return
      const said = presence.leave(peer)
      if (said) broadcast(said, null)
      if (peers.size === 0 && !isHeld) events.empty()
    },
    hold(next) {
      if (isHeld === next) return
      isHeld = next
      if (peers.size > 0) return
      if (isHeld) tell()
      else events.empty()
    },
    hear(peer, frame) {
      if (failed) return
      if (queue.length > LIMITS.queue) {
        peer.close(AGAIN.resync, 'too much is waiting')
        return
      }
      try {
        hearFrame(peer, frame)
      } catch (cause) {
        refuse(peer, reasonOf(cause))
      }
    },
    read: () => readPlan(doc).evening,
    async edit(change) {
      const { bytes } = edit(change)
      const entry = { bytes, memberId: null, clients: [], op: null, change: null }
      if (bytes) enqueue({ entry, peer: null, frame: null, outcome: null, seq: null })
      await settled()
      if (failed) throw new Error(`the plan of ${eveningId} could not be stored`)
    },
    sendOrder(message) {
      const frame = writeOrder(message)
      for (const peer of [...peers]) {
        peer.orders += 1
        peer.send(frame)
      }
    },
    sendAlerts(fired) {
      broadcast(writeAlerts(fired), null)
    },
    tellGuests() {
      const frame = writeGuests(clock.now())
      for (const peer of [...peers]) if (peer.seat.role === 'host') peer.send(frame)
    },
    greet(peer, message) {
      peer.send(writeOrder(message))
    },
    beat(serverMs) {
      broadcast(writeBeat(serverMs), null)
    },
    settled,
    compact,
  }
}

/** The y-websocket message that asks who is there. */
const ASK_PRESENCE = 3

const sendIf = (peer: Peer, frame: Uint8Array | null) => {
  if (frame) peer.send(frame)
}
