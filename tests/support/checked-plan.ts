import { expect } from 'vitest'
import type { Evening } from '#lib/domain/evening.ts'
import type { Cue, RunningOrder } from '#lib/domain/running-order.ts'
import { planEvening } from '#lib/order/engine.ts'
import type { ProblemOptions } from '#lib/order/to-problem.ts'
import { brokenKit, wrongClashes } from './check-kit.ts'
import { troubles } from './check-order.ts'
import { brokenRules } from './check-rules.ts'

/** All that the checks find, none of which shares code with what makes orders. */
export const faults = (of: Evening, order: RunningOrder, now?: string): string[] => [
  ...troubles(of, order),
  ...brokenRules(of, order, now),
  ...brokenKit(of, order),
  ...wrongClashes(of, order),
]

/** A small evening's order, held against the evening. */
export const planned = (of: Evening, options: ProblemOptions = {}): RunningOrder => {
  const order = planEvening(of, { budget: { steps: 600, seed: 1 }, ...options })
  expect(faults(of, order, options.now)).toEqual([])
  return order
}

/** "19:00-19:30" by the wall clock; with seconds where there are some. */
export const when = (order: RunningOrder, step: string, batch = 0): string => {
  const { start, end } = cueOf(order, step, batch)
  return `${clock(start)}-${clock(end)}`
}

export const cueOf = (order: RunningOrder, step: string, batch = 0): Cue => {
  const found = order.cues.find((cue) => cue.step === step && cue.batch === batch)
  if (!found) throw new Error(`${step} is not planned: ${JSON.stringify(order.clashes)}`)
  return found
}

const clock = (instant: string): string => instant.slice(11, 19).replace(/:00$/, '')
