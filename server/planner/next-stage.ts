import type { RunningOrder } from '#lib/domain/running-order.ts'
import { isWhole } from './budgets.ts'
import type { Stage } from './stage.ts'

/** What is still to be done for an order, after the stages that are over. One that was stored is as good as it says. */
export const nextStage = (order: RunningOrder, over: ReadonlySet<Stage>, canProve: boolean): Stage | null => {
  if (!over.has('better') && (over.has('quick') || !isWhole(order))) return 'better'
  const stuck = order.clashes.some(({ ways }) => ways.length === 0)
  if (stuck && !over.has('ways')) return 'ways'
  return canProve && order.proof.kind === 'none' && !over.has('proof') ? 'proof' : null
}
