import { expect, test } from 'vitest'
import { heard, NO_ORDERS, orderState } from '#app/_sync/order-state.ts'
import type { Link } from '#app/_sync/plan.ts'
import type { OrderMessage } from '#lib/plan/wire.ts'
import { orderOf, toast } from '#tests/unit/planner/by-hand.ts'

const order = orderOf(toast('e1', 5), 'quick')
const sent: OrderMessage = { kind: 'order', hash: 'a', order }
const saved: Link = { kind: 'saved' }

test('an order is current only when its hash is that of the plan on the screen', () => {
  const known = heard(NO_ORDERS, sent)
  expect(orderState(known, 'a', saved)).toEqual({ kind: 'current', order })
  expect(orderState(known, 'b', saved)).toEqual({ kind: 'planning', order })
})

test('P4 a first answer is known as one while the server that looks for a better one can be heard', () => {
  const known = heard(NO_ORDERS, { ...sent, more: true })
  expect(orderState(known, 'a', saved)).toEqual({ kind: 'current', order, more: true })
  expect(orderState(known, 'a', { kind: 'offline', unsent: false })).toEqual({ kind: 'current', order })
  expect(orderState(heard(known, sent), 'a', saved)).toEqual({ kind: 'current', order })
})

test('P10 that ways out are looked for is known while the server that looks can be heard, and of what this device plans itself always', () => {
  const known = heard(NO_ORDERS, { ...sent, looking: true })
  expect(orderState(known, 'a', saved)).toEqual({ kind: 'current', order, looking: true })
  expect(orderState(known, 'a', { kind: 'offline', unsent: false })).toEqual({ kind: 'current', order })
  const ours = { hash: 'b', order, more: true } as const
  expect(orderState({ ...known, ours }, 'b', { kind: 'offline', unsent: true })).toEqual({ kind: 'current', order, more: true })
})

test('an edit taken back makes its order current again, whatever the server plans meanwhile', () => {
  const known = heard(heard(NO_ORDERS, sent), { kind: 'planning', hash: 'b' })
  expect(orderState(known, 'b', saved)).toEqual({ kind: 'planning', order })
  expect(orderState(known, 'a', saved)).toEqual({ kind: 'current', order })
})

test('a failure is shown for the plan it is of, and for no other', () => {
  const known = heard(heard(NO_ORDERS, sent), { kind: 'failed', hash: 'b', why: 'It did not work.' })
  expect(orderState(known, 'b', saved)).toEqual({ kind: 'failed', order, why: 'It did not work.' })
  expect(orderState(known, 'c', saved)).toEqual({ kind: 'planning', order })
})

test('an order planned on this device is current until the server has one', () => {
  const ours = { hash: 'b', order: orderOf(toast('e1', 6), 'quick') }
  const known = { ...heard(NO_ORDERS, sent), ours }
  expect(orderState(known, 'b', { kind: 'offline', unsent: true })).toEqual({ kind: 'current', order: ours.order })
  const theirs = orderOf(toast('e1', 6), 'better')
  expect(orderState(heard(known, { kind: 'order', hash: 'b', order: theirs }), 'b', saved)).toEqual({
    kind: 'current',
    order: theirs,
  })
})

test('a device that cannot tell the hash believes the server only when the server has all its edits', () => {
  const known = heard(NO_ORDERS, sent)
  expect(orderState(known, null, saved).kind).toBe('current')
  expect(orderState(known, null, { kind: 'saving' }).kind).toBe('planning')
  expect(orderState(known, null, { kind: 'offline', unsent: true }).kind).toBe('planning')
  expect(orderState(known, null, { kind: 'offline', unsent: false }).kind).toBe('current')
  expect(orderState(heard(known, { kind: 'planning', hash: 'b' }), null, saved)).toEqual({ kind: 'planning', order })
})

test('before anything is known there is no order', () => {
  expect(orderState(NO_ORDERS, 'a', saved)).toEqual({ kind: 'none' })
  expect(orderState(NO_ORDERS, null, saved)).toEqual({ kind: 'none' })
})
