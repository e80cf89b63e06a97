import type { DeliveryModel } from './model.ts'
import { carriedFor, readyOf } from './price.ts'
import { putKeep, type State, take } from './state.ts'

/** Post: no dish is kept or carried past a safety limit, or waits where there is no room: better not served at all. */
export const leaveOutUnsafe = (state: State): void => {
  for (const delivery of state.model.deliveries) {
    if (delivery.serving.served || delivery.allFacts || !isUnsafe(state, delivery)) continue
    putKeep(state, delivery, undefined)
    for (const act of delivery.acts) if (!act.fact) take(state, act)
  }
}

const isUnsafe = (state: State, delivery: DeliveryModel): boolean => {
  const ready = readyOf(state, delivery)
  if (ready === Number.NEGATIVE_INFINITY) return false
  const arrival = Math.max(ready, (state.moments[delivery.serving.index] ?? 0) - delivery.early)
  const keep = state.keeps[delivery.index]
  if (keep && !keep.kit) return true
  if (delivery.safety && arrival - ready > delivery.most) return true
  return delivery.carry?.safety === true && carriedFor(state, delivery, arrival) > delivery.carry.most
}
