import { attentionPrice } from './attention.ts'
import { heated } from './kit-fits.ts'
import { type DeliveryModel, type KitModel, NEVER } from './model.ts'
import type { Place } from './place.ts'
import type { Tick } from './problem.ts'
import type { State } from './state.ts'
import { overBy } from './tally.ts'

/** What a broken safety wish, or a keeping without room, costs while searching: never worth it. */
export const NEVER_WORTH = 400_000

/** What the whole schedule costs: `cost` of the finished one, plus what no finished one may have. */
export const price = (state: State): number => {
  const { model, tally } = state
  const { weights } = model.problem
  let sum = servingsPrice(state) + attentionPrice(state.attention, weights) + tally.moved + tally.spared
  sum += weights.left * tally.left + weights.lead * tally.leads + (weights.early * tally.early) / 100 + weights.past * tally.over
  for (const delivery of model.deliveries) sum += dishPrice(state, delivery)
  return sum + NEVER_WORTH * countCold(state)
}

/** Preheated activities that nothing precedes in an oven that is not hot by then. */
export const coldStarts = (state: State): Place[] => state.model.ovens.flatMap((kit) => firstCold(state, kit))

export const countCold = (state: State): number => {
  let sum = 0
  for (const kit of state.model.ovens) if (mayBeCold(state, kit)) sum += firstCold(state, kit).length
  return sum
}

export const mayBeCold = (state: State, kit: KitModel): boolean => {
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

/** The latest end among what is placed of a delivery; −∞ when nothing is. */
export const readyOf = (state: State, delivery: DeliveryModel): Tick => {
  let ready = state.readies[delivery.index] as number
  if (Number.isNaN(ready)) {
    ready = Number.NEGATIVE_INFINITY
    for (const act of delivery.acts) {
      const place = state.places[act.index]
      if (place && place.end > ready) ready = place.end
    }
    state.readies[delivery.index] = ready
  }
  return ready
}

/** Is all that is placed of it a fact? */
export const happened = (state: State, delivery: DeliveryModel): boolean => {
  for (const act of delivery.acts) if (!act.fact && state.places[act.index]) return false
  return true
}

/** Keeping and carrying past their most, and what may never be; worked out once for each change. */
export const dishPrice = (state: State, delivery: DeliveryModel): number => {
  const known = state.dishes[delivery.index] as number
  if (!Number.isNaN(known)) return known
  const now = workOut(state, delivery)
  state.dishes[delivery.index] = now
  return now
}

const workOut = (state: State, delivery: DeliveryModel): number => {
  const clash = state.keeps[delivery.index]?.clash ? NEVER_WORTH : 0
  if (delivery.serving.served) return clash
  const ready = readyOf(state, delivery)
  if (ready === Number.NEGATIVE_INFINITY) return 0
  const { past } = state.model.problem.weights
  const arrival = Math.max(ready, (state.moments[delivery.serving.index] ?? 0) - delivery.early)
  const planned = !happened(state, delivery)
  const { carry } = delivery
  let sum = clash + pastMost(past, arrival - ready - delivery.most, delivery.safety && planned)
  if (carry) sum += pastMost(past, carriedFor(state, delivery, arrival) - carry.most, carry.safety && planned)
  return sum
}

/** What ticks past a most cost: a wish at its price, a safety limit never worth it. */
export const pastMost = (past: number, over: number, safety: boolean): number =>
  over <= 0 ? 0 : safety ? NEVER_WORTH + over * past : over * past

type When = Pick<Place, 'act' | 'start' | 'end'>

/** From the first carrying start to the next activity's start, or to arrival; 0 when nothing is carried. */
export const carriedFor = (state: State, delivery: DeliveryModel, arrival: Tick, also?: When): number => {
  let first = also?.act.road ? also : undefined
  for (const act of delivery.acts) {
    const place = act.road ? state.places[act.index] : undefined
    if (place && (!first || place.start < first.start || (place.start === first.start && place.end < first.end))) first = place
  }
  if (!first) return 0
  let next = also && !also.act.road && also.start >= first.end ? also.start : NEVER
  for (const act of delivery.acts) {
    const place = act.road ? undefined : state.places[act.index]
    if (place && place.start >= first.end && place.start < next) next = place.start
  }
  return (next === NEVER ? arrival : next) - first.start
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
