import type { RunningOrder } from '#lib/domain/running-order.ts'
import { DEFAULT_BUDGET, ENGINE } from '#lib/order/engine.ts'
import type { Slice } from './runner.ts'

type OfKind<T> = Readonly<Record<Slice['kind'], T>>

/** Insertions the engine may try: for a better order as many as anywhere, so that every way of planning gives the same one. */
export const STEPS: OfKind<number> = { quick: Math.ceil(DEFAULT_BUDGET.steps / 20), better: DEFAULT_BUDGET.steps }
export const SEED = DEFAULT_BUDGET.seed

/** A slice ends with the best it has after so long: a limit for evenings that take longer than most. */
export const BUDGET_MS: OfKind<number> = { quick: 100, better: 4_000 }

/** A slice that is not over by then has lost its way. */
export const LIMIT_MS: OfKind<number> = { quick: 5_000, better: 20_000 }

/** Whether this engine has spent its whole budget on this order, so that planning again would bring nothing. */
export const isWhole = ({ of }: RunningOrder): boolean => of.engine === ENGINE && of.budget >= STEPS.better
