import { expect, test } from 'vitest'
import type { Evening } from '#lib/domain/evening.ts'
import type { NightFact } from '#lib/domain/people.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { instantOfMs, tickOf } from '#lib/domain/time.ts'
import { DEFAULT_BUDGET, planEvening } from '#lib/order/engine.ts'
import { problemHash } from '#lib/order/hash.ts'
import { startOf } from '#lib/order/start.ts'
import { type ProblemOptions, toProblem } from '#lib/order/to-problem.ts'
import { at, claim, cook, course, dish, dishWith, evening, follows, step } from '#tests/support/evening-builders.ts'

/** Kim and Lou cook; Lou has the sauce, which is stirred for half an hour, and the pie with its two steps. */
const dinner = (night: NightFact[], fields: Partial<Evening> = {}) =>
  evening(
    course(
      'main',
      dish('pie', step('roll', 20), step('fill', 10, follows('roll'))),
      dish('sauce', step('stir', 30)),
      dish('soup', step('heat', 10), dishWith({ state: 'spare' })),
    ),
    {
      night,
      cooks: [cook('kim'), cook('lou')],
      claims: [claim('pie', 'lou'), { target: 'stir', cook: 'lou', also: ['kim'] }, claim('fill', 'kim')],
      ...fields,
    },
  )
const none = dinner([])
const tick = (time: string) => tickOf(none, at(time), 'up')
const gone: NightFact = { cook: 'lou', gone: '2026-11-14T18:00:10Z', by: 'kim' }
const activity = (of: Evening, id: string, options: ProblemOptions = {}) =>
  toProblem(of, options).problem.activities.find((each) => each.id === id)
const hours = (of: Evening) => toProblem(of).problem.cooks.find(({ id }) => id === 'lou')?.presence

test('K16 a cook who is gone has no hours from then on, and holds no claim; back, they have what is left, and their claims', () => {
  const away = dinner([gone])
  expect(hours(away)).toEqual([{ place: 'home', from: tick('12:00'), to: tick('18:00') }])
  expect(activity(none, 'roll')?.claimed).toEqual(['lou'])
  expect(activity(away, 'roll')?.claimed).toEqual([])
  expect(activity(away, 'fill')?.claimed).toEqual(['kim'])
  expect(activity(none, 'stir')?.claimed).toEqual(['lou', 'kim'])
  expect(activity(away, 'stir')?.claimed).toEqual(['kim'])
  const back = dinner([{ ...gone, back: '2026-11-14T18:40:10Z' }])
  expect(hours(back)).toEqual([
    { place: 'home', from: tick('12:00'), to: tick('18:00') },
    { place: 'home', from: tick('18:40') + 1, to: tick('23:30') },
  ])
  expect(activity(back, 'roll')?.claimed).toEqual(['lou'])
})

test('K16 nobody who is gone is planned to do anything, and what they were at is told as a clash until another takes it', () => {
  const now = '2026-11-14T18:05:00Z'
  const budget = { ...DEFAULT_BUDGET, steps: 200 }
  const begun: NightFact = { step: 'roll', started: '2026-11-14T17:55:00Z', by: 'lou' }
  const before = planEvening(dinner([begun]), { now: '2026-11-14T17:56:00Z', budget, quick: true })
  expect(before.cues.find(({ step: id }) => id === 'roll')?.cooks).toEqual(['lou'])
  const away = dinner([begun, gone])
  const order = planEvening(away, { now, previous: before, budget, quick: true })
  const others = order.cues.filter(({ state }) => state !== 'running')
  expect(others.map(({ step: id }) => id).toSorted()).toEqual(['fill', 'stir'])
  expect(others.flatMap(({ cooks, touches }) => [...cooks, ...touches.map((touch) => touch.cook)])).toEqual(['kim', 'kim'])
  expect(order.clashes).toMatchObject([{ kind: 'no-cook', steps: ['roll'] }])
  const taken = dinner([begun, gone], { claims: [claim('roll', 'kim')] })
  const next = planEvening(taken, { now, previous: order, budget, quick: true })
  expect(next.cues.find(({ step: id }) => id === 'roll')?.cooks).toEqual(['kim'])
  expect(next.clashes.filter(({ steps }) => steps.includes('roll'))).toEqual([])
})

test('K17 the order depends on who is gone, what is out and when they sit down; not on readings, alarms, or that the night has begun', () => {
  const hash = (...night: NightFact[]) => problemHash(dinner(night))
  const plain = hash()
  expect(hash(gone)).not.toBe(plain)
  expect(hash({ sitDown: '2026-11-14T19:55:00Z', by: 'kim' })).not.toBe(plain)
  const states = { pie: 'dropped', soup: 'on', sauce: 'on' } as const
  const out = none.dishes.map((one) => ({ ...one, state: states[one.id as keyof typeof states] }))
  expect(problemHash({ ...none, dishes: out })).not.toBe(plain)
  expect(hash({ night: 'begun', begun: '2026-11-14T17:00:00Z', by: 'kim' })).toBe(plain)
  expect(hash({ alarm: 'a1', dish: 'pie', need: 'nuts', at: '2026-11-14T18:00:00Z', by: 'kim' })).toBe(plain)
  expect(hash({ dish: 'soup', out: '2026-11-14T18:00:00Z', why: 'failed', by: 'kim' })).toBe(plain)
  const started: NightFact = { step: 'stir', started: '2026-11-14T18:00:00Z', by: 'kim' }
  const readings = [
    { at: '2026-11-14T18:05:00Z', coreC: 40 },
    { at: '2026-11-14T18:10:00Z', coreC: 44 },
  ]
  expect(hash({ ...started, readings })).toBe(hash(started))
  expect(hash({ step: 'stir', readings, by: 'kim' })).toBe(plain)
})

test('K17 an order of a night with a stand-in has its steps, and none of the dish that is out', () => {
  const states = { pie: 'dropped', soup: 'on', sauce: 'on' } as const
  const of = { ...none, dishes: none.dishes.map((one) => ({ ...one, state: states[one.id as keyof typeof states] })) }
  const order = planEvening(of, { now: '2026-11-14T18:05:00Z', budget: { ...DEFAULT_BUDGET, steps: 100 }, quick: true })
  expect(order.cues.map(({ step: id }) => id).toSorted()).toEqual(['heat', 'stir'])
})

test('K19 planned as a device plans, what was told keeps its start and what begins within three minutes its start, cooks and way', () => {
  const budget = { ...DEFAULT_BUDGET, steps: 200 }
  const plans = (night: NightFact[]) =>
    evening(course('main', dish('pie', step('roll', 20)), dish('sauce', step('stir', 40)), dish('salad', step('wash', 5))), {
      night,
      cooks: [cook('kim'), cook('lou')],
      claims: [claim('stir', 'kim'), claim('roll', 'lou'), claim('wash', 'kim')],
    })
  const plan = (of: Evening, last: RunningOrder | null, ms: number) =>
    planEvening(of, { ...startOf(of, last, ms), budget, quick: true })
  const cueOf = (order: RunningOrder, id: string) => order.cues.find((cue) => cue.step === id)
  const startsAt = (order: RunningOrder, id: string) => Date.parse(cueOf(order, id)?.start ?? '')
  const begun: NightFact = { night: 'begun', begun: '2026-11-14T17:00:00Z', by: 'kim' }
  const first = plan(plans([begun]), null, Date.parse('2026-11-14T18:00:00Z'))
  expect(startsAt(first, 'roll')).toBeGreaterThan(startsAt(first, 'stir') + 180_000)
  const started = instantOfMs(none, startsAt(first, 'stir') + 20_000)
  const late = plans([begun, { step: 'stir', started, extra: 'PT10M', by: 'kim' }])
  for (const seconds of [170, 90, 10]) {
    const again = plan(late, first, startsAt(first, 'roll') - seconds * 1000)
    expect(cueOf(again, 'stir')).toMatchObject({ state: 'running', start: started, cooks: ['kim'] })
    const { start, cooks, way } = cueOf(first, 'roll') ?? {}
    expect(cueOf(again, 'roll')).toMatchObject({ state: 'frozen', start, cooks, way })
    expect(startsAt(again, 'wash')).toBeGreaterThan(startsAt(first, 'wash'))
  }
})
