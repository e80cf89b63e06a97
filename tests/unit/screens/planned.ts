import { type Names, namesOf } from '#app/_words/names.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { planEvening } from '#lib/order/engine.ts'

export interface PlannedEvening {
  readonly evening: Evening
  readonly order: RunningOrder
  readonly names: Names
}

/** An evening with a running order that the real engine found in few steps: enough to draw it. */
export const planned = (evening: Evening, steps = 400): PlannedEvening => ({
  evening,
  order: planEvening(evening, { budget: { steps, seed: 1 } }),
  names: namesOf(evening),
})
