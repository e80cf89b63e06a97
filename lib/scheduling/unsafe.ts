import { begin, rollback } from './journal.ts'
import { refreshKeep } from './keeping.ts'
import type { Act, DeliveryModel } from './model.ts'
import { carriedFor, coldStarts, happened, NEVER_WORTH, price, readyOf } from './price.ts'
import { type State, take } from './state.ts'

/** Post: no dish is kept or carried past a safety limit, or waits where there is no room: better not served at all. */
export const leaveOutUnsafe = (state: State): void => {
  for (const place of coldStarts(state)) leave(state, place.act)
  for (const delivery of state.model.deliveries) {
    const isFact = delivery.serving.served !== undefined || happened(state, delivery)
    if (isFact && state.keeps[delivery.index]?.clash) makeRoom(state, delivery)
    if (isFact || !isUnsafe(state, delivery)) continue
    for (const act of delivery.acts) if (!act.fact) leave(state, act)
  }
}

/** The price of the finished schedule, from which what is unsafe is left out. */
export const worth = (state: State): number => {
  const now = price(state)
  if (now < NEVER_WORTH) return now
  const before = begin(state)
  leaveOutUnsafe(state)
  const finished = price(state)
  rollback(state, before)
  return finished
}

/** What is planned on the kit where a dish waits already is left out. */
const makeRoom = (state: State, delivery: DeliveryModel): void => {
  const lanes = (state.keeps[delivery.index]?.items ?? []).map(({ lane }) => lane)
  const planned = new Set(lanes.flatMap((lane) => lane.flatMap(({ who }) => state.model.acts[who] ?? [])))
  for (const act of planned) if (!act.fact) leave(state, act)
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
  if (keep?.clash) return true
  if (delivery.safety && arrival - ready > delivery.most) return true
  return delivery.carry?.safety === true && carriedFor(state, delivery, arrival) > delivery.carry.most
}
