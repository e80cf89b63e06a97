import { attentionPrice, attentionRise, matters } from './attention.ts'
import { heated } from './kit-fits.ts'
import { type Act, type DeliveryModel, type KitModel, type LagModel, NEVER } from './model.ts'
import type { Place } from './place.ts'
import type { Tick } from './problem.ts'
import { ripeAfter, type State } from './state.ts'
import { earlyBy, isMoved, isWithoutLead, overBy } from './tally.ts'

/** What a broken safety wish, or a keeping without room, costs while searching: never worth it. */
export const NEVER_WORTH = 400_000

/** What the whole schedule costs: `cost` of the finished one, plus what no finished one may have. */
export const price = (state: State): number => {
  const { model, tally } = state
  const { weights } = model.problem
  let sum = servingsPrice(state) + attentionPrice(state.attention, weights) + tally.moved
  sum += weights.left * tally.left + weights.lead * tally.leads + (weights.early * tally.early) / 100 + weights.past * tally.over
  for (const delivery of model.deliveries) sum += dishPrice(state, delivery)
  return sum + NEVER_WORTH * countCold(state)
}

/** Preheated activities that nothing precedes in an oven that is not hot by then. */
export const coldStarts = (state: State): Place[] => state.model.kits.flatMap((kit) => firstCold(state, kit))

export const countCold = (state: State): number => {
  let sum = 0
  for (const kit of state.model.kits) if (mayBeCold(state, kit)) sum += firstCold(state, kit).length
  return sum
}

export const mayBeCold = (state: State, kit: KitModel): boolean => {
  if (kit.kind !== 'oven') return false
  const first = state.kitLanes[kit.index]?.[0]
  return first !== undefined && first.from < state.model.from + kit.heatUp
}

const firstCold = (state: State, kit: KitModel): Place[] => {
  if (!mayBeCold(state, kit)) return []
  const lane = state.kitLanes[kit.index] ?? []
  const first = lane[0]?.from ?? 0
  return lane.flatMap((item) => {
    const place = item.from === first ? state.places[item.who] : undefined
    if (!place || place.act.fact) return []
    const low = place.mode.uses.reduce(
      (most, use, i) => (use.preheated && place.kit[i] === kit.index ? Math.max(most, use.low) : most),
      20,
    )
    return first < heated(state.model, kit, low) ? [place] : []
  })
}

/** By how much the price rises when this activity is put there, but for what keeping its dish needs. Pre: it is not placed. */
export const rise = (state: State, place: Place, below: number): number => {
  const { act } = place
  const { weights } = state.model.problem
  let sum = (weights.early * earlyBy(state.moments, act, place.end)) / 100
  if (isWithoutLead(place)) sum += weights.lead
  if (isMoved(place)) sum += act.told?.price ?? 0
  for (const lag of act.preds) {
    const from = state.places[lag.from.index]
    sum += from ? weights.past * overBy(lag, from, place) : unripePrice(state, lag, place.start)
  }
  for (const lag of act.succs) {
    const to = state.places[lag.to.index]
    if (to) sum += weights.past * overBy(lag, place, to)
  }
  if (act.heralds.length > 0) sum += heraldPrice(state, act, place.start)
  if (act.delivery) sum += deliveryPrice(state, act.delivery, place) - dishPrice(state, act.delivery)
  if (sum >= below || !touchesTable(state, place)) return sum
  return sum + attentionRise(state.attention, weights, place)
}

/** No place of it at this start is cheaper than that: earliness and broken lags alone. */
export const floorPrice = (state: State, act: Act, start: Tick, len: number): number => {
  const { weights } = state.model.problem
  const end = start + len
  let sum = act.heralds.length > 0 ? heraldPrice(state, act, start) : 0
  if (act.delivery) {
    const moment = state.moments[act.delivery.serving.index] as number
    if (end < moment) sum += (weights.early * (moment - end)) / 100
  }
  for (const lag of act.preds) {
    const from = state.places[lag.from.index]
    if (!from) sum += unripePrice(state, lag, start)
    if (!from || !lag.priced) continue
    const over = start - (lag.fromEnd ? from.end : from.start) - lag.most
    if (over > 0) sum += over * weights.past
  }
  for (const lag of act.succs) {
    const to = state.places[lag.to.index]
    if (!to || !lag.priced) continue
    const over = to.start - (lag.fromEnd ? end : start) - lag.most
    if (over > 0) sum += over * weights.past
  }
  return sum
}

/** What dishes would be ready too early by, if they had to be out of the way of this start. */
const heraldPrice = (state: State, act: Act, start: Tick): number => {
  let sum = 0
  for (const { last, path } of act.heralds) {
    if (state.places[last.index] || !last.delivery) continue
    const over = soonest(state, last) + path - start
    if (over > 0) sum += over * state.model.problem.weights.past
  }
  return sum
}

/** By how much what is yet to be placed before it would have to wait too long for this start. */
const unripePrice = (state: State, lag: LagModel, start: Tick): number => {
  if (lag.most >= NEVER) return 0
  const over = start - ripeAfter(state.ripe, lag)
  return over > 0 ? over * state.model.problem.weights.past : 0
}

/** The earliest start at which an activity that ends its dish leaves it fresh enough. */
export const soonest = (state: State, last: Act): Tick => {
  const { delivery } = last
  if (!delivery) return last.from
  return (state.moments[delivery.serving.index] as number) - delivery.early - delivery.most - last.minLen
}

/** The most that placing it can take off the price of what is placed. */
export const savedBy = (state: State, act: Act): number => (act.delivery ? dishPrice(state, act.delivery) : 0)

const touchesTable = (state: State, place: Place): boolean => {
  if (place.act.activity.plating) return true
  for (const piece of place.pieces) if (matters(state.attention, piece.from, piece.to)) return true
  return false
}

/** The latest end among what is placed of a delivery; −∞ when nothing is. */
export const readyOf = (state: State, delivery: DeliveryModel, also?: Place): Tick => {
  let ready = state.readies[delivery.index] as number
  if (Number.isNaN(ready)) {
    ready = Number.NEGATIVE_INFINITY
    for (const act of delivery.acts) {
      const place = state.places[act.index]
      if (place && place.end > ready) ready = place.end
    }
    state.readies[delivery.index] = ready
  }
  return also && also.end > ready ? also.end : ready
}

/** Is all that is placed of it a fact? */
export const happened = (state: State, delivery: DeliveryModel, also?: Place): boolean =>
  !also && delivery.acts.every((act) => act.fact || !state.places[act.index])

/** Keeping and carrying past their most, and what may never be; worked out once for each change. */
const dishPrice = (state: State, delivery: DeliveryModel): number => {
  const known = state.dishes[delivery.index] as number
  if (!Number.isNaN(known)) return known
  const now = deliveryPrice(state, delivery)
  state.dishes[delivery.index] = now
  return now
}

const deliveryPrice = (state: State, delivery: DeliveryModel, also?: Place): number => {
  const clash = state.keeps[delivery.index]?.clash ? NEVER_WORTH : 0
  if (delivery.serving.served) return clash
  const ready = readyOf(state, delivery, also)
  if (ready === Number.NEGATIVE_INFINITY) return 0
  const { past } = state.model.problem.weights
  const arrival = Math.max(ready, (state.moments[delivery.serving.index] ?? 0) - delivery.early)
  const isFact = happened(state, delivery, also)
  let sum = clash + priceOver(past, arrival - ready - delivery.most, delivery.safety, isFact)
  if (delivery.carry) {
    const carried = carriedFor(state, delivery, arrival, also)
    sum += priceOver(past, carried - delivery.carry.most, delivery.carry.safety, isFact)
  }
  return sum
}

const priceOver = (past: number, over: number, safety: boolean, allFacts: boolean): number =>
  over <= 0 ? 0 : safety && !allFacts ? NEVER_WORTH + over * past : over * past

/** From the first carrying start to the next activity's start, or to arrival; 0 when nothing is carried. */
export const carriedFor = (state: State, delivery: DeliveryModel, arrival: Tick, also?: Place): number => {
  let first: Place | undefined
  const each = (visit: (place: Place) => void) => {
    for (const act of delivery.acts) {
      const place = state.places[act.index]
      if (place) visit(place)
    }
    if (also) visit(also)
  }
  each((place) => {
    if (place.act.road && (!first || place.start < first.start || (place.start === first.start && place.end < first.end)))
      first = place
  })
  const carry = first as Place | undefined
  if (!carry) return 0
  let next = Number.POSITIVE_INFINITY
  each((place) => {
    if (!place.act.road && place.start >= carry.end && place.start < next) next = place.start
  })
  return (next === Number.POSITIVE_INFINITY ? arrival : next) - carry.start
}

/** Servings late, or after too long or too short a wait. */
export const servingsPrice = (state: State): number => {
  const { weights } = state.model.problem
  let sum = 0
  let off = 0
  for (const serving of state.model.servings) {
    const moment = state.moments[serving.index] ?? 0
    if (serving.kind === 'first') sum += weights.late * Math.max(0, moment - serving.wished)
    const since = serving.kind === 'next' ? off : (state.model.problem.servings[serving.index]?.earliest ?? moment)
    if (serving.kind === 'next' || (serving.kind === 'welcome' && serving.hasEarliest)) {
      const wait = moment - since
      const outside = Math.max(0, serving.ideal[0] - wait) + Math.max(0, wait - serving.ideal[1])
      sum += weights.wait * outside + weights.longWait * Math.max(0, wait - serving.most)
    }
    off = serving.served?.platesOff ?? moment + serving.eating + serving.clearing
  }
  return sum
}

/** By how much a placed activity's own pieces break wishes; what a search would like to mend first. */
export const blame = (state: State, place: Place): number => {
  const { delivery } = place.act
  let sum = 0
  const { past } = state.model.problem.weights
  for (const lag of place.act.preds) sum += past * overBy(lag, state.places[lag.from.index], place)
  for (const lag of place.act.succs) sum += past * overBy(lag, place, state.places[lag.to.index])
  return delivery && place.end === readyOf(state, delivery) ? sum + dishPrice(state, delivery) : sum
}
