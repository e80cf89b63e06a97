import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { DEFAULT_BUDGET, planEvening } from '#lib/order/engine.ts'
import { startOf } from '#lib/order/start.ts'
import type { Known } from './order-state.ts'

/** What a plan is made from: the last order that was shown, when it is asked for, and what has come of it so far. */
export interface Before {
  readonly last: RunningOrder | null
  readonly nowMs: number
  readonly order: RunningOrder | null
}

type Stage = 'quick' | 'better' | 'trial'

/** What the worker is asked, and what it answers: null where the plan could not be worked out. */
export interface PlanAsked extends Before {
  readonly kind: Stage
  readonly job: number
  readonly evening: Evening
}
export interface PlanTold {
  readonly kind: 'plan'
  readonly job: number
  readonly known: Known | null
}

/** A phone is slower than the server, and the cook is waiting. */
const BUDGET_MS = { quick: 200, better: 1_500, trial: 3_000 } as const
/** A trial is compared with an order that was searched for as long as that takes: it takes as many steps. */
const STEPS = { quick: Math.ceil(DEFAULT_BUDGET.steps / 20), better: DEFAULT_BUDGET.steps, trial: DEFAULT_BUDGET.steps } as const

const planned = (evening: Evening, kind: Stage, { last, nowMs, order: known }: Before): Known | null => {
  const until = performance.now() + BUDGET_MS[kind]
  try {
    const order = planEvening(evening, {
      ...startOf(evening, last, nowMs),
      ...(known ? { hint: known } : {}),
      budget: { ...DEFAULT_BUDGET, steps: STEPS[kind], stop: () => performance.now() > until },
      quick: kind === 'quick',
    })
    return { hash: order.of.hash, order }
  } catch (why) {
    console.error('a plan could not be worked out', why)
    return null
  }
}

/** A first answer, and at once a better one that begins from it. */
const tried = (evening: Evening, before: Before): Known | null => {
  const first = planned(evening, 'quick', before)
  return first && (planned(evening, 'trial', { ...before, order: first.order }) ?? first)
}

self.onmessage = ({ data }: MessageEvent<PlanAsked>) => {
  const { job, evening, kind } = data
  const known = kind === 'trial' ? tried(evening, data) : planned(evening, kind, data)
  self.postMessage({ job, kind: 'plan', known } satisfies PlanTold)
}
