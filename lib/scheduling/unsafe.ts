import { refreshKeep } from './keeping.ts'
import type { Act, DeliveryModel } from './model.ts'
import { carriedFor, coldStarts, happened, readyOf } from './price.ts'
import { type State, take } from './state.ts'

/** Post: no dish is kept or carried past a safety limit, or waits where there is no room: better not served at all. */
export const leaveOutUnsafe = (state: State): void => {
  for (const place of coldStarts(state)) leave(state, place.act)
  for (const delivery of state.model.deliveries) {
    if (delivery.serving.served || happened(state, delivery) || !isUnsafe(state, delivery)) continue
    for (const act of delivery.acts) if (!act.fact) leave(state, act)
  }
}

const leave = (state: State, act: Act): void => {
  take(state, act)
  if (act.delivery) refreshKeep(state, act.delivery)
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
