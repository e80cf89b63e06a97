import { createHash } from 'node:crypto'
import fc from 'fast-check'
import * as decoding from 'lib0/decoding'
import { describe, expect, test } from 'vitest'
import { z } from 'zod'
import { ORDER_FORMAT, RunningOrder } from '#lib/domain/running-order.ts'
import {
  readAck,
  readAlerts,
  readBeat,
  readCommand,
  readGuests,
  readHello,
  readOrder,
  readOutcome,
  readType,
  writeAck,
  writeAlerts,
  writeBeat,
  writeCommand,
  writeGuests,
  writeHello,
  writeOrder,
  writeOutcome,
} from '#lib/plan/frames.ts'
import { type Command, type Fired, type Hello, type OrderMessage, type Outcome, WIRE } from '#lib/plan/wire.ts'
import { planned } from '#tests/support/checked-plan.ts'
import { readEvening } from '#tests/support/read-evening.ts'

const hello: Hello = { epoch: 'e', layout: 1, minClient: 1, member: 'm', role: 'cook', cook: null, serverMs: 1.5 }
const command: Command = { op: 'op-12345', kind: 'claim', target: 's', cook: 'c', also: ['d'] }
const tell: Command = {
  op: 'op-12346',
  kind: 'tell',
  at: 3,
  as: 'c',
  say: { kind: 'take-back', of: 'op-12345', said: { kind: 'done', step: 's', ago: 5 } },
}
const alert: Fired = { id: 'touch:s:0:out', at: 5, firedAt: 6, kind: 'touch', cooks: ['c'], step: 's', batch: 0, touch: 'out' }
const outcome: Outcome = { op: 'op-12345', kind: 'refused', why: { kind: 'taken', by: 'c' } }
const order: OrderMessage = { kind: 'failed', hash: 'h', why: 'no time' }
const body = (frame: Uint8Array) => {
  const read = readType(frame)
  if (!read) throw new Error('no frame')
  return read
}

describe('frames', () => {
  test('R25 what is written is read again, under its type', () => {
    const pairs: [number, Uint8Array, (body: decoding.Decoder) => unknown, unknown][] = [
      [WIRE.hello, writeHello(hello), readHello, hello],
      [WIRE.ack, writeAck(70_000), readAck, 70_000],
      [WIRE.command, writeCommand(command), readCommand, { command, sent: null }],
      [WIRE.command, writeCommand(tell, 12), readCommand, { command: tell, sent: 12 }],
      [WIRE.outcome, writeOutcome(outcome), readOutcome, outcome],
      [WIRE.order, writeOrder(order), readOrder, order],
      [WIRE.beat, writeBeat(12), readBeat, { serverMs: 12 }],
      [WIRE.guests, writeGuests(12), readGuests, { at: 12 }],
      [WIRE.alert, writeAlerts([alert]), readAlerts, [alert]],
    ]
    for (const [type, frame, read, value] of pairs) {
      expect(body(frame).type).toBe(type)
      expect(read(body(frame).body)).toEqual(value)
      for (const [other, otherFrame] of pairs)
        if (other !== type && type !== WIRE.ack) expect(read(body(otherFrame).body)).toBeNull()
    }
  })

  test('R25 an order is read whole under its own format, and is no message under another or with anything beside it', () => {
    const lamb = planned(readEvening('a-lamb'))
    const message = { kind: 'order', hash: 'h', order: lamb, more: true } as const
    const written = (said: object) => readOrder(body(writeOrder(said as OrderMessage)).body)
    expect(written(message)).toEqual(message)
    for (const order of [{ ...lamb, format: 'tableward-order/0' }, { ...lamb, format: undefined }, [], 'order', null, undefined])
      expect(written({ ...message, order })).toBeNull()
    expect(written({ ...message, hash: 1 })).toBeNull()
    expect(written({ ...message, another: 1 })).toBeNull()
  })

  test('R25 an order’s format names what an order is made of: who changes that so that other screens cannot show it names another', () => {
    const made = createHash('sha256')
      .update(JSON.stringify(z.toJSONSchema(RunningOrder)))
      .digest('hex')
      .slice(0, 12)
    expect([ORDER_FORMAT, made]).toEqual(['tableward-order/1', '4bdb451461c5'])
  })

  test('R25 no bytes make a reader throw, and what is cut short or has something behind it is no message', () => {
    const readers = [readHello, readCommand, readOutcome, readOrder, readBeat, readAlerts]
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 60 }), (bytes) => {
        readType(bytes)
        readAck(decoding.createDecoder(bytes))
        for (const read of readers) expect(read(decoding.createDecoder(bytes))).toBeNull()
      }),
    )
    const whole = writeCommand(command)
    for (let length = 1; length < whole.length; length += 1) expect(readCommand(body(whole.slice(0, length)).body)).toBeNull()
    expect(readCommand(body(new Uint8Array([...whole, 1])).body)).toBeNull()
  })
})
