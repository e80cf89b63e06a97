import * as decoding from 'lib0/decoding'
import * as encoding from 'lib0/encoding'
import { describe, expect, test } from 'vitest'
import { Awareness, applyAwarenessUpdate, encodeAwarenessUpdate } from 'y-protocols/awareness'
import * as Y from 'yjs'
import { readType } from '#lib/plan/frames.ts'
import { CLOSE } from '#lib/plan/wire.ts'
import { AGAIN, LIMITS } from '#server/sync/limits.ts'
import { PRESENCE } from '#server/sync/presence.ts'
import { askFrame } from '#server/sync/sync-frames.ts'
import { type Device, type LoopbackRoom, loopbackRoom } from '#tests/support/loopback-room.ts'
import { readEvening } from '#tests/support/read-evening.ts'

const lamb = readEvening('a-lamb')
const say = (device: Device, frame: Uint8Array) => device.line?.toServer.push(frame)

/** What a device says of itself, as the y-protocols library writes it. */
const presenceOf = (client: number, state: Record<string, unknown> | null, clock = 1): Uint8Array => {
  const doc = new Y.Doc()
  doc.clientID = client
  const awareness = new Awareness(doc)
  for (let n = 0; n < clock; n += 1) awareness.setLocalState(state)
  const update = encodeAwarenessUpdate(awareness, [client])
  awareness.destroy()
  return frameOf(update)
}
const frameOf = (update: Uint8Array): Uint8Array => {
  const encoder = encoding.createEncoder()
  encoding.writeVarUint(encoder, PRESENCE)
  encoding.writeVarUint8Array(encoder, update)
  return encoding.toUint8Array(encoder)
}
/** Whom a device sees, when it hears everything in its queue. */
const seenBy = (device: Device, known = new Awareness(new Y.Doc())) => {
  known.setLocalState(null)
  for (const frame of device.line?.toClient ?? []) {
    const read = readType(frame)
    if (read?.type === PRESENCE) applyAwarenessUpdate(known, decoding.readVarUint8Array(read.body), 'line')
  }
  known.destroy()
  return new Map(known.getStates())
}
const settledRoom = async (): Promise<{ room: LoopbackRoom; kim: Device; noor: Device }> => {
  const room = await loopbackRoom(lamb)
  const [kim, noor] = [room.device('kim'), room.device('noor')]
  room.connect(kim)
  room.connect(noor)
  await room.settle()
  return { room, kim, noor }
}
const deliver = (device: Device) => {
  while (device.line?.toServer.length) device.line.deliverToServer()
}

describe('limits', () => {
  test('R26 at most eight sockets a user and three hundred a room', async () => {
    const room = await loopbackRoom(lamb)
    const nine = Array.from({ length: 9 }, () => room.device('kim'))
    for (const device of nine) room.connect(device)
    await room.settle()
    expect(nine.map((device) => device.closedWith)).toEqual([...Array(8).fill(null), AGAIN.tooMany])
    const many = Array.from({ length: LIMITS.socketsARoom - 8 + 1 }, (_, n) => room.device(`m-${n}`))
    for (const device of many) room.connect(device)
    await room.settle()
    expect(many.filter((device) => device.closedWith === AGAIN.tooMany)).toHaveLength(1)
    room.cut(nine[0] as Device)
    room.connect(nine[8] as Device)
    await room.settle()
    expect(nine[8]?.closedWith).toBeNull()
  })

  test('R26 fifty messages a second, two hundred at once: who sends more is closed, the others are not', async () => {
    const { room, kim, noor } = await settledRoom()
    const ask = askFrame(new Y.Doc())
    for (let second = 0; second < 10; second += 1) {
      for (let n = 0; n < 50; n += 1) say(kim, ask)
      deliver(kim)
      await room.settle()
      room.clock.advance(1000)
    }
    expect(kim.closedWith).toBeNull()
    for (let n = 0; n < 210; n += 1) say(kim, ask)
    await room.settle()
    expect(kim.closedWith).toBe(AGAIN.tooFast)
    expect(noor.closedWith).toBeNull()
  })

  test('R26 a socket that lets more than 1 MB wait is ended', async () => {
    const { room, kim, noor } = await settledRoom()
    if (kim.line) Object.assign(kim.line.server, { bufferedAmount: LIMITS.waiting + 1 })
    room.clock.advance(5000)
    await room.settle()
    expect(kim.closedWith).toBe(1006)
    expect(noor.closedWith).toBeNull()
  })
})

describe('presence', () => {
  test('R26 one id a socket, under the name that the server gives', async () => {
    const { room, kim, noor } = await settledRoom()
    say(kim, presenceOf(77, { at: 'menu', who: { name: 'Somebody else', member: 'noor' } }))
    deliver(kim)
    expect(seenBy(noor)).toEqual(new Map([[77, { at: 'menu', who: { member: 'kim', cook: null, name: 'kim' } }]]))
    await room.settle()
    say(kim, presenceOf(78, { at: 'a second self' }))
    say(noor, presenceOf(77, { at: 'a theft' }, 9))
    deliver(kim)
    deliver(noor)
    expect(seenBy(kim)).toEqual(new Map())
    expect(seenBy(noor)).toEqual(new Map())
    const late = room.device('late')
    room.connect(late)
    await new Promise((resolve) => setImmediate(resolve))
    expect([...seenBy(late).keys()]).toEqual([77])
    room.cut(kim)
    expect([...seenBy(late).keys()]).toEqual([])
  })

  test('R26 a member who comes again takes up their presence, and their old line takes nothing with it when it ends', async () => {
    const { room, kim, noor } = await settledRoom()
    say(kim, presenceOf(77, { at: 'menu' }))
    deliver(kim)
    await room.settle()
    const again = room.device('kim')
    room.connect(again)
    await room.settle()
    say(again, presenceOf(77, { at: 'order' }, 2))
    deliver(again)
    expect(seenBy(noor).get(77)).toMatchObject({ at: 'order' })
    await room.settle()
    room.cut(kim)
    expect(seenBy(noor)).toEqual(new Map())
    expect(noor.line?.toClient.length).toBe(0)
    say(again, presenceOf(77, { at: 'dish' }, 3))
    deliver(again)
    expect(seenBy(noor).get(77)).toMatchObject({ at: 'dish' })
    room.cut(again)
    expect(seenBy(noor)).toEqual(new Map())
  })

  test('R26 more than 1 KB of presence, or bytes that are none, end their sender', async () => {
    for (const frame of [
      presenceOf(77, { at: 'x'.repeat(LIMITS.presenceBytes) }),
      frameOf(new Uint8Array([200, 200, 200])),
      frameOf(new Uint8Array([1, 77, 1, 3, 123, 123, 123])),
    ]) {
      const { room, kim, noor } = await settledRoom()
      say(kim, frame)
      await room.settle()
      expect(kim.closedWith).toBe(CLOSE.refused)
      expect(noor.closedWith).toBeNull()
    }
  })
})
