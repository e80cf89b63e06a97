import { type Act, type DeliveryModel, type LagModel, NEVER, type Reach } from './model.ts'
import { carriedFor, dishPrice, pastMost, readyOf } from './price.ts'
import type { Tick } from './problem.ts'
import { add, type Outlook } from './scratch.ts'
import { softWindow } from './soft-window.ts'
import { deadline, ripeAfter, type State } from './state.ts'

/** Gathers what is known of an activity's starts and costs before any is tried. Pre: it is not placed. */
export const look = (state: State, act: Act): Outlook => {
  const { outlook } = state.scratch
  outlook.above.size = 0
  outlook.below.size = 0
  outlook.belowEnd.size = 0
  outlook.lo = act.from
  outlook.hi = NEVER
  outlook.loEnd = -NEVER
  outlook.hiEnd = deadline(state, act)
  outlook.pushesOn = false
  for (let i = 0; i < act.preds.length; i++) lookBack(state, outlook, act.preds[i] as LagModel)
  for (let i = 0; i < act.succs.length; i++) lookAhead(state, outlook, act.succs[i] as LagModel)
  for (const { last, path } of act.heralds)
    if (!state.places[last.index] && last.delivery) add(outlook.below, soonest(state, last, last.delivery) + path)
  const { startFrom, endFrom, startTo } = softWindow(state, act)
  outlook.softFrom = startFrom
  outlook.softEnd = endFrom
  if (startTo < NEVER) add(outlook.above, startTo)
  lookAtDish(state, outlook, act.delivery)
  lookForRoom(state, outlook, act)
  return outlook
}

const lookBack = (state: State, outlook: Outlook, lag: LagModel): void => {
  const place = state.places[lag.from.index]
  if (place) {
    const edge = lag.fromEnd ? place.end : place.start
    outlook.lo = Math.max(outlook.lo, edge + lag.least)
    if (lag.safety) outlook.hi = Math.min(outlook.hi, edge + lag.most)
    else if (lag.priced) add(outlook.above, edge + lag.most)
    return
  }
  if (lag.most < NEVER) add(outlook.above, ripeAfter(state.ripe, lag))
}

const lookAhead = (state: State, outlook: Outlook, lag: LagModel): void => {
  const place = state.places[lag.to.index]
  if (place) {
    const { start } = place
    if (lag.fromEnd) outlook.hiEnd = Math.min(outlook.hiEnd, start - lag.least)
    else outlook.hi = Math.min(outlook.hi, start - lag.least)
    if (lag.safety && lag.fromEnd) outlook.loEnd = Math.max(outlook.loEnd, start - lag.most)
    else if (lag.safety) outlook.lo = Math.max(outlook.lo, start - lag.most)
    else if (lag.priced) add(lag.fromEnd ? outlook.belowEnd : outlook.below, start - lag.most)
    return
  }
  if (lag.fromEnd) outlook.pushesOn = true
}

const lookAtDish = (state: State, outlook: Outlook, delivery: DeliveryModel | undefined): void => {
  outlook.dish = 0
  outlook.moment = -NEVER
  if (!delivery) return
  outlook.moment = state.moments[delivery.serving.index] as number
  outlook.arrival = outlook.moment - delivery.early
  outlook.ready = readyOf(state, delivery)
  outlook.dish = dishPrice(state, delivery)
}

/** The starts that leave room for what is yet to be placed before and after it, when it is as short as may be. */
const lookForRoom = (state: State, outlook: Outlook, act: Act): void => {
  let lo = state.model.earliest[act.index] as number
  let hi = state.latest[act.index] as number
  const before = state.model.before[act.index] as Reach
  for (let i = 0; i < before.acts.length; i++) {
    const place = state.places[before.acts[i] as number]
    if (place && place.start + (before.paths[i] as number) > lo) lo = place.start + (before.paths[i] as number)
  }
  const after = state.model.after[act.index] as Reach
  for (let i = 0; i < after.acts.length; i++) {
    const place = state.places[after.acts[i] as number]
    if (place && place.start - (after.paths[i] as number) < hi) hi = place.start - (after.paths[i] as number)
  }
  outlook.roomLo = lo
  outlook.roomHi = hi
}

/** The earliest start at which an activity that ends its dish leaves it fresh enough. */
const soonest = (state: State, last: Act, delivery: DeliveryModel): Tick =>
  (state.moments[delivery.serving.index] as number) - delivery.early - delivery.most - last.minLen

/** What a start costs whoever does it: broken limits, its dish's waiting and how early it is. */
export const startPrice = (state: State, act: Act, start: Tick, len: number): number => {
  const { outlook } = state.scratch
  const { weights } = state.model.problem
  const end = start + len
  const { above, below, belowEnd } = outlook
  let over = 0
  for (let i = 0; i < above.size; i++) over += Math.max(0, start - (above.at[i] as number))
  for (let i = 0; i < below.size; i++) over += Math.max(0, (below.at[i] as number) - start)
  for (let i = 0; i < belowEnd.size; i++) over += Math.max(0, (belowEnd.at[i] as number) - end)
  over += Math.max(0, outlook.softFrom - start, outlook.softEnd - end)
  const sum = weights.past * over
  if (!act.delivery) return sum
  const early = act.fact || end >= outlook.moment ? 0 : (weights.early * (outlook.moment - end)) / 100
  return sum + early + dishRise(state, act, act.delivery, start, end)
}

/** By how much the waiting of its dish costs more once it is ready then. */
const dishRise = (state: State, act: Act, delivery: DeliveryModel, start: Tick, end: Tick): number => {
  if (delivery.serving.served) return 0
  const { outlook } = state.scratch
  const { past } = state.model.problem.weights
  const ready = Math.max(outlook.ready, end)
  let sum = pastMost(past, outlook.arrival - ready - delivery.most, delivery.safety)
  if (delivery.carry) {
    const carried = carriedFor(state, delivery, Math.max(ready, outlook.arrival), { act, start, end })
    sum += pastMost(past, carried - delivery.carry.most, delivery.carry.safety)
  }
  return sum - outlook.dish
}
