import { expect, test } from 'vitest'
import type { OrderMessage } from '#lib/plan/wire.ts'
import { pacedSend } from '#server/planner/paced-send.ts'
import { handClock, orderOf, toast } from './by-hand.ts'

const plan = toast('e1', 5)
const order = (total: number): OrderMessage => ({ kind: 'order', hash: 'h', order: orderOf(plan, 'quick', total) })

const sending = () => {
  const { clock, pass } = handClock()
  const sent: string[] = []
  const send = pacedSend((eveningId, message) => {
    const what = message.kind === 'order' ? message.order.total : message.kind
    sent.push(`${clock.now()} ${eveningId} ${what}`)
  }, clock)
  return { send, sent, pass }
}

test('P12 the first order goes at once, then one every 500 ms and the newest of them', () => {
  const { send, sent, pass } = sending()
  send('e1', order(100))
  pass(100)
  send('e1', order(90))
  pass(100)
  send('e1', order(80))
  expect(sent).toEqual(['0 e1 100'])
  pass(300)
  expect(sent).toEqual(['0 e1 100', '500 e1 80'])
  pass(499)
  send('e1', order(70))
  expect(sent).toHaveLength(2)
  pass(1)
  expect(sent.at(-1)).toBe('1000 e1 70')
  pass(2000)
  send('e1', order(60))
  expect(sent.slice(3)).toEqual(['3000 e1 60'])
})

test('P12 of an order every 50 ms for ten seconds people get one each half second', () => {
  const { send, sent, pass } = sending()
  for (let total = 200; total > 0; total -= 1) {
    send('e1', order(total))
    pass(50)
  }
  pass(1000)
  expect(sent).toHaveLength(21)
  expect(sent.at(-1)).toBe('10000 e1 1')
})

test('P12 that a new one is planned, or that it failed, is told at once, and an order that waited is dropped', () => {
  const { send, sent, pass } = sending()
  send('e1', order(100))
  send('e1', order(90))
  send('e1', { kind: 'planning', hash: 'next' })
  pass(1000)
  expect(sent).toEqual(['0 e1 100', '0 e1 planning'])
  send('e1', order(80))
  send('e1', { kind: 'failed', hash: 'next', why: 'it could not be' })
  expect(sent.slice(2)).toEqual(['1000 e1 80', '1000 e1 failed'])
})

test('P12 one evening does not wait for another', () => {
  const { send, sent } = sending()
  send('e1', order(100))
  send('e2', order(90))
  expect(sent).toEqual(['0 e1 100', '0 e2 90'])
})
