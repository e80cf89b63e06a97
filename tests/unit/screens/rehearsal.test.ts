import { afterEach, beforeAll, expect, test } from 'vitest'
import * as Y from 'yjs'
import type { LocalOrder } from '#app/_sync/local-order.ts'
import type { Plan } from '#app/_sync/plan.ts'
import { openRehearsal, type Rehearsal } from '#app/_tonight/rehearse/open-rehearsal.ts'
import { openPlayClock } from '#app/_tonight/rehearse/play-clock.ts'
import { dueBy, nextMoment, startOfRehearsal } from '#app/_tonight/rehearse/played.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { epochMsOf, msOfInstant } from '#lib/domain/time.ts'
import { planEvening } from '#lib/order/engine.ts'
import { startOf } from '#lib/order/start.ts'
import { setEvening } from '#lib/plan/commands/set.ts'
import { readPlan } from '#lib/plan/read.ts'
import { writeEvening } from '#lib/plan/write-evening.ts'
import { handClock } from '#tests/support/hand-clock.ts'
import { loadEvening } from '#tests/support/load-evening.ts'

const MINUTE = 60_000

let lamb: Evening
let order: RunningOrder
beforeAll(() => {
  lamb = loadEvening('a-lamb')
  order = planEvening(lamb, { budget: { steps: 400, seed: 1 }, quick: true })
})

/** Plans at once, on this thread, with few steps. */
const localOrder = (now: () => number): LocalOrder => {
  const plan = (evening: Evening, last: RunningOrder | null) => {
    const made = planEvening(evening, { ...startOf(evening, last, now()), budget: { steps: 1, seed: 1 }, quick: true })
    return { hash: made.of.hash, order: made }
  }
  return {
    hash: (_evening, answer) => answer(null),
    plan: (evening, last, answer) => answer(plan(evening, last)),
    tryOut: (evening, last, answer) => answer(plan(evening, last)),
    close: () => undefined,
  }
}

let open: Rehearsal | null = null
afterEach(() => {
  open?.close()
  open = null
})

const rehearse = () => {
  const doc = new Y.Doc()
  writeEvening(doc, lamb, { epoch: 'one', minClient: 1 })
  const sent: unknown[] = []
  const from: Plan = {
    doc,
    evening: readPlan(doc).evening,
    reports: [],
    me: { epoch: 'one', layout: 1, minClient: 1, member: 'm1', role: 'host', cook: 'kim', serverMs: 0 },
    link: { kind: 'saved' },
    order: { kind: 'current', order },
    asking: new Map(),
    told: [],
    canUndo: false,
    canRedo: false,
    send: (command) => {
      sent.push(command)
      return Promise.reject(new Error('a rehearsal sends nothing'))
    },
    hear: () => undefined,
    edit: () => {
      throw new Error('a rehearsal edits its own copy')
    },
    tryOut: () => Promise.resolve(null),
    undo: () => undefined,
    redo: () => undefined,
    onGuests: () => () => undefined,
    onAlerts: () => () => undefined,
    tell: () => {
      throw new Error('a rehearsal tells nobody else')
    },
    waitingTells: 0,
    now: () => 0,
  }
  const real = handClock()
  const rehearsal = openRehearsal({ from, order, local: localOrder, timers: real })
  open = rehearsal
  const untouched = Y.encodeStateAsUpdate(doc)
  const isUntouched = () => Buffer.from(Y.encodeStateAsUpdate(doc)).equals(Buffer.from(untouched)) && sent.length === 0
  const plan = () => rehearsal.played().plan
  const told = (step: string) => plan().evening.night.find((fact) => 'step' in fact && fact.step === step)
  return { rehearsal, real, plan, told, isUntouched }
}

test('U68 the clock of a rehearsal runs at its speed, stands still when it is paused, and jumps', () => {
  let real = 1_000
  const clock = openPlayClock(() => real, 50_000, 60)
  real += 500
  expect(clock.now()).toBe(80_000)
  clock.setSpeed(300)
  real += 100
  expect(clock.now()).toBe(110_000)
  clock.pause(true)
  real += 9_000
  expect(clock.now()).toBe(110_000)
  clock.jump(200_000)
  clock.pause(false)
  real += 10
  expect(clock.now()).toBe(203_000)
})

test('U68 a rehearsal begins shortly before the first thing of the last hours, with what is done ahead told as done', () => {
  const start = startOfRehearsal(lamb, order)
  const sitDown = epochMsOf(lamb, lamb.sitDown)
  const within = order.cues.map((cue) => msOfInstant(cue.start)).filter((ms) => ms >= sitDown - 5 * 60 * MINUTE)
  expect(start).toBe(Math.min(...within) - 2 * MINUTE)
  const { plan, rehearsal } = rehearse()
  expect(plan().now()).toBe(start)
  expect(plan().evening.night.some((fact) => 'night' in fact)).toBe(true)
  const before = order.cues.filter((cue) => msOfInstant(cue.end) <= start).map(({ step }) => step)
  expect(before.length).toBeGreaterThan(0)
  const done = new Set(plan().evening.night.flatMap((fact) => ('step' in fact && fact.done ? [fact.step] : [])))
  expect(before.filter((step) => !done.has(step))).toEqual([])
  expect(rehearsal.played().isPaused).toBe(false)
})

test('U68 everybody does their part on time, to the last plate, and nothing of it leaves the copy', () => {
  const { real, plan, rehearsal, isUntouched } = rehearse()
  rehearsal.setSpeed(300)
  const last = Math.max(...order.courses.map(({ platesOff }) => msOfInstant(platesOff)))
  real.advance((last - plan().now()) / 300 + 1_000)
  const facts = plan().evening.night
  const offs = facts.flatMap((fact) => ('course' in fact && fact.platesOff ? [msOfInstant(fact.platesOff)] : []))
  expect(offs.toSorted((a, b) => a - b)).toEqual(
    order.courses.map(({ platesOff }) => msOfInstant(platesOff)).toSorted((a, b) => a - b),
  )
  expect(dueBy(plan().evening, order, plan().now())).toEqual([])
  expect(isUntouched()).toBe(true)
})

test('U68 what a person tells in it is told in it alone, planned from its own moment, and can be taken back', async () => {
  const { real, plan, rehearsal, told, isUntouched } = rehearse()
  const gravy = order.cues.find(({ step }) => step === 'B12')
  if (!gravy) throw new Error('there is no gravy')
  rehearsal.pause(true)
  while (plan().now() < msOfInstant(gravy.start)) rehearsal.jump()
  const say = { kind: 'longer', step: 'B12', minutes: 10 } as const
  const { op, answered } = plan().tell(say)
  expect((await answered).kind).toBe('done')
  expect(told('B12')).toMatchObject({ extra: 'PT10M' })
  const state = plan().order
  const cue = state.kind === 'current' ? state.order.cues.find(({ step }) => step === 'B12') : undefined
  expect(msOfInstant(cue?.end ?? '')).toBeGreaterThanOrEqual(msOfInstant(gravy.end) + 10 * MINUTE)
  // Half a minute of life is half an hour of the rehearsal: it can be taken back all the same.
  rehearsal.pause(false)
  real.advance(500)
  expect((await plan().tell({ kind: 'take-back', of: op, said: say }).answered).kind).toBe('done')
  expect(told('B12')).not.toHaveProperty('extra')
  expect(isUntouched()).toBe(true)
})

test('U68 when nobody tells anything the rest is planned again once it is past its grace, and an edit changes the copy alone', () => {
  const { real, plan, rehearsal, isUntouched } = rehearse()
  rehearsal.setByItself(false)
  const first = plan().order
  const next = nextMoment(order, plan().now())
  if (next === null) throw new Error('nothing comes')
  real.advance((next + 3 * MINUTE - plan().now()) / 60 + 300)
  expect(plan().order).not.toBe(first)
  expect(plan().evening.night.filter((fact) => 'step' in fact && fact.started && msOfInstant(fact.started) >= next)).toEqual([])
  plan().edit((doc) => setEvening(doc, { covers: 9 }))
  expect(plan().evening.covers).toBe(9)
  plan().undo()
  expect(plan().evening.covers).toBe(lamb.covers)
  expect(isUntouched()).toBe(true)
})
