import type { Place } from '#lib/scheduling/place.ts'
import { carriedFor, NEVER_WORTH, servingsPrice } from '#lib/scheduling/price.ts'
import { CALM_HOUR, PLATING_BURST } from '#lib/scheduling/problem.ts'
import type { State } from '#lib/scheduling/state.ts'

/** The price of a state worked out from its places and moments alone, tick by tick and pair by pair; ovens' cold starts excepted. */
export const slowPrice = (state: State): number => {
  const { model, places, moments } = state
  const { weights } = model.problem
  let sum = servingsPrice(state) + slowAttention(state)
  for (const act of model.acts) {
    const place = places[act.index]
    if (!place) {
      sum += weights.left
      continue
    }
    sum += weights.left * place.missing
    if (act.lead && !place.team.includes(act.lead)) sum += weights.lead
    sum += slowSpares(state, place)
    const moment = act.delivery && moments[act.delivery.serving.index]
    if (!act.fact && moment !== undefined && place.end < moment) sum += (weights.early * (moment - place.end)) / 100
    if (!act.fact && act.told) {
      const cooks = place.team.map((cook) => cook.id).sort()
      const same = act.told.start === place.start && act.told.mode === place.mode.index
      if (!same || cooks.join() !== [...act.told.cooks].sort().join()) sum += act.told.price
    }
  }
  for (const act of model.acts)
    for (const lag of act.preds) {
      const from = places[lag.from.index]
      const to = places[lag.to.index]
      if (!lag.safety && from && to)
        sum += weights.past * Math.max(0, to.start - (lag.fromEnd ? from.end : from.start) - lag.most)
    }
  for (const delivery of model.deliveries) {
    if (state.keeps[delivery.index]?.clash) sum += NEVER_WORTH
    const placed = delivery.acts.flatMap((act) => places[act.index] ?? [])
    if (delivery.serving.served || placed.length === 0) continue
    const ready = Math.max(...placed.map((place) => place.end))
    const arrival = Math.max(ready, (moments[delivery.serving.index] ?? 0) - delivery.early)
    const facts = placed.every((place) => place.act.fact)
    const past = (over: number, safety: boolean) => (over <= 0 ? 0 : over * weights.past + (safety && !facts ? NEVER_WORTH : 0))
    sum += past(arrival - ready - delivery.most, delivery.safety)
    if (delivery.carry) sum += past(carriedFor(state, delivery, arrival) - delivery.carry.most, delivery.carry.safety)
  }
  return sum
}

const slowSpares = ({ model: { problem } }: State, { act, pieces }: Place): number => {
  let sum = 0
  for (const spare of problem.spares ?? [])
    for (const { cook, from, to } of pieces)
      for (let t = from; t < to; t++)
        if (cook.id === spare.cook && spare.from <= t && t < spare.to && spare.activities?.includes(act.activity.id) !== false)
          sum += spare.price
  return sum
}

const slowAttention = (state: State): number => {
  const { model, places, moments } = state
  const { weights } = model.problem
  const seated = model.servings.filter(({ kind }) => kind !== 'welcome')
  const first = seated[0] ? (moments[seated[0].index] ?? 0) : model.from
  const last = seated.length > 0 ? (moments[moments.length - 1] ?? 0) : model.from
  const pieces = places.flatMap((place) => place?.pieces ?? [])
  const isPlating = (t: number) => places.some((place) => place?.act.activity.plating && place.start <= t && place.end > t)
  const isMeal = (t: number) =>
    seated.some(({ index, eating }) => (moments[index] ?? 0) <= t && t < (moments[index] ?? 0) + eating)
  const missed = model.cooks.map(() => 0)
  let sum = 0
  let run = { long: 0, excused: false }
  const endRun = () => {
    if (!(run.excused && run.long <= PLATING_BURST)) sum += weights.allAway * run.long
    run = { long: 0, excused: false }
  }
  for (let t = first - CALM_HOUR; t <= last; t++) {
    const here = pieces.filter((piece) => piece.from <= t && piece.to > t)
    const isUp = (cook: number) => here.some((piece) => piece.up && piece.cook.index === cook)
    if (t < first) for (const cook of model.cooks) if (here.some((p) => p.hand && p.cook === cook)) sum += weights.calm
    if (t < first || t >= last) {
      endRun()
      continue
    }
    for (const cook of model.cooks)
      if (cook.eats && isUp(cook.index)) {
        missed[cook.index] = (missed[cook.index] ?? 0) + 1
        sum += weights.missed + (isMeal(t) ? weights.meal : 0)
      }
    const hosts = model.cooks.filter((cook) => cook.host)
    if (hosts.length > 0 && hosts.every((cook) => isUp(cook.index))) {
      run = { long: run.long + 1, excused: run.excused || isPlating(t) }
    } else endRun()
  }
  return sum + weights.unfair * Math.max(0, ...missed)
}
