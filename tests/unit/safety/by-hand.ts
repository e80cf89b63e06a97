import type { Evening } from '#lib/domain/evening.ts'
import type { Ingredient } from '#lib/domain/ingredient.ts'
import { RunningOrder } from '#lib/domain/running-order.ts'
import { epochMsOf, instantOfMs } from '#lib/domain/time.ts'
import { at } from '#tests/support/evening-builders.ts'

/** "19:30" or "-1 17:00" as an instant of the evening. */
export const instant = (evening: Evening, text: string): string => instantOfMs(evening, epochMsOf(evening, at(text)))

/** A running order written by hand: each step from when to when, each course's moment. Parsed, so that it is one. */
export const orderOf = (
  evening: Evening,
  steps: Readonly<Record<string, readonly [from: string, to: string]>>,
  courses: Readonly<Record<string, string>>,
  keeping: RunningOrder['keeping'] = [],
): RunningOrder =>
  RunningOrder.parse({
    format: 'tableward-order/1',
    evening: evening.id,
    of: { hash: '', engine: 'by-hand', seed: 1, budget: 0 },
    origin: instant(evening, '-1 00:00'),
    zone: evening.zone,
    cues: Object.entries(steps).map(([step, [from, to]]) => ({
      step,
      batch: 0,
      way: 0,
      start: instant(evening, from),
      end: instant(evening, to),
      cooks: ['kim'],
      kit: [],
      kitchen: 'home',
      touches: [],
      state: 'planned',
      slack: 'PT0S',
      because: [],
    })),
    keeping,
    courses: Object.entries(courses).map(([course, time]) => ({
      course,
      toTable: instant(evening, time),
      platesOff: instantOfMs(evening, Date.parse(instant(evening, time)) + 25 * 60_000),
      wait: 'PT0S',
      onTime: null,
      decidedBy: null,
      waitFreeUntil: null,
    })),
    ovens: [],
    cooks: [],
    allHostsAway: 'PT0S',
    goals: [],
    total: 0,
    clashes: [],
    proof: { kind: 'none' },
  })

let next = 0
export const food = (dish: string, step: string | undefined, name: string, contains: string[] = []): Ingredient => {
  next += 1
  return {
    id: `food-${next}`,
    dish,
    order: 'a0',
    ...(step === undefined ? {} : { step }),
    food: name,
    amount: null,
    scales: 'yes',
    allergens: [],
    checked: 'known',
    contains,
  }
}
