import { expect, test } from 'vitest'
import type { Evening } from '#lib/domain/evening.ts'
import type { NightFact } from '#lib/domain/people.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { instantOfMs, msOfInstant } from '#lib/domain/time.ts'
import { actualsOf } from '#lib/night/afterwards.ts'
import { type AlertKind, alertsOf } from '#lib/night/alerts.ts'
import { boardOf } from '#lib/night/board-of.ts'
import { catchUpOf } from '#lib/night/catch-up.ts'
import { planEvening } from '#lib/order/engine.ts'
import { demoEvening } from '#prisma/demo/demo-evening.ts'
import { readEvening } from '#tests/support/read-evening.ts'

const MINUTE = 60_000

/** The evening as it is when everything up to now went, and was told, exactly as its order says. */
const asPlanned = (evening: Evening, order: RunningOrder, now: number): Evening => {
  const by = evening.cooks[0]?.id ?? ''
  const first = Math.min(...order.cues.map(({ start }) => msOfInstant(start)))
  const steps = evening.steps.flatMap(({ id: step }): NightFact[] => {
    const own = order.cues.filter((cue) => cue.step === step)
    const started = Math.min(...own.map(({ start }) => msOfInstant(start)))
    const done = Math.max(...own.map(({ end }) => msOfInstant(end)))
    if (own.length === 0 || started > now) return []
    return [{ step, started: instantOfMs(evening, started), ...(done <= now ? { done: instantOfMs(evening, done) } : {}), by }]
  })
  const courses = order.courses.flatMap(({ course, toTable, platesOff }): NightFact[] =>
    msOfInstant(toTable) > now ? [] : [{ course, toTable, ...(msOfInstant(platesOff) <= now ? { platesOff } : {}), by }],
  )
  const begun: NightFact = { night: 'begun', begun: instantOfMs(evening, first), by }
  return { ...evening, night: first > now ? [] : [begun, ...steps, ...courses] }
}

/** What is told the moment that it is called for; the rest calls ahead, or for what nobody tells. */
const TOLD: readonly AlertKind[] = ['begin', 'look', 'serve', 'overdue']

const isOnce = (order: RunningOrder, step: string): boolean => order.cues.filter((cue) => cue.step === step).length === 1

/** What stands in the order for a cook's hands in the next minute, and for their eyes. */
const inOrder = (evening: Evening, order: RunningOrder, cook: string, now: number) => {
  const cues = order.cues.map((cue) => ({
    ...cue,
    care: evening.steps.find(({ id }) => id === cue.step)?.ways[cue.way]?.care,
    from: msOfInstant(cue.start),
    to: msOfInstant(cue.end),
  }))
  // Batches after the first begin with an order made anew, which this night has none of.
  const mine = cues.filter(({ step, cooks }) => cooks.includes(cook) && isOnce(order, step))
  const isNow = ({ from, to }: { from: number; to: number }) => from <= now && now < to
  return {
    hands: mine.filter((cue) => cue.care === 'hands-on' && isNow(cue)).map(({ step }) => step),
    eyes: mine.filter((cue) => cue.care === 'eye' && isNow(cue)).map(({ step }) => step),
  }
}

test.each([
  ['the lamb', () => readEvening('a-lamb')],
  ['the pork', () => readEvening('c-pork')],
  ['the demo', () => demoEvening('2026-11-20')],
])('BO4 BO7 BO10 a night of %s that goes as planned shows its order, minute by minute, and nothing late', (_name, of) => {
  const evening = of()
  const order = planEvening(evening, { budget: { steps: 20, seed: 1 }, quick: true })
  const last = Math.max(...order.courses.map(({ platesOff }) => msOfInstant(platesOff)))
  let seen = 0
  for (let now = last - 4 * 60 * MINUTE + 20_000; now < last + MINUTE; now += 5 * MINUTE) {
    const night = asPlanned(evening, order, now)
    const board = boardOf(night, order, now, { cook: null })
    const when = new Date(now).toISOString()
    for (const { cook, hands, waiting, watching, free } of board.now) {
      const { hands: expected, eyes } = inOrder(evening, order, cook, now)
      const shown = [hands, ...waiting].flatMap((task) =>
        task?.isBegun && task.care === 'hands-on' && task.batches === 1 ? [task.step] : [],
      )
      expect(shown.sort(), `${cook} at ${when}`).toEqual([...expected].sort())
      expect(watching.flatMap(({ step, batches }) => (batches === 1 ? [step] : [])).sort(), `${cook} at ${when}`).toEqual(
        [...eyes].sort(),
      )
      for (const task of [hands, ...waiting, ...watching]) expect(task?.overdue ?? null, `${task?.step} at ${when}`).toBeNull()
      if (free) expect(expected, `${cook} at ${when}`).toEqual([])
      seen += expected.length
    }
    expect(
      catchUpOf(night, order, now).filter(({ due }) => due < now),
      when,
    ).toEqual([])
    expect(board.silent).toBeNull()
    const passed = alertsOf(night, order).filter(
      ({ at, kind, step }) => at <= now && TOLD.includes(kind) && (step === undefined || isOnce(order, step)),
    )
    expect(passed, when).toEqual([])
  }
  expect(seen).toBeGreaterThan(5)
  const over = asPlanned(evening, order, last + MINUTE)
  expect(boardOf(over, order, last + MINUTE, { cook: null }).phase).toBe('after')
  const actuals = actualsOf(over, order)
  expect(actuals.length).toBeGreaterThan(10)
  expect(actuals.filter(({ suggests }) => suggests !== null)).toEqual([])
})
