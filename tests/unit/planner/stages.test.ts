import { expect, test } from 'vitest'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { problemHash } from '#lib/order/hash.ts'
import { isTonight } from '#lib/order/start.ts'
import { type Prover, provingRunner } from '#server/planner/proving-runner.ts'
import type { Report } from '#server/planner/runner.ts'
import { clash, handClock, handRunner, orderOf, planning, toast } from './by-hand.ts'

const kinds = ({ started }: ReturnType<typeof planning>) => started.map(({ slice }) => `${slice.eveningId} ${slice.kind}`)

test('P9 before its day an evening is planned from its last order, which costs nothing to leave', async () => {
  const p = planning()
  await p.edit(toast('e1', 5))
  expect(p.started[0]?.slice).toMatchObject({ start: {}, order: null })
  await p.answer({ total: 100 })
  expect(p.started[1]?.slice).toMatchObject({ kind: 'better', start: {}, order: { total: 100 } })
  await p.answer({ total: 80 })
  await p.edit(toast('e1', 7))
  expect(p.started[2]?.slice.start).toEqual({ hint: p.stored.get('e1')?.order })
  expect(p.stored.get('e1')?.order.total).toBe(80)
})

test('P9 after a restart the stored order of another plan is where the next one begins', async () => {
  const old = toast('e1', 5)
  const order = orderOf(old, 'better', 70)
  const p = planning({ stored: new Map([['e1', { hash: problemHash(old), order }]]) })
  await p.edit(toast('e1', 6))
  expect(p.started[0]?.slice).toMatchObject({ kind: 'quick', start: { hint: order } })
})

/** 14 November 2026, 19:20:00 in London: the guests are there. */
const TONIGHT = Date.parse('2026-11-14T19:20:00Z')

/** The same, once the evening has begun. */
const tonight = (id: string, minutes: number) => ({
  ...toast(id, minutes),
  night: [{ night: 'begun' as const, begun: '2026-11-14T17:00:00+00:00', by: 'kim' }],
})

test('P9 on the night it is planned from now and from what was told, the same for every stage', async () => {
  const p = planning({ at: TONIGHT })
  await p.edit(tonight('e1', 5))
  expect(p.started[0]?.slice.start).toEqual({ now: '2026-11-14T19:20:00+00:00' })
  await p.answer({ total: 100 })
  await p.answer({ total: 80 })
  p.pass(60_000)
  await p.edit(tonight('e1', 7))
  const told = p.stored.get('e1')?.order
  const start = { now: '2026-11-14T19:21:00+00:00', previous: told }
  expect(told?.total).toBe(80)
  expect(p.started[2]?.slice).toMatchObject({ kind: 'quick', start })
  await p.answer({ total: 110 })
  expect(p.started[3]?.slice).toMatchObject({ kind: 'better', start, order: { total: 110 } })
})

test('K21 asked again, the same problem is planned from the present moment and from the order that people saw', async () => {
  const p = planning({ at: TONIGHT })
  const heard: string[] = []
  p.planner.onOrder((eveningId, order) => heard.push(`${eveningId} ${order.total}`))
  await p.edit(tonight('e1', 5))
  await p.answer({ total: 100 })
  await p.answer({ total: 100 })
  p.pass(120_000)
  p.planner.again('e1')
  await p.settled()
  const told = p.stored.get('e1')?.order
  expect(p.started.at(-1)?.slice).toMatchObject({
    kind: 'quick',
    start: { now: '2026-11-14T19:22:00+00:00', previous: told },
    order: null,
  })
  // Dearer than what is shown: the moment is another one.
  await p.answer({ total: 130 })
  expect(p.sent.at(-1)?.message).toMatchObject({ kind: 'order', order: { total: 130 }, more: true })
  await p.answer({ total: 120 })
  expect(p.stored.get('e1')?.order.total).toBe(120)
  expect(heard).toEqual(['e1 100', 'e1 100', 'e1 130', 'e1 120'])
})

test('K21 what is under way for an earlier moment is not heard any more, and a first answer under way is not asked for twice', async () => {
  const p = planning({ at: TONIGHT })
  await p.edit(tonight('e1', 5))
  p.planner.again('e1')
  await p.settled()
  expect(kinds(p)).toEqual(['e1 quick'])
  await p.answer({ total: 100 })
  p.pass(60_000)
  p.planner.again('e1')
  await p.settled()
  expect(p.started[1]).toMatchObject({ slice: { kind: 'better' }, stopped: true })
  await p.answer({ total: 1, index: 1 })
  expect(p.stored.get('e1')?.order.total).toBe(100)
  expect(p.started[2]?.slice).toMatchObject({ kind: 'quick', start: { now: '2026-11-14T19:21:00+00:00' } })
})

test('K21 asked for while a word is being gathered that changes nothing, it is planned again all the same', async () => {
  const p = planning({ at: TONIGHT })
  await p.edit(toast('e1', 5))
  await p.answer({ total: 100 })
  await p.answer({ total: 100 })
  // The word that the evening has begun leaves the problem as it is, and the order is of another moment.
  p.planner.plan('e1', tonight('e1', 5))
  p.planner.again('e1')
  await p.settled()
  expect(kinds(p)).toEqual(['e1 quick', 'e1 better'])
  p.pass(400)
  await p.settled()
  expect(kinds(p)).toEqual(['e1 quick', 'e1 better', 'e1 quick'])
  expect(p.started.at(-1)?.slice.start).toMatchObject({ previous: { total: 100 } })
  await p.answer({ total: 130 })
  expect(p.sent.at(-1)?.message).toMatchObject({ kind: 'order', order: { total: 130 } })
})

test('K21 planned again to the same order nothing is sent; what cannot be planned again stays', async () => {
  const p = planning({ at: TONIGHT })
  await p.edit(tonight('e1', 5))
  await p.answer({ total: 100 })
  await p.answer({ total: 90 })
  const said = p.sent.length
  p.planner.again('e1')
  await p.settled()
  await p.answer({ total: 90 })
  await p.answer({ total: 90 })
  expect(kinds(p).slice(2)).toEqual(['e1 quick', 'e1 better'])
  p.planner.again('e1')
  await p.settled()
  await p.report({ kind: 'refused', why: 'a bug' })
  expect(p.logged.join()).toContain('keeps its running order')
  p.planner.again('nobody')
  expect(p.sent).toHaveLength(said)
})

test('P9 the night is from the first word of it until the day after is over', () => {
  const ahead = toast('e1', 5)
  const begun = { ...ahead, night: [{ step: 's1', done: '2026-11-12T19:00:00Z', by: 'kim' }] }
  const at = (instant: string) => Date.parse(instant)
  expect(isTonight(ahead, at('2026-11-13T23:59:59Z'))).toBe(false)
  expect(isTonight(begun, at('2026-11-12T19:00:00Z'))).toBe(true)
  expect(isTonight(ahead, at('2026-11-14T19:00:00Z'))).toBe(false)
  expect(isTonight(begun, at('2026-11-14T19:00:00Z'))).toBe(true)
  expect(isTonight(begun, at('2026-11-15T23:59:59Z'))).toBe(true)
  expect(isTonight(begun, at('2026-11-16T00:00:00Z'))).toBe(false)
})

test('P10 ways out are looked for when wishes stay broken, and a proof when there is a prover: each under the same hash', async () => {
  const p = planning({ canProve: true })
  const hash = problemHash(toast('e1', 5))
  await p.edit(toast('e1', 5))
  await p.answer({ clashes: [clash()] })
  await p.answer({ total: 90, clashes: [clash()] })
  await p.answer({ total: 90, clashes: [clash(true)] })
  await p.answer({ total: 90, clashes: [clash(true)], proof: { kind: 'best' } })
  expect(kinds(p)).toEqual(['e1 quick', 'e1 better', 'e1 ways', 'e1 proof'])
  expect(p.sent.map(({ message }) => message.hash)).toEqual(Array(5).fill(hash))
  expect(p.stored.get('e1')?.order).toMatchObject({ clashes: [{ ways: [{ kind: 'drop' }] }], proof: { kind: 'best' } })
})

test('P10 while ways out are looked for the order says so, and no longer when they are there, or were not found', async () => {
  const looking = async (found: boolean | null) => {
    const p = planning()
    await p.edit(toast('e1', 5))
    await p.answer({ clashes: [clash()] })
    await p.answer({ clashes: [clash()] })
    if (found === null) await p.report({ kind: 'crashed', why: 'out of memory' })
    else await p.answer({ clashes: [clash(found)] })
    return p.sent.flatMap(({ message }) => (message.kind === 'order' ? [[message.more ?? false, message.looking ?? false]] : []))
  }
  const told = [
    [true, false],
    [false, true],
    [false, false],
  ]
  expect(await looking(true)).toEqual(told)
  expect(await looking(false)).toEqual(told)
  expect(await looking(null)).toEqual(told)
})

test('P10 an order without clashes needs no ways out, and without a prover nothing follows', async () => {
  const p = planning()
  await p.edit(toast('e1', 5))
  await p.answer()
  await p.answer()
  expect(kinds(p)).toEqual(['e1 quick', 'e1 better'])
})

test('P10 a clash without a way out is not asked again, and a failed stage leaves the order as it is', async () => {
  const p = planning({ canProve: true })
  await p.edit(toast('e1', 5))
  await p.answer({ clashes: [clash()] })
  await p.answer({ clashes: [clash()] })
  await p.answer({ clashes: [clash()] })
  await p.report({ kind: 'crashed', why: 'out of memory' })
  expect(kinds(p)).toEqual(['e1 quick', 'e1 better', 'e1 ways', 'e1 proof', 'e1 ways'])
  expect(p.story().at(-1)).toBe('e1 order')
})

test('P10 an edit ends whatever stage is under way', async () => {
  const p = planning({ canProve: true })
  await p.edit(toast('e1', 5))
  await p.answer()
  await p.answer()
  expect(p.started[2]?.slice.kind).toBe('proof')
  await p.edit(toast('e1', 6))
  expect(p.started[2]?.stopped).toBe(true)
  await p.answer({ index: 2, total: 1 })
  expect(p.started[3]?.slice).toMatchObject({ kind: 'quick', hash: problemHash(toast('e1', 6)) })
  expect(p.stored.get('e1')?.order.total).toBe(100)
})

test('P10 after a restart an order that was stored without ways out gets them', async () => {
  const evening = toast('e1', 5)
  const kept = { hash: problemHash(evening), order: orderOf(evening, 'better', 100, { clashes: [clash()] }) }
  const p = planning({ stored: new Map([['e1', kept]]) })
  await p.edit(evening)
  expect(kinds(p)).toEqual(['e1 ways'])
})

test('P3 a later stage gives way to an earlier one of another evening, and is taken up again', async () => {
  const p = planning({ room: 2, canProve: true })
  await p.edit(toast('e1', 5))
  await p.answer()
  await p.answer()
  await p.edit(toast('e2', 5))
  await p.answer()
  expect(kinds(p)).toEqual(['e1 quick', 'e1 better', 'e1 proof', 'e2 quick'])
  expect(p.started[2]?.stopped).toBe(true)
  await p.answer({ index: 2, whole: false })
  expect(kinds(p).at(-1)).toBe('e2 better')
  await p.answer()
  expect(kinds(p).slice(5)).toEqual(['e1 proof'])
})

/** A prover that answers when it is told to. */
const handProver = () => {
  let answer: (order: RunningOrder | null) => void = () => undefined
  let isAborted = () => false
  const asked: Parameters<Prover['prove']>[0][] = []
  const prover: Prover = {
    prove: (question) => {
      asked.push(question)
      isAborted = () => question.signal.aborted
      return new Promise((resolve) => {
        answer = resolve
      })
    },
    close: async () => undefined,
  }
  return { prover, asked, answer: (order: RunningOrder | null) => answer(order), isAborted: () => isAborted() }
}

test('P11 proofs go to the prover with what was told, all else to the threads', async () => {
  const { clock } = handClock()
  const threads = handRunner()
  const hand = handProver()
  const runner = provingRunner(threads.runner, hand.prover, clock)
  const evening = toast('e1', 5)
  const order = orderOf(evening, 'better')
  const slice = { eveningId: 'e1', hash: 'h', evening, start: { now: '2026-11-14T19:20:00+00:00', previous: order }, order }
  runner.start({ ...slice, kind: 'better' }, () => undefined)
  expect(threads.started).toHaveLength(1)
  const told = new Promise<Report>((resolve) => runner.start({ ...slice, kind: 'proof' }, resolve))
  expect(hand.asked).toMatchObject([{ evening: { id: 'e1' }, order, ...slice.start }])
  hand.answer(orderOf(evening, 'better', 60, { proof: { kind: 'best' } }))
  expect(await told).toMatchObject({ kind: 'order', order: { total: 60 }, whole: true })
})

test('P11 a proof that is stopped is not over; one that takes too long, or says nothing, is, and leaves the order', async () => {
  const { clock, pass } = handClock()
  const evening = toast('e1', 5)
  const order = orderOf(evening, 'better')
  const prove = (then: (hand: ReturnType<typeof handProver>, stop: () => void) => void) => {
    const hand = handProver()
    const runner = provingRunner(handRunner().runner, hand.prover, clock)
    return new Promise<readonly [Report, boolean]>((resolve) => {
      const stop = runner.start({ eveningId: 'e1', hash: 'h', evening, kind: 'proof', start: {}, order }, (report) =>
        resolve([report, hand.isAborted()]),
      )
      then(hand, stop)
      hand.answer(null)
    })
  }
  expect(await prove((_, stop) => stop())).toEqual([{ kind: 'order', order, whole: false }, true])
  expect(await prove(() => pass(120_000))).toEqual([{ kind: 'order', order, whole: true }, true])
  expect(await prove(() => undefined)).toEqual([{ kind: 'order', order, whole: true }, false])
})
