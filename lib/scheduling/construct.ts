import { putFacts } from './facts.ts'
import type { Wish } from './insert.ts'
import { refreshKeep } from './keeping.ts'
import type { Act, Model } from './model.ts'
import { momentsFrom } from './moments.ts'
import { price, readyOf } from './price.ts'
import type { Tick } from './problem.ts'
import type { Random } from './random.ts'
import { newState, putKeep, type State, setMoments } from './state.ts'
import { insertTrip } from './trip.ts'

/**
 * Serial generation backward from the handoffs (Kolisch 1996, "Serial and parallel resource-constrained project
 * scheduling methods revisited"): successors before predecessors, each as cheap as what is placed allows. Servings are as
 * early as wished and critical paths allow. Post: what is left found no room with these moments, see `putOff`.
 */
export const construct = (model: Model, random: Random): State =>
  constructAt(model, momentsFrom(model, criticalFloors(model)), random)

/** The cheaper of this and schedules made anew with later servings, the whole evening from the first that has no room. */
export const putOff = (state: State, random: Random): State => {
  const { model } = state
  let best = state
  let cost = price(best)
  for (const delay of DELAYS) {
    const stuck = firstStuck(best)
    if (stuck < 0) break
    const later = best.moments.map((moment, i) => (i >= stuck ? moment + delay : moment))
    const next = constructAt(model, momentsFrom(model, later), random)
    next.steps += best.steps
    const nextCost = price(next)
    if (nextCost < cost) {
      best = next
      cost = nextCost
    } else best.steps = next.steps
  }
  return best
}

/** Ticks by which a serving is put off when something finds no room: 5 min to 4 h, each on top of the last that helped. */
const DELAYS = [10, 10, 20, 20, 40, 40, 80, 120, 240, 480]

/** The first serving for which something that could be placed is not; −1 when there is none. */
export const firstStuck = (state: State): number => {
  const stuck = state.model.acts.flatMap((act) =>
    state.places[act.index] || !act.delivery || act.delivery.serving.served || act.modes.length === 0
      ? []
      : [act.delivery.serving.index],
  )
  return stuck.length > 0 ? Math.min(...stuck) : -1
}

/** No serving before the longest chain of what leads to it could be over. */
const criticalFloors = (model: Model): Tick[] =>
  model.servings.map((serving) => {
    const ends = model.acts.flatMap((act) => {
      if (act.delivery?.serving !== serving || (!act.fact && act.modes.length === 0)) return []
      return [(model.earliest[act.index] as number) + act.minLen - act.delivery.late]
    })
    return Math.max(model.from, ...ends)
  })

const constructAt = (model: Model, moments: readonly Tick[], random: Random): State => {
  const state = newState(model, moments, random)
  putFacts(state)
  for (const delivery of model.deliveries) refreshKeep(state, delivery)
  insertAll(
    state,
    model.acts.filter((act) => !act.fact),
    random,
    () => ({ blink: 0 }),
  )
  pullIn(state)
  return state
}

/** No serving later than what was placed for it asks. */
const pullIn = (state: State): void => {
  const { model } = state
  const floors = model.servings.map((serving) =>
    Math.max(
      model.from,
      ...model.deliveries.flatMap((delivery) => (delivery.serving === serving ? [readyOf(state, delivery) - delivery.late] : [])),
    ),
  )
  const moments = momentsFrom(model, floors)
  if (moments.every((moment, i) => moment >= (state.moments[i] ?? moment))) return
  for (const delivery of model.deliveries) putKeep(state, delivery, undefined)
  setMoments(state, moments)
  for (const delivery of model.deliveries) refreshKeep(state, delivery)
}

/** Inserts in this order: latest first, what can stretch once its neighbours are there. */
export const insertAll = (state: State, acts: readonly Act[], random: Random, wish: (act: Act) => Wish): void => {
  for (const act of backward(state, acts))
    if (!state.places[act.index] && act.modes.length > 0) insertTrip(state, act, random, wish(act))
}

/** Successors before predecessors, chores after dishes. */
export const backward = (state: State, acts: readonly Act[]): Act[] => {
  const rank = (act: Act) => (state.latest[act.index] as number) - (act.stretches ? 1e7 : 0) - (act.delivery ? 0 : 1e6)
  const depth = (act: Act) => state.model.depth[act.index] as number
  return [...acts].sort((a, b) => rank(b) - rank(a) || depth(b) - depth(a) || a.index - b.index)
}

/** What is scarce before what fits anywhere: ovens, then rings, each latest first, then the rest. */
export const scarceFirst = (state: State, acts: readonly Act[]): Act[] => {
  const rank = (act: Act) =>
    act.modes.reduce(
      (most, mode) => mode.uses.reduce((m, use) => Math.max(m, use.kind === 'oven' ? 2 : use.kind === 'ring' ? 1 : 0), most),
      0,
    )
  const order = new Map(backward(state, acts).map((act, i) => [act, i]))
  return [...acts].sort((a, b) => rank(b) - rank(a) || (order.get(a) ?? 0) - (order.get(b) ?? 0))
}
