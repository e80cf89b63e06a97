import type { RunningOrder } from '#lib/domain/running-order.ts'
import { DEFAULT_BUDGET, ENGINE } from '#lib/order/engine.ts'
import { WAYS_STEPS } from '#lib/order/ways-out.ts'
import type { Stage } from './stage.ts'

type OfStage<T> = Readonly<Record<Exclude<Stage, 'proof'>, T>>

/** Insertions the engine may try: for a better order as many as anywhere, so that every way of planning gives the same one. */
export const STEPS: OfStage<number> = {
  quick: Math.ceil(DEFAULT_BUDGET.steps / 20),
  better: DEFAULT_BUDGET.steps,
  ways: WAYS_STEPS,
}
export const SEED = DEFAULT_BUDGET.seed

/** A first answer that has an order to go on from: what fits stays, and the search is for what does not. */
export const AGAIN_STEPS = Math.ceil(STEPS.quick / 2)

/** A slice ends with the best it has after so long: a limit for evenings that take longer than most. */
export const BUDGET_MS: OfStage<number> = { quick: 100, better: 4_000, ways: 20_000 }

/** A slice that is not over by then has lost its way. */
export const LIMIT_MS: Readonly<Record<Stage, number>> = { quick: 10_000, better: 20_000, ways: 40_000, proof: 120_000 }

/** Whether this engine has spent its whole budget on this order, so that planning again would bring nothing. */
export const isWhole = ({ of }: RunningOrder): boolean => of.engine === ENGINE && of.budget >= STEPS.better
