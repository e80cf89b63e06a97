import * as decoding from 'lib0/decoding'
import * as Y from 'yjs'
import { readAck, readAlerts, readBeat, readHello, readOrder, readOutcome, readType, writeCommand } from '#lib/plan/frames.ts'
import { type Command, type Fired, type Hello, type OrderMessage, type Outcome, WIRE } from '#lib/plan/wire.ts'
import { answerFrame, askFrame, STEP, SYNC, updateFrame } from '#server/sync/sync-frames.ts'

/** What carries a client's frames. */
export interface Line {
  send(frame: Uint8Array): unknown
}

/**
 * A device with a copy of the plan, as far as the protocol goes: it keeps its edits, sends them when there is a line, and
 * knows which of its frames the server said it has stored. Everything happens when it is called: no timers.
 */
export interface SyncClient {
  readonly doc: Y.Doc
  readonly hello: Hello | null
  /** Document frames sent on this line, and how many of them are acknowledged. */
  readonly sent: number
  readonly acked: number
  readonly outcomes: ReadonlyMap<string, Outcome>
  /** How many commands are not answered yet. */
  readonly unanswered: number
  readonly orders: readonly OrderMessage[]
  /** What has rung, as often as it came. */
  readonly alerts: readonly Fired[]
  readonly beats: number
  /** The order in which message types came on this line. */
  readonly heard: readonly number[]
  /** The clock of this device's own edits up to the last acknowledged frame. */
  readonly ackedClock: { readonly client: number; readonly clock: number }
  connect(line: Line): void
  disconnect(): void
  hear(frame: Uint8Array): void
  ask(command: Command): void
  /** Sends a frame as it is and counts it as a document frame. */
  sendRaw(frame: Uint8Array): void
  /** The tab is loaded again: the same content under another client id. */
  reload(): void
}

/** `now`: the device's own clock; without one it does not say when a command goes. */
export const syncClient = (now: () => number | null = () => null): SyncClient => {
  let doc = new Y.Doc()
  let line: Line | null = null
  let hello: Hello | null = null
  let sent = 0
  let acked = 0
  let beats = 0
  let heard: number[] = []
  let ackedClock = { client: doc.clientID, clock: 0 }
  /** The own clock after each sent frame. */
  let clocks: number[] = []
  const outcomes = new Map<string, Outcome>()
  const orders: OrderMessage[] = []
  const alerts: Fired[] = []
  const unanswered = new Map<string, Command>()

  const sendDocument = (frame: Uint8Array) => {
    if (!line) return
    sent += 1
    clocks.push(Y.decodeStateVector(Y.encodeStateVector(doc)).get(doc.clientID) ?? 0)
    line.send(frame)
  }
  const follow = () => {
    doc.on('update', (update: Uint8Array, origin: unknown) => {
      if (origin !== 'line' && origin !== 'reload') sendDocument(updateFrame(update))
    })
  }
  follow()

  const hearSync = (body: decoding.Decoder) => {
    const step = decoding.readVarUint(body)
    const bytes = decoding.readVarUint8Array(body)
    if (step === STEP.ask) sendDocument(answerFrame(doc, bytes))
    else Y.applyUpdate(doc, bytes, 'line')
  }

  return {
    get doc() {
      return doc
    },
    get hello() {
      return hello
    },
    get sent() {
      return sent
    },
    get acked() {
      return acked
    },
    get beats() {
      return beats
    },
    get heard() {
      return heard
    },
    get ackedClock() {
      return ackedClock
    },
    outcomes,
    orders,
    get unanswered() {
      return unanswered.size
    },
    alerts,
    connect(next) {
      line = next
      sent = 0
      acked = 0
      heard = []
      clocks = []
      line.send(askFrame(doc))
      for (const command of unanswered.values()) line.send(writeCommand(command, now()))
    },
    disconnect() {
      line = null
    },
    hear(frame) {
      const read = readType(frame)
      if (!read) throw new Error('the server sent no frame')
      heard.push(read.type)
      if (read.type === SYNC) hearSync(read.body)
      else if (read.type === WIRE.hello) hello = readHello(read.body)
      else if (read.type === WIRE.ack) {
        acked = Math.max(acked, readAck(read.body) ?? 0)
        const clock = clocks[acked - 1]
        if (clock !== undefined && clock >= ackedClock.clock) ackedClock = { client: doc.clientID, clock }
      } else if (read.type === WIRE.outcome) {
        const outcome = readOutcome(read.body)
        if (!outcome) throw new Error('an outcome that is none')
        outcomes.set(outcome.op, outcome)
        if (outcome.kind === 'done' || outcome.why.kind !== 'not-stored') unanswered.delete(outcome.op)
      } else if (read.type === WIRE.order) {
        const order = readOrder(read.body)
        if (order) orders.push(order)
      } else if (read.type === WIRE.alert) alerts.push(...(readAlerts(read.body) ?? []))
      else if (read.type === WIRE.beat && readBeat(read.body)) beats += 1
    },
    ask(command) {
      unanswered.set(command.op, command)
      line?.send(writeCommand(command, now()))
    },
    sendRaw: sendDocument,
    reload() {
      const content = Y.encodeStateAsUpdate(doc)
      line = null
      doc.destroy()
      doc = new Y.Doc()
      Y.applyUpdate(doc, content, 'reload')
      ackedClock = { client: doc.clientID, clock: 0 }
      follow()
    },
  }
}
