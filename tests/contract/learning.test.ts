import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { printEvening } from '#lib/domain/parse.ts'
import type { NightFact } from '#lib/domain/people.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import { planEvening } from '#lib/order/engine.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { deleteAccount } from '#server/auth/delete-account.ts'
import { exportAccount } from '#server/auth/own-data.ts'
import { deleteEvening } from '#server/evenings/delete.ts'
import { importEvening } from '#server/evenings/file.ts'
import { addMember } from '#server/evenings/members.ts'
import { putDish, readLibrary, sayOfDish } from '#server/learning/library.ts'
import { readMemory } from '#server/learning/memory.ts'
import { storedOrders } from '#server/planner/order-store.ts'
import { claim, cook, course, dish, evening, follows, step } from '#tests/support/evening-builders.ts'
import { openLiveParts, somebody } from '#tests/support/live-parts.ts'

let parts: Awaited<ReturnType<typeof openLiveParts>>
let demo: Evening
let order: RunningOrder
beforeAll(async () => {
  parts = await openLiveParts()
  // Few steps: every evening that is made of it is planned beside the test.
  demo = evening(
    {
      date: '2026-03-06',
      cooks: [cook('ada'), cook('bo', ['home 12:00 23:30'], { host: false })],
      claims: [claim('soup', 'ada'), claim('peel', 'bo'), claim('salad', 'bo')],
    },
    course(
      'main',
      dish('soup', step('peel', 20), step('dice', 10, follows('peel')), step('blend', 6, follows('dice'))),
      dish('salad', step('wash', 8), step('dress', 4, follows('wash'))),
    ),
  )
  order = planEvening(demo, { budget: { steps: 20, seed: 1 } })
})
afterAll(() => parts.close())

const mustBe = <T>(result: { ok: true; value: T } | { ok: false; error: { kind: string } }): T => {
  if (!result.ok) throw new Error(result.error.kind)
  return result.value
}

/** Hands-on steps with one cook each, as they were told: one and a half times what is written. */
const told = (): readonly NightFact[] =>
  demo.steps.flatMap((step): NightFact[] => {
    const cue = order.cues.find((each) => each.step === step.id)
    const way = cue && step.ways[cue.way]
    if (!cue || !way || way.care !== 'hands-on' || cue.cooks.length !== 1 || step.dish === null || way.upTo) return []
    const done = new Date(msOfInstant(cue.start) + secondsOf(way.takes.likely) * 1500).toISOString()
    return [{ step: step.id, started: cue.start, done, by: cue.cooks[0] ?? '' }]
  })

const close = async (eveningId: string, closed: string) => {
  const facts: readonly NightFact[] = [
    ...told(),
    { night: 'begun', begun: '2026-03-06T12:00:00Z', closed, by: demo.cooks[0]?.id ?? '' },
  ]
  // Held open, as an evening is that is being cooked: the plan is told of.
  parts.rooms.hold(eveningId)
  await storedOrders(parts.db).save(eveningId, { hash: 'of this test', order })
  await parts.rooms.edit(eveningId, (doc) => {
    for (const fact of facts) doc.getMap('night').set('night' in fact ? 'night' : `step:${'step' in fact ? fact.step : ''}`, fact)
  })
  // All of it in one commit.
  const count = () => parts.db.stepMemory.count({ where: { eveningId, closedAt: new Date(closed) } })
  await vi.waitUntil(async () => (await count()) > 0, { timeout: 20_000, interval: 20 })
  parts.rooms.release(eveningId)
}

const scene = async () => {
  const [host, guest, stranger] = await Promise.all(['Host', 'Cook', 'Stranger'].map(somebody))
  if (!host || !guest || !stranger) throw new Error('nobody came')
  const [first, second] = demo.cooks
  const plant = async () => {
    const { eveningId } = mustBe(await importEvening(host.id, printEvening({ ...demo, id: randomUUID() })))
    mustBe(await addMember(host.id, eveningId, { email: guest.email, role: 'cook', cook: second?.id ?? null }))
    await parts.db.member.updateMany({ where: { eveningId, userId: host.id }, data: { cook: first?.id ?? null } })
    return eveningId
  }
  return { host, cook: guest, stranger, before: await plant(), next: await plant(), cookId: second?.id ?? '' }
}

test('LE6 a closed evening is remembered once: by its hosts whole, by a cook their own steps, by nobody else, and by what was written then', async () => {
  const { host, cook, stranger, before, next, cookId } = await scene()
  const facts = told()
  expect(facts).toHaveLength(5)
  expect(mustBe(await readMemory(host.id, next))).toEqual([])
  await close(before, '2026-03-06T23:00:00Z')
  const seen = mustBe(await readMemory(host.id, next))
  expect(seen).toHaveLength(facts.length)
  for (const { took, written } of seen) expect(took / written).toBeCloseTo(1.5, 1)
  expect(JSON.stringify(seen)).not.toContain(cook.id)
  const own = mustBe(await readMemory(cook.id, next))
  expect(own).toHaveLength(3)
  expect(own).toEqual(seen.filter((each) => each.cook === cookId))
  expect(await readMemory(stranger.id, next)).toEqual({ ok: false, error: { kind: 'not-found' } })
  // Of the evening itself the night's own page speaks.
  expect(mustBe(await readMemory(host.id, before))).toEqual([])

  // What is taken over afterwards does not change what was written that night.
  const [step] = demo.steps.filter(({ id }) => facts.some((fact) => 'step' in fact && fact.step === id))
  if (!step) throw new Error('no step')
  const ways = step.ways.map((way) => ({ ...way, takes: { least: 'PT1H', likely: 'PT1H', most: 'PT1H' } }))
  await parts.rooms.edit(before, (doc) => setFields(doc, 'steps', step.id, { ways }))
  await parts.rooms.read(before)
  expect(mustBe(await readMemory(host.id, next))).toEqual(seen)

  const file = JSON.parse((await exportAccount(cook.id, 0)) ?? '') as { evenings: { took: object[] }[] }
  expect(file.evenings.map(({ took }) => took.length)).toEqual([own.length, 0])
  // With the account its steps are gone, from the hosts' too; with the evening all of them.
  mustBe(await deleteAccount(cook.id, 'a password for tests'))
  expect(mustBe(await readMemory(host.id, next))).toHaveLength(seen.length - own.length)
  mustBe(await deleteEvening(host.id, before, demo.name))
  expect(await parts.db.stepMemory.count({ where: { eveningId: before } })).toBe(0)
})

test('LE7 what one said of a dish is one’s own, and the dish goes into another evening with its method', async () => {
  const { host, cook, stranger, before, next } = await scene()
  await close(before, '2026-03-06T23:00:00Z')
  const [dish] = demo.dishes
  if (!dish) throw new Error('no dish')
  const word = { eveningId: before, dish: dish.id, verdict: 'again', left: 'quarter', note: 'More salt' } as const
  mustBe(await sayOfDish(host.id, word))
  mustBe(await sayOfDish(host.id, { eveningId: before, dish: dish.id, verdict: 'changes' }))
  for (const refused of [
    await sayOfDish(stranger.id, word),
    await sayOfDish(host.id, { ...word, dish: 'no-such-dish' }),
    await putDish(stranger.id, word, { eveningId: next, course: dish.course }),
    await putDish(host.id, word, { eveningId: randomUUID(), course: dish.course }),
  ])
    expect(refused).toEqual({ ok: false, error: { kind: 'not-found' } })
  const noon = Date.parse('2026-03-06T12:00:00Z')
  const timeOf = async (userId: string) =>
    (await readLibrary(userId, noon)).dishes
      .flatMap(({ times }) => times)
      .find((time) => time.eveningId === before && time.dish === dish.id)
  expect(await timeOf(host.id)).toMatchObject({ verdict: 'changes', left: 'quarter', note: 'More salt', covers: demo.covers })
  expect(await timeOf(cook.id)).toMatchObject({ verdict: null, left: null, note: '' })
  // A course that was the children's own fed the children.
  const children = { at: { day: 0, time: '17:00' }, covers: 3 }
  await parts.rooms.edit(before, (doc) => setFields(doc, 'courses', dish.course, { welcome: true, children }))
  expect(await timeOf(host.id)).toMatchObject({ covers: 3, made: 3 })
  const { dishes, targets } = await readLibrary(host.id, noon)
  expect(dishes.map(({ name }) => name).sort()).toEqual(
    demo.dishes
      .filter(({ state }) => state === 'on')
      .map(({ name }) => name)
      .sort(),
  )
  expect(targets.map(({ id }) => id)).toEqual([next])
  expect((await readLibrary(stranger.id, noon)).dishes).toEqual([])

  const put = mustBe(await putDish(host.id, word, { eveningId: next, course: dish.course }))
  const { dishes: there, steps } = await parts.rooms.read(next)
  expect(there.find(({ id }) => id === put.dish)?.name).toBe(dish.name)
  const does = (id: string, all: Evening['steps']) =>
    all
      .filter((step) => step.dish === id)
      .map((step) => step.does)
      .sort()
  expect(does(put.dish, steps)).toEqual(does(dish.id, demo.steps))
  expect(await putDish(host.id, word, { eveningId: next, course: 'no-such-course' })).toEqual({
    ok: false,
    error: { kind: 'too-many' },
  })
})
