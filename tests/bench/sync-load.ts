import { createDecoder, readVarUint } from 'lib0/decoding'
import { createEncoder, toUint8Array, writeVarUint } from 'lib0/encoding'
import { WebSocket } from 'ws'
import { readSyncMessage, writeSyncStep1, writeUpdate } from 'y-protocols/sync'
import * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { writeEvening } from '#lib/plan/write-evening.ts'

/** Sockets at one evening. */
export const COOKS = 12
const SYNC = 0

const frame = (write: (encoder: ReturnType<typeof createEncoder>) => void): Uint8Array => {
  const encoder = createEncoder()
  writeVarUint(encoder, SYNC)
  write(encoder)
  return toUint8Array(encoder)
}

export interface Client {
  readonly socket: WebSocket
  readonly doc: Y.Doc
}

/** A socket with the document as the room has it. Others' edits are not read into it: the load measures the server. */
export const join = async (port: number, path: string, headers: Readonly<Record<string, string>> = {}): Promise<Client> => {
  const doc = new Y.Doc()
  const socket = new WebSocket(`ws://127.0.0.1:${port}${path}`, { headers })
  await new Promise<void>((resolve, reject) => {
    const hear = (data: Buffer) => {
      const decoder = createDecoder(new Uint8Array(data))
      if (readVarUint(decoder) !== SYNC) return
      const answer = createEncoder()
      writeVarUint(answer, SYNC)
      const kind = readSyncMessage(decoder, answer, doc, 'server')
      if (kind === 0) socket.send(toUint8Array(answer))
      if (kind !== 1) return
      socket.off('message', hear)
      resolve()
    }
    socket.on('message', hear)
    socket.on('error', reject)
    socket.on('close', (code) => reject(new Error(`closed with ${code}`)))
    socket.on('open', () => socket.send(frame((encoder) => writeSyncStep1(encoder, doc))))
  })
  return { socket, doc }
}

/** A socket of the relay, which keeps no document: it is given one. */
export const joinRelay = async (port: number, base: Uint8Array): Promise<Client> => {
  const doc = new Y.Doc()
  Y.applyUpdate(doc, base)
  const socket = new WebSocket(`ws://127.0.0.1:${port}/`)
  await new Promise<void>((resolve, reject) => {
    socket.on('error', reject)
    socket.on('open', resolve)
  })
  return { socket, doc }
}

export const documentOf = (evening: Evening): Uint8Array => {
  const doc = new Y.Doc()
  writeEvening(doc, evening, { epoch: 'bench', minClient: 1 })
  return Y.encodeStateAsUpdate(doc)
}

/** The frame of one edit of this client's document. */
export const edit = (client: Client, change: (doc: Y.Doc) => unknown): Uint8Array => {
  const updates: Uint8Array[] = []
  const keep = (update: Uint8Array) => updates.push(update)
  client.doc.on('update', keep)
  change(client.doc)
  client.doc.off('update', keep)
  const [update] = updates
  if (!update || updates.length > 1) throw new Error(`an edit made ${updates.length} updates`)
  return frame((encoder) => writeUpdate(encoder, update))
}

const signOf = (number: number) => `edit${String(number).padStart(6, '0')}`

export interface Load {
  /** Milliseconds from the time at which an edit was due to its arrival at another socket. */
  readonly delays: readonly number[]
  readonly edits: number
  readonly expected: number
}

/**
 * Sends so many edits a second, spread over the clients, each at its due time whatever became of the ones before (open
 * loop), and waits for them at all other sockets, no longer than `patienceMs` after the last. Each client edits a step of
 * its own: of two that set one field at once, one would be gone before it is sent on. `beside`: what is sent with each edit.
 */
export const runLoad = async (
  clients: readonly Client[],
  steps: readonly string[],
  { perSecond, seconds, patienceMs }: { readonly perSecond: number; readonly seconds: number; readonly patienceMs: number },
  beside: (number: number) => Uint8Array | null = () => null,
): Promise<Load> => {
  const edits = perSecond * seconds
  const frames = Array.from({ length: edits }, (_, number) => {
    const client = clients[number % clients.length]
    const step = steps[number % clients.length]
    if (!client || !step) throw new Error('nobody to edit, or nothing to be edited')
    const until = { sign: signOf(number) }
    return { client, bytes: edit(client, (doc) => setFields(doc, 'steps', step, { until })) }
  })
  const expected = edits * (clients.length - 1)
  const delays: number[] = []
  const begin = performance.now() + 50
  const due = (number: number) => begin + (number * 1000) / perSecond
  return new Promise((resolve, reject) => {
    const end = () => {
      clearTimeout(next)
      clearTimeout(last)
      for (const { socket } of clients) socket.off('message', hear).off('close', lost)
      resolve({ delays, edits, expected })
    }
    const hear = (data: Buffer) => {
      const now = performance.now()
      for (const [, number] of data.toString('latin1').matchAll(/edit(\d{6})/g)) delays.push(now - due(Number(number)))
      if (delays.length >= expected) end()
    }
    const lost = (code: number) => reject(new Error(`a socket was closed with ${code}`))
    for (const { socket } of clients) socket.on('message', hear).on('close', lost)
    let sent = 0
    const send = () => {
      while (sent < edits && due(sent) <= performance.now()) {
        const { client, bytes } = frames[sent] ?? {}
        if (client && bytes) client.socket.send(bytes)
        const more = beside(sent)
        if (more) client?.socket.send(more)
        sent += 1
      }
      if (sent < edits) next = setTimeout(send, Math.max(0, due(sent) - performance.now()))
    }
    let next = setTimeout(send, 0)
    const last = setTimeout(end, seconds * 1000 + 50 + patienceMs)
  })
}
