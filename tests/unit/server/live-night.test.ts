import { expect, test } from 'vitest'
import type { Evening } from '#lib/domain/evening.ts'
import type { NightFact } from '#lib/domain/people.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { instantOfMs, msOfInstant } from '#lib/domain/time.ts'
import { planEvening } from '#lib/order/engine.ts'
import type { Fired } from '#lib/plan/wire.ts'
import { isLive } from '#server/night/is-live.ts'
import { openLiveNight } from '#server/night/live-night.ts'
import { cook, course, dish, evening, follows, leave, role, step, touch } from '#tests/support/evening-builders.ts'
import { handClock } from '#tests/support/hand-clock.ts'
import { turn } from '#tests/support/loopback-room.ts'

const MINUTE = 60_000
const HOUR = 60 * MINUTE

/** A stew of three steps by one cook, who cooks past midnight: on the night of the zone's clocks, if the date says so. */
const stew = (date: string, sitDown = '19:30'): Evening =>
  evening(
    {
      date,
      sitDown: { day: 0, time: sitDown },
      guestsFrom: { day: 0, time: sitDown },
      cooks: [cook('kim', ['home 10:00 1 08:00'])],
    },
    course(
      'm',
      dish(
        'd',
        step('chop', 20),
        step('fry', 15, follows('chop'), leave, touch('out', 1)),
        step('plate', 5, follows('fry'), role('plate')),
      ),
    ),
  )

const told = (plan: Evening, ...facts: NightFact[]): Evening => ({ ...plan, night: [...plan.night, ...facts] })
const begun = (plan: Evening, ms: number): Evening => told(plan, { night: 'begun', begun: instantOfMs(plan, ms), by: 'kim' })
const orderOf = (plan: Evening, nowMs: number, previous?: RunningOrder): RunningOrder =>
  planEvening(plan, {
    now: instantOfMs(plan, nowMs),
    budget: { steps: 20, seed: 1 },
    quick: true,
    ...(previous ? { previous } : {}),
  })
const startOf = (order: RunningOrder, id: string): number => msOfInstant(order.cues.find((cue) => cue.step === id)?.start ?? '')

/** The same order so much later. */
const shifted = (order: RunningOrder, by: number): RunningOrder => ({
  ...order,
  cues: order.cues.map((cue) => ({
    ...cue,
    start: new Date(msOfInstant(cue.start) + by).toISOString(),
    end: new Date(msOfInstant(cue.end) + by).toISOString(),
  })),
})

interface Options {
  readonly rung?: readonly Fired[]
  readonly fails?: boolean
}

/** A night on a clock that is moved by hand. */
const nightAt = (plan: Evening, atMs: number, { rung = [], fails = false }: Options = {}) => {
  const clock = handClock(atMs)
  const saved: string[] = []
  const rang: Fired[] = []
  const logged: string[] = []
  const asked: number[] = []
  let over = 0
  const night = openLiveNight(plan, {
    eveningId: 'e',
    clock,
    rung,
    store: {
      async save(_eveningId, fired) {
        if (fails) throw new Error('the disk is full')
        saved.push(...fired.map(({ id }) => id))
      },
    },
    log: (what) => logged.push(what),
    ring(fired) {
      if (!fails) expect(saved).toEqual(expect.arrayContaining(fired.map(({ id }) => id)))
      rang.push(...fired)
    },
    again: () => asked.push(clock.now()),
    ended: () => {
      over += 1
    },
  })
  return { clock, night, rang, saved, logged, asked, over: () => over, ids: () => rang.map(({ id }) => id) }
}

const seven = Date.parse('2026-11-14T17:00:00Z')

test('K22 what falls due rings once, at its moment, and is stored before anybody hears it', async () => {
  const plan = begun(stew('2026-11-14'), seven)
  const order = orderOf(plan, seven)
  const { clock, night, rang, ids } = nightAt(plan, seven)
  night.order(order)
  clock.advance(startOf(order, 'chop') - seven - 1)
  await turn()
  expect(ids()).toEqual([])
  clock.advance(1)
  await turn()
  expect(ids()).toEqual(['begin:chop:0'])
  expect(rang[0]).toMatchObject({ at: startOf(order, 'chop'), firedAt: startOf(order, 'chop'), kind: 'begin', cooks: ['kim'] })
  night.order({ ...order })
  clock.advance(MINUTE)
  await turn()
  expect(ids()).toEqual(['begin:chop:0'])
  expect(night.recent().map(({ id }) => id)).toEqual(['begin:chop:0'])
  clock.set(clock.now() + HOUR)
  expect(night.recent()).toEqual([])
})

test('K22 what cannot be stored rings all the same, and once', async () => {
  const plan = begun(stew('2026-11-14'), seven)
  const order = orderOf(plan, seven)
  const { clock, night, ids, logged } = nightAt(plan, seven, { fails: true })
  night.order(order)
  clock.advance(startOf(order, 'chop') - seven)
  await turn()
  clock.advance(MINUTE)
  await turn()
  expect(ids()).toEqual(['begin:chop:0'])
  expect(logged).toHaveLength(1)
})

test('K22 after a restart what rang does not ring again; what fell due meanwhile rings once when devices had time to come back, or never when it is old', async () => {
  const plan = begun(stew('2026-11-14'), seven)
  const order = orderOf(plan, seven)
  const chop = startOf(order, 'chop')
  const rung: Fired[] = [{ id: 'begin:chop:0', at: chop, firedAt: chop, kind: 'begin', cooks: ['kim'], step: 'chop', batch: 0 }]
  const knows = nightAt(plan, chop + 30_000, { rung })
  knows.night.order(order)
  knows.clock.advance(MINUTE)
  await turn()
  expect(knows.ids()).toEqual([])
  const missed = nightAt(plan, chop + 30_000)
  missed.night.order(order)
  missed.clock.advance(4_999)
  await turn()
  expect(missed.ids()).toEqual([])
  missed.clock.advance(1)
  await turn()
  expect(missed.ids()).toEqual(['begin:chop:0'])
  const settled = nightAt(plan, chop + 30_000)
  settled.night.order(order)
  settled.clock.advance(2_000)
  settled.night.tell(told(plan, { step: 'chop', started: instantOfMs(plan, chop), by: 'kim' }))
  settled.clock.advance(10_000)
  await turn()
  expect(settled.ids()).toEqual([])
  const late = nightAt(plan, chop + 11 * MINUTE)
  late.night.order(order)
  late.clock.advance(10_000)
  await turn()
  expect(late.ids()).not.toContain('begin:chop:0')
})

test('K24 an alert moves with the order until it has rung; what is told takes it away, and what a word adds waits for the order that knows of it', async () => {
  const plan = begun(stew('2026-11-14'), seven)
  const order = orderOf(plan, seven)
  const { clock, night, ids } = nightAt(plan, seven)
  night.order(order)
  const later = told(plan, { sitDown: '2026-11-14T20:00:00Z', by: 'kim' })
  const moved = shifted(order, 20 * MINUTE)
  night.tell(later)
  night.order(moved)
  clock.advance(startOf(moved, 'chop') - seven - 1)
  await turn()
  expect(ids()).toEqual([])
  const chop = startOf(moved, 'chop')
  const started = told(later, { step: 'chop', started: instantOfMs(plan, chop - MINUTE), by: 'kim' })
  night.tell(started)
  clock.advance(10 * MINUTE)
  await turn()
  expect(ids()).toEqual([])
  // What is to be taken out ten minutes later is not called for by the order of before.
  const chopped = { step: 'chop', started: instantOfMs(plan, chop), done: instantOfMs(plan, clock.now()), by: 'kim' }
  const fried = { step: 'fry', started: instantOfMs(plan, clock.now()), by: 'kim' }
  const frying = told(later, chopped, fried)
  night.tell(frying)
  night.order(orderOf(frying, clock.now(), moved))
  clock.advance(15 * MINUTE)
  await turn()
  const before = ids()
  expect(before).toContain('touch:fry:0:out')
  night.tell(told(later, chopped, { ...fried, extra: 'PT10M' }))
  clock.advance(1000)
  await turn()
  expect(ids()).toEqual(before)
})

test('K23 what passes its grace without a word has the rest planned again: at once for a new order, after another grace for the same one, and seldom when nobody says anything', async () => {
  const plan = begun(stew('2026-11-14'), seven)
  const order = orderOf(plan, seven)
  const { clock, night, asked } = nightAt(plan, seven)
  night.order(order)
  const chop = startOf(order, 'chop')
  night.tell(told(plan, { sitDown: '2026-11-14T19:30:00Z', by: 'kim' }))
  clock.advance(chop + 2 * MINUTE - 1 - seven)
  expect(asked).toEqual([])
  clock.advance(1)
  expect(asked).toEqual([chop + 2 * MINUTE])
  // No new order came of it: asked for again after another grace, and after five times every ten minutes.
  clock.advance(2 * MINUTE)
  expect(asked).toHaveLength(2)
  night.order({ ...order })
  expect(asked).toHaveLength(3)
  clock.advance(4 * MINUTE)
  expect(asked).toHaveLength(5)
  clock.advance(30 * MINUTE)
  expect(asked).toHaveLength(8)
  const silent = asked.length
  night.tell(told(plan, { step: 'chop', started: instantOfMs(plan, clock.now()), by: 'kim' }))
  clock.advance(2 * MINUTE)
  expect(asked.length).toBe(silent + 1)
})

test('K25 a clock that is set two hours on or back: nothing rings twice, what is due is noticed within half a minute, and all is planned again', async () => {
  const plan = begun(stew('2026-11-14'), seven)
  const order = orderOf(plan, seven)
  const chop = startOf(order, 'chop')
  const on = nightAt(plan, chop - 2 * HOUR)
  on.night.order(order)
  on.clock.advance(MINUTE)
  on.clock.set(chop + 1000)
  on.clock.advance(30_000)
  await turn()
  expect(on.ids()).toEqual(['begin:chop:0'])
  on.clock.set(chop - 2 * HOUR)
  on.clock.advance(30_000)
  await turn()
  expect(on.asked).toHaveLength(1)
  on.clock.advance(2 * HOUR)
  await turn()
  expect(on.ids().filter((id) => id === 'begin:chop:0')).toHaveLength(1)
})

test.each([
  ['2026-10-24', 'comes twice', '2026-10-25T00:30:00Z'],
  ['2026-03-28', 'is left out', '2026-03-29T01:30:00Z'],
])('K25 on the night of %s, whose half past one %s, every alert rings at its moment, once', async (date, _what, serves) => {
  const plain = stew(date, '23:59')
  const late: Evening = { ...plain, sitDown: { day: 1, time: '01:30' }, guestsFrom: { day: 1, time: '00:30' } }
  const from = Date.parse(`${date}T22:00:00Z`)
  const plan = begun(late, from)
  const order = orderOf(plan, from)
  const { clock, night, rang, ids } = nightAt(plan, from)
  night.order(order)
  clock.advance(6 * HOUR)
  await turn()
  expect(ids()).toEqual(expect.arrayContaining(['begin:chop:0', 'touch:fry:0:out', 'begin:plate:0', 'serve:m']))
  expect(new Set(ids()).size).toBe(ids().length)
  for (const { at, firedAt } of rang) expect(firedAt).toBe(at)
  expect(rang.find(({ id }) => id === 'serve:m')?.at).toBe(Date.parse(serves))
})

test('K26 an evening is live from its first word until it is closed or its second day after begins', async () => {
  const plan = stew('2026-11-14')
  const at = (instant: string) => Date.parse(instant)
  expect(isLive(plan, seven)).toBe(false)
  const early = told(plan, { step: 'chop', done: '2026-11-13T18:00:00Z', by: 'kim' })
  expect(isLive(early, at('2026-11-13T18:00:00Z'))).toBe(false)
  expect(isLive(early, at('2026-11-14T00:00:00Z'))).toBe(true)
  const now = begun(early, at('2026-11-13T20:00:00Z'))
  expect(isLive(now, at('2026-11-13T20:00:00Z'))).toBe(true)
  expect(isLive(now, at('2026-11-15T23:59:59Z'))).toBe(true)
  expect(isLive(now, at('2026-11-16T00:00:00Z'))).toBe(false)
  const closed = told(plan, { night: 'begun', begun: '2026-11-14T17:00:00Z', closed: '2026-11-14T23:00:00Z', by: 'kim' })
  expect(isLive(closed, at('2026-11-14T23:00:01Z'))).toBe(false)

  const { clock, night, over } = nightAt(begun(plan, seven), seven)
  clock.advance(MINUTE)
  expect(over()).toBe(0)
  night.tell(closed)
  expect(over()).toBe(1)
  clock.advance(HOUR)
  expect(over()).toBe(1)
  const long = nightAt(begun(plan, seven), at('2026-11-15T23:59:00Z'))
  long.clock.advance(MINUTE)
  expect(long.over()).toBe(1)
})
