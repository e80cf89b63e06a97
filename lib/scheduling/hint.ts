import { insertAll } from './construct.ts'
import { resettle } from './facts.ts'
import { insert } from './insert.ts'
import { refreshKeep } from './keeping.ts'
import type { Act, Model } from './model.ts'
import { momentsFrom, repairMoments } from './moments.ts'
import { happened, price } from './price.ts'
import type { Tick } from './problem.ts'
import { type Known, putBack } from './put-back.ts'
import type { Random } from './random.ts'
import type { Placement, Schedule } from './schedule.ts'
import { deadline, newState, put, type State, take } from './state.ts'

/**
 * A known schedule repaired to this problem by right shift (Sadeh, Otsuka, Schnelbach 1993, "Predictive and reactive
 * scheduling with the Micro-Boss production scheduling system"): what still fits stays, what does not is put off as
 * little as may be or given to who is free, courses wait for what cannot be ready, and what is new finds a place last.
 */
export const startFrom = (model: Model, schedule: Schedule, random: Random): State => {
  const known = knownOf(model, schedule)
  let best: State | undefined
  let steps = 0
  let moments = repairMoments(model, known.moments)
  for (const delay of DELAYS) {
    const stuck = best ? firstStuck(best, known.told) : -1
    if (best && stuck < 0) break
    if (best)
      moments = repairMoments(
        model,
        best.moments.map((moment, i) => (i >= stuck ? moment + delay : moment)),
      )
    for (const stay of [true, false]) {
      const state = settled(model, known, moments, stay, random)
      finish(state, known.told, random)
      steps += state.steps
      if (!best || price(state) < price(best)) best = state
      // Where nothing had to wait the other way round is no better.
      if (stay && firstStuck(state, known.told) < 0 && state.moments.every((moment, i) => moment <= (moments[i] as number))) break
    }
  }
  const state = best ?? newState(model, moments, random)
  state.steps = steps
  return state
}

/** Everything put back, with courses as late as what they wait for needs. What has no room holds up nothing. */
const settled = (model: Model, known: Known, from: readonly Tick[], stay: boolean, random: Random): State => {
  const told = new Map(known.told)
  let moments = from
  for (let round = 1; ; round++) {
    const state = newState(model, moments, random)
    const { floors, roomless } = putBack(state, { ...known, told }, stay)
    const later = repairMoments(
      model,
      moments.map((moment, i) => Math.max(moment, floors[i] ?? moment)),
    )
    const isLater = later.some((moment, i) => moment > (moments[i] as number))
    if (round >= ROUNDS || (!isLater && roomless.length === 0)) return state
    if (roomless.length === 0) moments = later
    for (const act of roomless) told.delete(act)
  }
}

/** The first serving for which something that was told has no place; −1 when there is none. */
const firstStuck = (state: State, told: ReadonlyMap<Act, Placement>): number => {
  let first = -1
  for (const { index, delivery } of told.keys()) {
    if (state.places[index] || !delivery || delivery.serving.served) continue
    if (first < 0 || delivery.serving.index < first) first = delivery.serving.index
  }
  return first
}

/** Each round the courses wait for what the last one could not have ready; a plan that is never at rest is cut short. */
const ROUNDS = 8
/** Ticks by which courses are put off when something finds no room, each on top of the last: 0, 5, 15 and 45 min in all. */
const DELAYS = [0, 10, 20, 60]

const knownOf = (model: Model, { placements, servings }: Schedule): Known => {
  const byId = new Map(placements.map((placement) => [placement.activity, placement]))
  const told = new Map<Act, Placement>()
  const happened = new Map<Act, Placement>()
  for (const act of model.acts) {
    const placement = byId.get(act.activity.id)
    if (placement && act.modes.length > 0) (act.fact ? happened : told).set(act, placement)
  }
  const moments = new Map(servings.map(({ serving, toTable }) => [serving, toTable]))
  const asEarly = momentsFrom(model, [])
  return {
    told,
    happened,
    moments: model.servings.map((serving, i) => moments.get(serving.id) ?? asEarly[i] ?? serving.earliest),
  }
}

/** What has no place yet, or none in time, finds one; then what is under way ends, and dishes wait, where that is best. */
const finish = (state: State, told: ReadonlyMap<Act, Placement>, random: Random): void => {
  const { acts, deliveries, underWay } = state.model
  for (const act of acts) if (!act.fact && (state.places[act.index]?.end ?? 0) > deadline(state, act)) take(state, act)
  for (const delivery of deliveries) if (!happened(state, delivery)) refreshKeep(state, delivery)
  insertAll(
    state,
    acts.filter((act) => !act.fact),
    random,
    (act) => {
      const start = told.get(act)?.start
      return start === undefined ? { blink: 0 } : { start, blink: 0 }
    },
  )
  for (const delivery of deliveries) {
    const last = state.keeps[delivery.index]?.clash ? lastOf(state, delivery.acts) : undefined
    if (!last) continue
    take(state, last)
    refreshKeep(state, delivery)
    insert(state, last, random, { blink: 0 })
  }
  for (const act of underWay) for (let i = 0; i < TRIES; i++) tryOtherEnd(state, act, random)
}

const lastOf = (state: State, acts: readonly Act[]): Act | undefined =>
  acts.reduce<Act | undefined>((last, act) => {
    const end = state.places[act.index]?.end
    return act.fact || end === undefined || (last && (state.places[last.index]?.end ?? 0) >= end) ? last : act
  }, undefined)

/** Ends worth a try of something that may last longer by choice. */
const TRIES = 4

const tryOtherEnd = (state: State, act: Act, random: Random): void => {
  const place = state.places[act.index]
  const cost = price(state)
  resettle(state, act, random)
  if (!place || price(state) < cost) return
  take(state, act)
  put(state, place)
  if (act.delivery) refreshKeep(state, act.delivery)
}
