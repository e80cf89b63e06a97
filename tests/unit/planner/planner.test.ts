import { expect, test } from 'vitest'
import { problemHash } from '#lib/order/hash.ts'
import { orderOf, planning, toast } from './by-hand.ts'

test('P1 a note starts no solve and says nothing', async () => {
  const p = planning()
  await p.edit(toast('e1', 5))
  await p.answer()
  await p.answer()
  const said = p.sent.length
  const begun = p.started.length
  await p.edit(toast('e1', 5, 'Butter first.'))
  expect(problemHash(toast('e1', 5, 'Butter first.'))).toBe(problemHash(toast('e1', 5)))
  expect(p.sent).toHaveLength(said)
  expect(p.started).toHaveLength(begun)
})

test('P1 a note during a solve does not disturb it', async () => {
  const p = planning()
  await p.edit(toast('e1', 5))
  await p.edit(toast('e1', 5, 'Butter first.'))
  expect(p.started).toHaveLength(1)
  expect(p.started[0]?.stopped).toBe(false)
  await p.answer()
  expect(p.story()).toEqual(['e1 planning', 'e1 order'])
})

test('P2 an edit during a solve stops it, and its answer is neither sent nor stored', async () => {
  const p = planning()
  await p.edit(toast('e1', 5))
  await p.edit(toast('e1', 7))
  expect(p.started[0]?.stopped).toBe(true)
  await p.answer({ index: 0 })
  expect(p.story()).toEqual(['e1 planning', 'e1 planning'])
  expect(p.stored.size).toBe(0)
  expect(p.started[1]?.slice.hash).toBe(problemHash(toast('e1', 7)))
  await p.answer({ index: 1 })
  expect(p.sent.at(-1)?.message).toMatchObject({ kind: 'order', hash: problemHash(toast('e1', 7)) })
  expect(p.stored.get('e1')?.hash).toBe(problemHash(toast('e1', 7)))
})

test('P2 an answer that comes before the edit was looked at is dropped as well', async () => {
  const p = planning()
  await p.edit(toast('e1', 5))
  p.planner.plan('e1', toast('e1', 7))
  await p.answer({ index: 0 })
  expect(p.story()).toEqual(['e1 planning'])
  expect(p.stored.size).toBe(0)
})

test('P2 the answer to a plan that was left and came back stands', async () => {
  const p = planning()
  await p.edit(toast('e1', 5))
  await p.answer()
  await p.answer()
  await p.edit(toast('e1', 7))
  await p.edit(toast('e1', 5))
  expect(p.started.at(-1)?.stopped).toBe(true)
  expect(p.sent.at(-1)?.message).toMatchObject({ kind: 'order', hash: problemHash(toast('e1', 5)) })
  await p.answer()
  expect(p.sent.at(-1)?.message).toMatchObject({ hash: problemHash(toast('e1', 5)) })
})

test('P3 evenings take turns, and the one that edits without pause does not go first', async () => {
  const p = planning()
  await p.edit(toast('e1', 5))
  await p.edit(toast('e2', 5))
  await p.edit(toast('e3', 5))
  await p.edit(toast('e1', 6))
  await p.edit(toast('e1', 7))
  await p.answer({ index: 0 })
  await p.answer({ index: 1 })
  await p.answer({ index: 2 })
  expect(p.started.map(({ slice }) => slice.eveningId)).toEqual(['e1', 'e2', 'e3', 'e1'])
  expect(p.started.at(-1)?.slice.hash).toBe(problemHash(toast('e1', 7)))
})

test('P3 a first answer goes before better ones: a better one under way gives way and is taken up again', async () => {
  const p = planning()
  await p.edit(toast('e1', 5))
  await p.answer()
  expect(p.started.at(-1)?.slice).toMatchObject({ eveningId: 'e1', kind: 'better' })
  await p.edit(toast('e2', 5))
  expect(p.started[1]?.stopped).toBe(true)
  await p.answer({ index: 1, total: 90, whole: false })
  expect(p.started.at(-1)?.slice).toMatchObject({ eveningId: 'e2', kind: 'quick' })
  expect(p.sent.at(-1)).toMatchObject({ eveningId: 'e1', message: { kind: 'order', order: { total: 90 } } })
  await p.answer()
  expect(p.started.at(-1)?.slice).toMatchObject({ eveningId: 'e1', kind: 'better' })
})

test('P3 one slice of an evening at a time, and a place stays free for first answers', async () => {
  const p = planning({ room: 2 })
  await p.edit(toast('e1', 5))
  await p.answer()
  await p.edit(toast('e2', 5))
  await p.answer()
  expect(p.started.map(({ slice }) => `${slice.eveningId} ${slice.kind}`)).toEqual(['e1 quick', 'e1 better', 'e2 quick'])
  expect(p.started.every(({ stopped }) => !stopped)).toBe(true)
  await p.answer({ index: 1 })
  expect(p.started.at(-1)?.slice).toMatchObject({ eveningId: 'e2', kind: 'better' })
})

test('P4 the first answer is sent at once and the better one replaces it', async () => {
  const p = planning()
  await p.edit(toast('e1', 5))
  await p.answer({ total: 100 })
  await p.answer({ total: 80 })
  expect(p.sent.map(({ message }) => (message.kind === 'order' ? message.order.total : message.kind))).toEqual([
    'planning',
    100,
    80,
  ])
  expect(p.stored.get('e1')?.order.total).toBe(80)
  expect(p.started).toHaveLength(2)
})

test('P4 a half-way answer that is no better is not shown', async () => {
  const p = planning()
  await p.edit(toast('e1', 5))
  await p.answer({ total: 100 })
  await p.answer({ total: 120, whole: false })
  expect(p.sent).toHaveLength(2)
  expect(p.stored.get('e1')?.order.total).toBe(100)
})

test('P5 a crash is tried once more, then said calmly, and the next edit is planned', async () => {
  const p = planning()
  await p.edit(toast('e1', 5))
  await p.report({ kind: 'crashed', why: 'out of memory' })
  expect(p.started).toHaveLength(2)
  await p.report({ kind: 'crashed', why: 'out of memory' })
  expect(p.started).toHaveLength(2)
  expect(p.sent.at(-1)?.message).toMatchObject({ kind: 'failed', hash: problemHash(toast('e1', 5)) })
  expect(p.sent.at(-1)?.message).not.toMatchObject({ why: expect.stringContaining('memory') })
  expect(p.logged.length).toBeGreaterThan(0)
  expect(p.stored.size).toBe(0)
  await p.edit(toast('e1', 5, 'A note.'))
  expect(p.started).toHaveLength(2)
  await p.edit(toast('e1', 6))
  await p.answer()
  expect(p.sent.at(-1)?.message.kind).toBe('order')
})

test('P5 what the verifier refuses is not shown, and not tried again', async () => {
  const p = planning()
  await p.edit(toast('e1', 5))
  await p.report({ kind: 'refused', why: 'H7 two things at once' })
  expect(p.started).toHaveLength(1)
  expect(p.story()).toEqual(['e1 planning', 'e1 failed'])
  expect((await p.planner.current('e1', toast('e1', 5))).kind).toBe('failed')
})

test('P5 a better slice that fails leaves the first answer in place', async () => {
  const p = planning()
  await p.edit(toast('e1', 5))
  await p.answer()
  const first = p.sent.at(-1)?.message
  await p.report({ kind: 'crashed', why: 'out of memory' })
  expect(p.story()).toEqual(['e1 planning', 'e1 order', 'e1 order'])
  // Nothing better is coming: the same order is said once more without that promise.
  expect(first).toMatchObject({ kind: 'order', more: true })
  expect({ ...p.sent.at(-1)?.message, more: true }).toEqual(first)
  expect(p.sent.at(-1)?.message).not.toHaveProperty('more')
  expect(p.started).toHaveLength(2)
})

test('P4 what is said of a first answer is that a better one is coming, until it is there', async () => {
  const p = planning()
  await p.edit(toast('e1', 5))
  await p.answer({ total: 90 })
  expect(p.sent.at(-1)?.message).toMatchObject({ kind: 'order', more: true, order: { total: 90 } })
  await p.answer({ total: 80, whole: false })
  expect(p.sent.at(-1)?.message).toMatchObject({ kind: 'order', more: true, order: { total: 80 } })
  await p.answer({ total: 80 })
  expect(p.sent.at(-1)?.message).toMatchObject({ kind: 'order', order: { total: 80 } })
  expect(p.sent.at(-1)?.message).not.toHaveProperty('more')
})

test('P6 after a restart the stored order is shown without solving', async () => {
  const evening = toast('e1', 5)
  const kept = { hash: problemHash(evening), order: orderOf(evening, 'better') }
  const p = planning({ stored: new Map([['e1', kept]]) })
  await p.edit(evening)
  expect(await p.planner.current('e1', evening)).toEqual({ kind: 'order', ...kept })
  expect(p.started).toHaveLength(0)
  expect(p.sent).toHaveLength(0)
})

test('P6 a stored first answer is shown and made better', async () => {
  const evening = toast('e1', 5)
  const kept = { hash: problemHash(evening), order: orderOf(evening, 'quick') }
  const p = planning({ stored: new Map([['e1', kept]]) })
  await p.edit(evening)
  expect(await p.planner.current('e1', evening)).toEqual({ kind: 'order', ...kept, more: true })
  expect(p.started.map(({ slice }) => slice.kind)).toEqual(['better'])
})

test('P6 a stored order of another plan is not shown as this one’s', async () => {
  const old = toast('e1', 5)
  const p = planning({ stored: new Map([['e1', { hash: problemHash(old), order: orderOf(old, 'better') }]]) })
  await p.edit(toast('e1', 6))
  expect(await p.planner.current('e1', toast('e1', 6))).toEqual({ kind: 'planning', hash: problemHash(toast('e1', 6)) })
  expect(p.started).toHaveLength(1)
})

test('P14 a page that is drawn is told what there is, whether people are there or not, and nothing is planned for it', async () => {
  const old = toast('e1', 5)
  const kept = { hash: problemHash(old), order: orderOf(old, 'quick') }
  const p = planning({ stored: new Map([['e1', kept]]) })
  expect(await p.planner.peek('e1', old)).toEqual({ last: kept.order, message: { kind: 'order', ...kept, more: true } })
  expect(await p.planner.peek('e1', toast('e1', 6))).toEqual({ last: kept.order, message: null })
  expect(await p.planner.peek('e2', toast('e2', 6))).toEqual({ last: null, message: null })
  expect(p.started).toHaveLength(0)
  await p.edit(old)
  await p.answer({ total: 80 })
  const { last, message } = await p.planner.peek('e1', old)
  expect(message).toEqual(await p.planner.current('e1', old))
  expect(last).toMatchObject({ total: 80 })
})

test('P7 edits are gathered: many in a row are one solve, and never wait longer than 400 ms', async () => {
  const p = planning()
  for (let minutes = 1; minutes <= 12; minutes += 1) {
    p.planner.plan('e1', toast('e1', minutes))
    p.pass(50)
    await p.settled()
    if (minutes < 8) expect(p.started).toHaveLength(0)
  }
  expect(p.started).toHaveLength(1)
  p.pass(400)
  await p.settled()
  expect(p.started[0]?.stopped).toBe(true)
  await p.answer({ index: 0 })
  expect(p.started.at(-1)?.slice.hash).toBe(problemHash(toast('e1', 12)))
})

test('P8 when everybody has left, a first answer is finished and stored, and nothing better is begun', async () => {
  const p = planning()
  await p.edit(toast('e1', 5))
  p.planner.forget('e1')
  await p.answer()
  expect(p.stored.get('e1')?.hash).toBe(problemHash(toast('e1', 5)))
  expect(p.started).toHaveLength(1)
  await p.edit(toast('e2', 5))
  await p.answer()
  p.planner.forget('e2')
  expect(p.started.at(-1)).toMatchObject({ slice: { kind: 'better' }, stopped: true })
})

test('P8 an order that cannot be stored is shown all the same', async () => {
  const p = planning()
  p.stored.set = () => {
    throw new Error('the disk is full')
  }
  await p.edit(toast('e1', 5))
  await p.answer()
  expect(p.sent.at(-1)?.message.kind).toBe('order')
  expect(p.logged).toContain('the running order of evening e1 was not stored')
})
