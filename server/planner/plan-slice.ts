import type { RunningOrder } from '#lib/domain/running-order.ts'
import { planEvening } from '#lib/order/engine.ts'
import { withWaysOut } from '#lib/order/ways-out.ts'
import type { Budget } from '#lib/scheduling/schedule.ts'
import { AGAIN_STEPS, SEED, STEPS } from './budgets.ts'
import type { Slice } from './runner.ts'

/** Works out one stage; `stop` is asked now and then. */
export const planSlice = ({ evening, kind, start, order }: Slice, stop: () => boolean): RunningOrder => {
  if (kind === 'proof') throw new Error('a proof is not worked out by the engine')
  const isAgain = kind === 'quick' && (start.hint ?? start.previous) !== undefined
  const budget: Budget = { steps: isAgain ? AGAIN_STEPS : STEPS[kind], seed: SEED, stop }
  const { hint: _, ...told } = start
  if (kind === 'quick') return planEvening(evening, { ...start, budget, quick: true })
  if (kind === 'better' || !order) return planEvening(evening, { ...start, budget, ...(order ? { hint: order } : {}) })
  return withWaysOut(evening, order, { ...told, budget })
}
