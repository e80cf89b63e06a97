import type { RunningOrder } from '#lib/domain/running-order.ts'
import type { Slice } from './runner.ts'

type OfKind<T> = Readonly<Record<Slice['kind'], T>>

/** Insertions the engine may try. The limits in time are for evenings that take longer than most. */
export const STEPS: OfKind<number> = { quick: 2_000, better: 40_000 }

/** A slice ends with the best it has after so long. */
export const BUDGET_MS: OfKind<number> = { quick: 120, better: 2_500 }

/** A slice that is not over by then has lost its way. */
export const LIMIT_MS: OfKind<number> = { quick: 5_000, better: 15_000 }

/** Always the same one: the same plan gives the same running order. */
export const SEED = 1

/** Whether the whole budget has been spent on this order, so that planning again would bring nothing. */
export const isWhole = (order: RunningOrder): boolean => order.of.budget >= STEPS.better
