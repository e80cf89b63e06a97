import type { connect } from 'node:net'
import * as encoding from 'lib0/encoding'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { WebSocket } from 'ws'
import * as Y from 'yjs'
import { renameDish } from '#lib/plan/commands/set.ts'
import { readPlan } from '#lib/plan/read.ts'
import { CLOSE } from '#lib/plan/wire.ts'
import { LIMITS } from '#server/sync/limits.ts'
import { updateFrame } from '#server/sync/sync-frames.ts'
import { type PlanDatabase, planDatabase } from '#tests/support/plan-database.ts'
import { readEvening } from '#tests/support/read-evening.ts'
import { isSaved, type SocketClient, socketClient } from '#tests/support/socket-client.ts'
import { type RoomServer, startRoomServer } from '#tests/support/start-room-server.ts'

const lamb = readEvening('a-lamb')
const [dish1] = lamb.dishes
const [step1] = lamb.steps
const [kim] = lamb.cooks
if (!dish1 || !step1 || !kim) throw new Error('the evening is too small')

let database: PlanDatabase
let server: RoomServer
let host: SocketClient
let victim: SocketClient
const logged: string[] = []
let attackers = 0

const address = (who: string, more = '') => `ws://127.0.0.1:${server.port}/sync/e?who=${who}${more}`
const saved = async (one: SocketClient) => one.until(isSaved)

/** A cook's device that is in and up to date. */
const attacker = async (more = ''): Promise<SocketClient> => {
  attackers += 1
  const one = socketClient(address(`attacker${attackers % 8}`, more))
  await saved(one)
  return one
}

/** The attacker is thrown out, and everybody else is as before and works on. */
const thrownOut = async (one: SocketClient, before: string, code: number = CLOSE.refused) => {
  expect(await one.ended).toBe(code)
  expect(JSON.stringify(readPlan(host.client.doc))).toBe(before)
  const name = `Still here ${attackers} ${logged.length}`
  renameDish(victim.client.doc, dish1.id, name)
  await saved(victim)
  await host.until((client) => readPlan(client.doc).evening.dishes[0]?.name === name)
  const fresh = socketClient(address('fresh'))
  await saved(fresh)
  const plan = JSON.stringify(readPlan(host.client.doc))
  expect(JSON.stringify(readPlan(victim.client.doc))).toBe(plan)
  expect(JSON.stringify(readPlan(fresh.client.doc))).toBe(plan)
  expect(Y.encodeStateVector(fresh.client.doc)).toHaveLength(Y.encodeStateVector(host.client.doc).length)
  expect(await server.rooms.read('e')).toEqual(readPlan(host.client.doc).evening)
  fresh.close()
  await fresh.ended
}
const now = () => JSON.stringify(readPlan(host.client.doc))

/** The update that an edit makes, made on a copy of the plan under a client id. */
const updateOf = (from: SocketClient, client: number | null, change: (doc: Y.Doc) => void): Uint8Array => {
  const doc = new Y.Doc()
  Y.applyUpdate(doc, Y.encodeStateAsUpdate(from.client.doc))
  if (client !== null) doc.clientID = client
  const before = Y.encodeStateVector(doc)
  doc.transact(() => change(doc))
  return Y.encodeStateAsUpdate(doc, before)
}
const entry = (doc: Y.Doc, root: string, id: string) => doc.getMap(root).get(id) as Y.Map<unknown>

beforeAll(async () => {
  database = planDatabase()
  database.add('e', ['host', 'victim', 'fresh', 'fast', 'slow', ...Array.from({ length: 8 }, (_, n) => `attacker${n}`)])
  server = await startRoomServer({ databaseFile: database.file, log: (what) => logged.push(what) })
  await server.rooms.create('e', { ...lamb, claims: [{ target: step1.id, cook: kim.id }] })
  host = socketClient(address('host', '&role=host'))
  victim = socketClient(address('victim'))
  await saved(host)
  await saved(victim)
  renameDish(victim.client.doc, dish1.id, 'Mine')
  await saved(victim)
  await host.until((client) => readPlan(client.doc).evening.dishes[0]?.name === 'Mine')
})
afterAll(async () => {
  await server.close()
  database.remove()
})

describe('updates that are refused', () => {
  const forbidden: [string, (doc: Y.Doc) => void, string?][] = [
    ['an edit of a claim', (doc) => doc.getMap('claims').set(step1.id, { cook: 'me' })],
    ['a new claim', (doc) => doc.getMap('claims').set(dish1.id, { cook: kim.id })],
    ['an update that only deletes a claim', (doc) => doc.getMap('claims').delete(step1.id)],
    ['an edit of what the server says of the document', (doc) => doc.getMap('meta').set('epoch', 'other')],
    ['an update that only deletes what the server says', (doc) => doc.getMap('meta').delete('version')],
    ['a fact of the night', (doc) => doc.getMap('night').set('sit-down', { sitDown: '2026-11-14T19:45:00Z', by: kim.id })],
    ['a cook writing the evening', (doc) => doc.getMap('evening').set('covers', 3)],
    ['the host deleting a field of the evening', (doc) => doc.getMap('evening').delete('covers'), '&role=host'],
    ['the host writing nonsense in the evening', (doc) => doc.getMap('evening').set('covers', 3000), '&role=host'],
    ['a root that is not in the layout', (doc) => doc.getMap('guests').set('g', 'nuts')],
    ['a root as a list', (doc) => doc.getMap('steps') && Y.transact(doc, () => insertIntoRoot(doc, 'steps'))],
    ['an entry deleted outright', (doc) => doc.getMap('steps').delete(step1.id)],
    ['an entry replaced', (doc) => doc.getMap('steps').set(step1.id, new Y.Map([['does', new Y.Text('x')]]))],
    ['an entry of another type', (doc) => doc.getMap('steps').set('new', new Y.Array())],
    ['an entry that is a value', (doc) => doc.getMap('steps').set('new', { does: 'x' })],
    ['an entry under a key that is no id', (doc) => doc.getMap('steps').set('not an id', new Y.Map())],
    ['a field that does not exist', (doc) => entry(doc, 'steps', step1.id).set('secret', 1)],
    ['a field of the wrong type', (doc) => entry(doc, 'steps', step1.id).set('ways', 'oven')],
    ['a field too large', (doc) => entry(doc, 'dishes', dish1.id).set('name', 'x'.repeat(100_000))],
    ['a text swapped for a value', (doc) => entry(doc, 'steps', step1.id).set('does', 'a value')],
    ['a value swapped for a text', (doc) => entry(doc, 'dishes', dish1.id).set('name', new Y.Text('a text'))],
    ['a text swapped for an XML text', (doc) => entry(doc, 'steps', step1.id).set('does', new Y.XmlText('x'))],
    ['a text with formatting', (doc) => (entry(doc, 'steps', step1.id).get('does') as Y.Text).format(0, 2, { bold: true })],
    ['a text with something embedded', (doc) => (entry(doc, 'steps', step1.id).get('does') as Y.Text).insertEmbed(0, { a: 1 })],
    ['a text with attributes', (doc) => (entry(doc, 'steps', step1.id).get('does') as Y.Text).setAttribute('a', 1)],
    ['a text without end', (doc) => (entry(doc, 'steps', step1.id).get('does') as Y.Text).insert(0, 'x'.repeat(5000))],
    ['a document inside', (doc) => entry(doc, 'steps', step1.id).set('until', new Y.Doc())],
    ['bytes inside', (doc) => entry(doc, 'steps', step1.id).set('until', new Uint8Array(10))],
    ['a new entry with a deep field', (doc) => doc.getMap('dishes').set('new', new Y.Map([['keeps', new Y.Map()]]))],
  ]
  const insertIntoRoot = (doc: Y.Doc, root: string): void => {
    // A map that is written as a list: what a client gets that opens the root under another type.
    const list = new Y.Doc()
    list.clientID = doc.clientID
    list.getArray(root).insert(0, ['x'])
    const update = Y.encodeStateAsUpdate(list)
    Y.applyUpdate(doc, update)
  }

  for (const [what, change, more = ''] of forbidden)
    test(`R9 ${what}: refused, the sender closed, all copies equal, the server alive`, async () => {
      const one = await attacker(more)
      const before = now()
      const bytes = updateOf(one, null, change)
      expect(bytes.length).toBeGreaterThan(2)
      one.client.sendRaw(updateFrame(bytes))
      await thrownOut(one, before)
    })

  test('R9 a forged client id: refused, and the victim goes on writing', async () => {
    const one = await attacker()
    const before = now()
    const forged = updateOf(one, victim.client.doc.clientID, (doc) => entry(doc, 'dishes', dish1.id).set('name', 'Forged'))
    one.client.sendRaw(updateFrame(forged))
    await thrownOut(one, before)
  })

  test('R9 the server’s own client id, and one that wrote the document: refused', async () => {
    const one = await attacker()
    const before = now()
    const server1 = [...Y.decodeStateVector(Y.encodeStateVector(one.client.doc)).keys()].find(
      (client) => ![one, host, victim].some((other) => other.client.doc.clientID === client),
    )
    if (server1 === undefined) throw new Error('nobody made the document')
    const forged = updateOf(one, server1, (doc) => entry(doc, 'dishes', dish1.id).set('name', 'Forged'))
    one.client.sendRaw(updateFrame(forged))
    await thrownOut(one, before)
  })

  test('R9 a clock moved on by a few bytes under a victim’s id: refused', async () => {
    const one = await attacker()
    const before = now()
    const clock = Y.decodeStateVector(Y.encodeStateVector(victim.client.doc)).get(victim.client.doc.clientID) ?? 0
    const encoder = encoding.createEncoder()
    for (const number of [1, 1, victim.client.doc.clientID, clock]) encoding.writeVarUint(encoder, number)
    encoding.writeUint8(encoder, 0)
    encoding.writeVarUint(encoder, 1_000_000)
    encoding.writeVarUint(encoder, 0)
    expect(encoding.length(encoder)).toBeLessThan(20)
    one.client.sendRaw(updateFrame(encoding.toUint8Array(encoder)))
    await thrownOut(one, before)
  })

  test('R9 20,000 maps inside each other: refused', async () => {
    const one = await attacker()
    const before = now()
    const update = nested(one.client.doc.clientID, 20_000, dish1.id)
    expect(update.length).toBeGreaterThan(100_000)
    expect(update.length).toBeLessThan(LIMITS.payload)
    one.client.sendRaw(updateFrame(update))
    await thrownOut(one, before)
  })

  test('R9 an update of the second kind, garbage and a frame of no known type: refused', async () => {
    const second = await attacker()
    const before = now()
    const doc = new Y.Doc()
    doc.getMap('dishes').set('x', new Y.Map([['name', 'V2']]))
    second.client.sendRaw(updateFrame(Y.encodeStateAsUpdateV2(doc)))
    await thrownOut(second, before)
    for (const frame of [
      updateFrame(new Uint8Array([255, 255, 255, 255, 255])),
      new Uint8Array([0, 9, 0]),
      new Uint8Array([99]),
      new Uint8Array([]),
    ]) {
      const one = await attacker()
      const then = now()
      one.client.sendRaw(frame)
      await thrownOut(one, then)
    }
  })

  test('R9 deletions of what does not exist yet: not stored, the sender must come again', async () => {
    const one = await attacker()
    const before = now()
    const encoder = encoding.createEncoder()
    for (const number of [0, 1, victim.client.doc.clientID, 1, 1_000_000, 5]) encoding.writeVarUint(encoder, number)
    one.client.sendRaw(updateFrame(encoding.toUint8Array(encoder)))
    await thrownOut(one, before, 4500)
  })
})

describe('frames that are no messages', () => {
  test('R9 a frame above 256 KiB ends its sender', async () => {
    const one = await attacker()
    const before = now()
    one.socket.send(new Uint8Array(LIMITS.payload + 1))
    await thrownOut(one, before, 1009)
  })

  test('R9 an 11-byte frame with reserved bits ends its sender and not the process', async () => {
    const one = await attacker()
    const before = now()
    const raw = Reflect.get(one.socket, '_socket') as ReturnType<typeof connect>
    raw.write(Buffer.from([0xf2, 0x85, 1, 2, 3, 4, 5, 6, 7, 8, 9]))
    await thrownOut(one, before, 1002)
  })

  test('R9 text, and more than 64 fragments, end their sender', async () => {
    const one = await attacker()
    const before = now()
    one.socket.send('hello')
    await thrownOut(one, before)
    const other = await attacker()
    const then = now()
    for (let n = 0; n < 80; n += 1) other.socket.send(new Uint8Array(1), { fin: n === 79 })
    expect([1008, 1009]).toContain(await other.ended)
    expect(now()).toBe(then)
  })

  test('R9 a refused guest gets a socket that is closed with the reason', async () => {
    const socket = new WebSocket(`ws://127.0.0.1:${server.port}/sync/e?refuse=${CLOSE.signIn}`)
    expect(await new Promise((resolve) => socket.on('close', resolve))).toBe(CLOSE.signIn)
  })
})

/** A map in a map in a map …, as one update of the client, hung into a dish. */
const nested = (client: number, depth: number, dish: string): Uint8Array => {
  const encoder = encoding.createEncoder()
  const doc = new Y.Doc()
  doc.clientID = client
  encoding.writeVarUint(encoder, 1)
  encoding.writeVarUint(encoder, depth)
  encoding.writeVarUint(encoder, client)
  encoding.writeVarUint(encoder, 0)
  for (let n = 0; n < depth; n += 1) {
    // A type (7) with a key in its parent (bit 6): the first in the root "dishes", each next one in the one before.
    encoding.writeUint8(encoder, 7 | 0x20)
    encoding.writeVarUint(encoder, n === 0 ? 1 : 0)
    if (n === 0) encoding.writeVarString(encoder, 'dishes')
    else {
      encoding.writeVarUint(encoder, client)
      encoding.writeVarUint(encoder, n - 1)
    }
    encoding.writeVarString(encoder, n === 0 ? `${dish}-deep` : 'a')
    encoding.writeVarUint(encoder, 1)
  }
  encoding.writeVarUint(encoder, 0)
  const update = encoding.toUint8Array(encoder)
  // It must be an update that applies, or the test would show nothing.
  Y.applyUpdate(doc, update)
  if (!(doc.getMap('dishes').get(`${dish}-deep`) instanceof Y.Map)) throw new Error('the nest is no update')
  return update
}
