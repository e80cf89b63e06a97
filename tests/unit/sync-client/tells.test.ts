import 'fake-indexeddb/auto'
import { afterEach, beforeEach, expect, test } from 'vitest'
import type { LocalOrder } from '#app/_sync/local-order.ts'
import { pageShelf } from '#app/_sync/shelf.ts'
import { realTimers } from '#app/_sync/timers.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { dateAt, instantOfMs, msOfInstant } from '#lib/domain/time.ts'
import { problemHash } from '#lib/order/hash.ts'
import { renameDish } from '#lib/plan/commands/set.ts'
import { stepOf } from '#lib/plan/night-facts.ts'
import { type Cable, openCable } from '#tests/support/cable.ts'
import { cook, course, dish, evening, step } from '#tests/support/evening-builders.ts'
import { turn } from '#tests/support/loopback-room.ts'
import { type APage, aPage } from './a-page.ts'
import { type AServer, aServer } from './a-server.ts'

const MINUTE = 60_000
let number = 0
let plan = evening()
let server: AServer
let line: Cable
let pages: APage[] = []

beforeEach(async () => {
  number += 1
  plan = evening(
    { id: `tells${number}`, date: dateAt('UTC', Date.now()), zone: 'UTC', cooks: [cook('kim'), cook('noor')] },
    course('main', dish('roast', step('salt', 10), step('carve', 10)), dish('salad', step('wash', 10))),
  )
  server = await aServer(plan)
  await server.seat('kim', 'host', 'kim')
  await server.seat('noor', 'cook', 'noor')
  line = await openCable(() => server.port())
})

afterEach(async () => {
  for (const page of pages) page.close()
  await line.close()
  await server.close()
  pages = []
})

const page = (user: string, port: number, more: Partial<Parameters<typeof aPage>[0]> = {}) => {
  const opened = aPage({ port, eveningId: plan.id, user, shelf: pageShelf(), ...more })
  pages.push(opened)
  return opened
}
/** Without a connection, with an edit that is not sent: as long as closing the page is a risk, this device has no copy of it yet. */
const offline = async (at: APage, isFirst = true) => {
  await at.until((loaded, link) => loaded !== null && link.kind === 'offline')
  if (isFirst) at.plan().edit((doc) => renameDish(doc, 'salad', 'Green salad'))
  while (at.atRisk()) await turn()
}

test('K14 what is told without a connection is seen here at once, in order and after a reload, and counts once when it arrives', async () => {
  const shelf = pageShelf()
  const noor = page('noor', server.port())
  const kim = page('kim', line.port, { shelf })
  await Promise.all([kim.saved(), noor.saved()])
  line.pull()
  await offline(kim)
  const said = kim.plan().tell({ kind: 'done', step: 'salt' })
  kim.plan().tell({ kind: 'longer', step: 'carve', minutes: 10 })
  kim.plan().tell({ kind: 'take-back', of: said.op, said: { kind: 'done', step: 'salt' } })
  kim.plan().tell({ kind: 'started', step: 'salt' })
  const seen = kim.plan().evening
  expect(stepOf(seen, 'salt')).toMatchObject({ started: expect.any(String), by: 'kim' })
  expect(stepOf(seen, 'salt')).not.toHaveProperty('done')
  expect(stepOf(seen, 'carve')).toMatchObject({ extra: 'PT10M' })
  expect(kim.plan().waitingTells).toBe(4)
  kim.close()

  const again = page('kim', line.port, { shelf })
  await offline(again, false)
  expect(again.plan().evening.night).toEqual(seen.night)
  expect(again.plan().waitingTells).toBe(4)
  line.plugIn()
  await again.until((loaded) => loaded?.waitingTells === 0)
  await noor.until((loaded) => loaded !== null && stepOf(loaded.evening, 'salt')?.started !== undefined)
  const written = await server.rooms().read(plan.id)
  await again.until((loaded) => JSON.stringify(loaded?.evening.night) === JSON.stringify(written.night))
  expect(written.night.map((fact) => Object.keys(fact).toSorted())).toEqual([
    ['by', 'extra', 'step'],
    ['by', 'started', 'step'],
  ])
  expect(stepOf(written, 'carve')?.extra).toBe('PT10M')
})

test('K14 with a connection what is told is there before and after the answer, and its outcome says the moment', async () => {
  const kim = page('kim', server.port())
  await kim.saved()
  const extras: (string | undefined)[] = []
  kim.subscribe(() => extras.push(stepOf(kim.plan().evening, 'salt')?.extra))
  const { answered, op } = kim.plan().tell({ kind: 'longer', step: 'salt', minutes: 10 })
  const outcome = await answered
  expect(outcome).toEqual({ op, kind: 'done', told: expect.any(String) })
  await kim.until((loaded) => loaded?.waitingTells === 0)
  expect(extras.length).toBeGreaterThan(1)
  expect(new Set(extras.filter((extra) => extra !== undefined))).toEqual(new Set(['PT10M']))
  expect(extras.slice(extras.indexOf('PT10M'))).not.toContain(undefined)
})

test('K6 a phone whose clock is seven minutes fast knows the server’s time, and after a reload without a connection too', async () => {
  const shelf = pageShelf()
  const timers = { ...realTimers, now: () => Date.now() + 7 * MINUTE }
  const kim = page('kim', line.port, { shelf, timers })
  await kim.saved()
  line.pull()
  await offline(kim)
  kim.close()
  const again = page('kim', line.port, { shelf, timers })
  await offline(again, false)
  expect(Math.abs(again.plan().now() - Date.now())).toBeLessThan(MINUTE)
  again.plan().tell({ kind: 'done', step: 'wash' })
  const seen = stepOf(again.plan().evening, 'wash')?.done
  line.plugIn()
  await again.until((loaded) => loaded?.waitingTells === 0)
  const done = stepOf(await server.rooms().read(plan.id), 'wash')?.done
  for (const moment of [seen, done]) expect(Math.abs(msOfInstant(moment ?? '') - Date.now())).toBeLessThan(MINUTE)
})

/** An order such as the engine gives; what is in it is not looked at here, but for its cost and its cues. */
const orderOf = (of: Evening, total: number, cues: RunningOrder['cues'] = []): RunningOrder => ({
  format: 'tableward-order/1',
  evening: of.id,
  of: { hash: problemHash(of), engine: 'by hand', seed: 1, budget: 1 },
  origin: '2026-11-07T00:00:00+00:00',
  zone: 'UTC',
  cues,
  keeping: [],
  courses: [],
  ovens: [],
  cooks: [],
  allHostsAway: 'PT0S',
  goals: [{ goal: 'fresh', cost: total }],
  total,
  clashes: [],
  proof: { kind: 'none' },
})

/** Salt, from so many minutes after now on, for ten. */
const salting = (minutes: number): RunningOrder['cues'] => [
  {
    step: 'salt',
    batch: 0,
    way: 0,
    start: instantOfMs(plan, Date.now() + minutes * MINUTE),
    end: instantOfMs(plan, Date.now() + (minutes + 10) * MINUTE),
    cooks: ['kim'],
    kit: [],
    kitchen: 'home',
    touches: [],
    state: 'planned',
    slack: 'PT0S',
    because: [],
  },
]

/** Plans by hand, one order costing more than the one before, and notes what it was asked. */
const planner = () => {
  const asked: { readonly evening: Evening; readonly last: RunningOrder | null }[] = []
  const local: LocalOrder = {
    hash: (of, answer) => answer(problemHash(of)),
    plan: (of, last, answer) => {
      asked.push({ evening: of, last })
      answer({ hash: problemHash(of), order: orderOf(of, asked.length, salting(1)) })
    },
    tryOut: (_of, _last, answer) => answer(null),
    close: () => undefined,
  }
  return { asked, local }
}
const total = (at: APage) => {
  const { order } = at.plan()
  return order.kind === 'current' ? order.order.total : null
}

test('K18 without a connection the plan with what was told is planned here, from the order that was shown, and kept across a reload', async () => {
  const { asked, local } = planner()
  const shelf = pageShelf()
  const kim = page('kim', line.port, { shelf, local })
  await kim.saved()
  server.rooms().sendOrder(plan.id, { kind: 'order', hash: problemHash(plan), order: orderOf(plan, 100) })
  await kim.until((loaded) => loaded?.order.kind === 'current')
  line.pull()
  await offline(kim)
  kim.plan().tell({ kind: 'longer', step: 'salt', minutes: 10 })
  await kim.until(() => total(kim) === 1)
  expect(asked.map(({ evening: of, last }) => [stepOf(of, 'salt')?.extra, last?.total])).toEqual([['PT10M', 100]])
  kim.close()
  const again = page('kim', line.port, { shelf, local })
  await again.until((loaded) => loaded?.order.kind === 'current')
  expect(total(again)).toBe(1)
  expect(asked).toHaveLength(1)
})

test('K18 time that passes over an untold step has it planned again here, while there is no connection and the night is on', async () => {
  const { asked, local } = planner()
  const looks: (() => void)[] = []
  const LOOK_MS = 30_000
  const timers = {
    ...realTimers,
    after(ms: number, run: () => void) {
      if (ms !== LOOK_MS) return realTimers.after(ms, run)
      looks.push(run)
      return () => undefined
    },
  }
  const kim = page('kim', line.port, { local, timers })
  await kim.saved()
  const look = () => {
    for (const run of looks.splice(0)) run()
  }
  await kim.plan().tell({ kind: 'begin' }).answered
  const late = (minutes: number) =>
    server
      .rooms()
      .sendOrder(plan.id, { kind: 'order', hash: problemHash(plan), order: orderOf(plan, 100 + minutes, salting(-minutes)) })
  late(3)
  await kim.until(() => total(kim) === 103)
  look()
  expect(asked).toEqual([])
  late(1)
  await kim.until(() => total(kim) === 101)
  line.pull()
  await offline(kim, false)
  look()
  expect(asked).toEqual([])
  line.plugIn()
  await kim.saved()
  late(3)
  await kim.until(() => total(kim) === 103)
  line.pull()
  await kim.until((_, link) => link.kind === 'offline')
  look()
  expect(asked.map(({ last }) => last?.total)).toEqual([103])
  expect(total(kim)).toBe(1)
  look()
  expect(asked).toHaveLength(1)
})
