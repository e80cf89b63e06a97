import type { RunningOrder } from '#lib/domain/running-order.ts'
import { isWhole } from './budgets.ts'

/**
 * One piece of planning. quick: the first answer, in about 100 ms. better: the whole budget. ways: ways out of the clashes
 * that are left. proof: whether anything is better, where there is a prover. All but the first when nobody waits for one.
 */
export type Stage = 'quick' | 'better' | 'ways' | 'proof'

/** In the order in which they are done, for one evening and among evenings. */
export const STAGES: readonly Stage[] = ['quick', 'better', 'ways', 'proof']

/** What is still to be done for an order, after the stages that are over. One that was stored is as good as it says. */
export const nextStage = (order: RunningOrder, over: ReadonlySet<Stage>, canProve: boolean): Stage | null => {
  if (!over.has('better') && (over.has('quick') || !isWhole(order))) return 'better'
  const stuck = order.clashes.some(({ ways }) => ways.length === 0)
  if (stuck && !over.has('ways')) return 'ways'
  return canProve && order.proof.kind === 'none' && !over.has('proof') ? 'proof' : null
}
