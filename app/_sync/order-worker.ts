import type { Evening } from '#lib/domain/evening.ts'
import { DEFAULT_BUDGET, planEvening } from '#lib/order/engine.ts'
import { problemHash } from '#lib/order/hash.ts'
import type { Known } from './order-state.ts'

/** What the worker is asked, and what it answers: null where the plan could not be worked out. */
export interface Asked {
  readonly job: number
  readonly evening: Evening
  readonly kind: 'hash' | 'plan'
}
export type Told =
  | { readonly job: number; readonly kind: 'hash'; readonly hash: string | null }
  | { readonly job: number; readonly kind: 'plan'; readonly known: Known | null }

/** A phone is slower than the server, and the cook is waiting. */
const BUDGET_MS = 1_500

const hashed = (evening: Evening): string | null => {
  try {
    return problemHash(evening)
  } catch (why) {
    console.error('a plan does not make a problem', why)
    return null
  }
}

const planned = (evening: Evening): Known | null => {
  const until = performance.now() + BUDGET_MS
  try {
    const order = planEvening(evening, { budget: { ...DEFAULT_BUDGET, stop: () => performance.now() > until } })
    return { hash: order.of.hash, order }
  } catch (why) {
    console.error('a plan could not be worked out', why)
    return null
  }
}

self.onmessage = ({ data: { job, evening, kind } }: MessageEvent<Asked>) => {
  const told: Told = kind === 'hash' ? { job, kind, hash: hashed(evening) } : { job, kind, known: planned(evening) }
  self.postMessage(told)
}
