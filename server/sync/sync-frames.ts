import * as encoding from 'lib0/encoding'
import * as sync from 'y-protocols/sync'
import type * as Y from 'yjs'

/** The document messages of the y-websocket connection: frame = varUint(0) varUint(step) varUint8Array(bytes). */
export const SYNC = 0
export const STEP = { ask: sync.messageYjsSyncStep1, answer: sync.messageYjsSyncStep2, update: sync.messageYjsUpdate } as const

const frame = (write: (encoder: encoding.Encoder) => void): Uint8Array => {
  const encoder = encoding.createEncoder()
  encoding.writeVarUint(encoder, SYNC)
  write(encoder)
  return encoding.toUint8Array(encoder)
}

/** Asks the other side for what this document lacks. */
export const askFrame = (doc: Y.Doc): Uint8Array => frame((encoder) => sync.writeSyncStep1(encoder, doc))
/** What the other side, which has the state vector, lacks. Throws when it is none. */
export const answerFrame = (doc: Y.Doc, stateVector: Uint8Array): Uint8Array =>
  frame((encoder) => sync.writeSyncStep2(encoder, doc, stateVector))
export const updateFrame = (update: Uint8Array): Uint8Array => frame((encoder) => sync.writeUpdate(encoder, update))
