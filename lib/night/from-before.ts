import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import { GRACE, toldOf } from './told.ts'

/** Whether an order is from before the evening began: what nobody told then lies in its past, and is yet to be planned from now on. */
export const isFromBefore = (evening: Pick<Evening, 'night'>, order: RunningOrder): boolean => {
  const { begun, steps } = toldOf(evening)
  return (
    begun !== null &&
    order.cues.some(({ step, state, start }) => state === 'planned' && !steps.has(step) && msOfInstant(start) < begun - GRACE)
  )
}
