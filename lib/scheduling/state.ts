import { type Attention, attentionOf, mark, setWindow } from './attention.ts'
import { fillItems } from './items.ts'
import { type Act, type DeliveryModel, type LagModel, type Model, NEVER } from './model.ts'
import type { Item, Keep, Lanes, Place } from './place.ts'
import type { Tick } from './problem.ts'
import type { Random } from './random.ts'
import { lastPresent } from './stays.ts'

interface Vessel {
  kit: number
  item: Item | undefined
  readonly members: Place[]
}

/** A schedule being made: places and moments, with every lane and count kept in step by `put`, `take` and `setMoments`. */
export interface State extends Lanes {
  readonly model: Model
  readonly places: (Place | undefined)[]
  readonly moments: Tick[]
  readonly vessels: readonly Vessel[]
  readonly keeps: (Keep | undefined)[]
  readonly attention: Attention
  /** Latest start by activity, if everything after it is to fit. */
  readonly latest: Float64Array
  /** Latest start by activity, if what comes before it is to keep its wishes too. */
  readonly ripe: Float64Array
  /** After a check said no: starts strictly between these are impossible for the same reason. */
  lo: Tick
  hi: Tick
  /** Insertions tried. */
  steps: number
  /** How far chance may sway the choice of touches. */
  jitter: number
  readonly random: Random
}

export const newState = (model: Model, moments: readonly Tick[], random: Random): State => {
  const state: State = {
    model,
    places: model.acts.map(() => undefined),
    moments: [...moments],
    cookLanes: model.cooks.map(() => []),
    kitLanes: model.kits.map(() => []),
    groupLanes: model.groups.map(() => []),
    vessels: Array.from({ length: model.vessels }, () => ({ kit: -1, item: undefined, members: [] })),
    keeps: model.deliveries.map(() => undefined),
    attention: attentionOf(model),
    latest: new Float64Array(model.acts.length),
    ripe: new Float64Array(model.acts.length),
    lo: 0,
    hi: 0,
    steps: 0,
    jitter: 0,
    random,
  }
  setMoments(state, moments)
  return state
}

/** Pre: its activity is not placed. Nothing is checked here. */
export const put = (state: State, place: Place): void => {
  state.places[place.act.index] = place
  if (place.items.length === 0) fillItems(state, place)
  for (const { lane, item } of place.items) lane.push(item)
  mark(state.attention, place, 1)
  if (place.vesselKit >= 0) {
    const vessel = state.vessels[place.act.vessel]
    vessel?.members.push(place)
    spanVessel(state, place.act.vessel, place.vesselKit)
  }
}

/** Post: the activity is not placed. */
export const take = (state: State, act: Act): void => {
  const place = state.places[act.index]
  if (!place) return
  state.places[act.index] = undefined
  for (const { lane, item } of place.items) remove(lane, item)
  mark(state.attention, place, -1)
  if (place.vesselKit >= 0) {
    const vessel = state.vessels[act.vessel]
    if (vessel) {
      remove(vessel.members, place)
      spanVessel(state, act.vessel, vessel.kit)
    }
  }
}

const remove = <T>(from: T[], one: T): void => {
  const i = from.lastIndexOf(one)
  const last = from.pop()
  if (last !== undefined && i < from.length && i >= 0) from[i] = last
}

/** The vessel's ring is held from its first start to its last hold's end. */
export const spanVessel = (state: State, index: number, kit: number): void => {
  const vessel = state.vessels[index]
  if (!vessel) return
  if (vessel.item) remove(state.kitLanes[vessel.kit] ?? [], vessel.item)
  vessel.item = undefined
  vessel.kit = kit
  if (vessel.members.length === 0) return
  const from = Math.min(...vessel.members.map((place) => place.start))
  const to = Math.max(...vessel.members.map((place) => place.holdEnd))
  vessel.item = holdItem(vesselWho(state.model, index), from, to, 1)
  state.kitLanes[kit]?.push(vessel.item)
}

export const vesselWho = (model: Model, vessel: number): number => model.acts.length + model.deliveries.length + vessel

export const holdItem = (who: number, from: Tick, to: Tick, amount: number): Item => ({
  who,
  from,
  to,
  kind: 'hold',
  spot: -1,
  short: false,
  amount,
  low: 0,
  high: 0,
  door: 0,
  touches: NONE,
})
const NONE: readonly Tick[] = []

export const putKeep = (state: State, delivery: DeliveryModel, keep: Keep | undefined): void => {
  for (const { lane, item } of state.keeps[delivery.index]?.items ?? []) remove(lane, item)
  state.keeps[delivery.index] = keep
  for (const { lane, item } of keep?.items ?? []) lane.push(item)
}

/** Post: moments as given; the window of the table, and what every activity's start is bounded by, follow. */
export const setMoments = (state: State, moments: readonly Tick[]): void => {
  const { model } = state
  for (const [i, moment] of moments.entries()) state.moments[i] = moment
  const meals = model.servings.flatMap(({ kind, eating }, i) => {
    const from = moments[i] ?? 0
    return kind === 'welcome' ? [] : [{ from, to: from + eating }]
  })
  setWindow(
    state.attention,
    meals[0]?.from ?? model.from,
    meals.length > 0 ? (moments[moments.length - 1] ?? model.from) : model.from,
    meals,
  )
  const { latest } = state
  for (const act of model.acts) latest[act.index] = lastPresent(act, deadline(state, act) - Math.min(act.minLen, 1e6))
  for (const act of model.acts) {
    if (act.fact) continue
    const row = model.longest[act.index] as Float64Array
    let start = latest[act.index] as number
    for (const after of model.acts) {
      const path = row[after.index] as number
      if (path > Number.NEGATIVE_INFINITY && !after.fact) start = Math.min(start, (latest[after.index] as number) - path)
    }
    latest[act.index] = lastPresent(act, start)
  }
  ripen(state)
}

/** Greatest lags bound forward: what must follow soon after something early must be early itself. */
const ripen = ({ model, latest, ripe }: State): void => {
  ripe.set(latest)
  for (const act of model.acts) if (act.fact) ripe[act.index] = act.fact.start
  for (let round = 0, moved = true; moved && round < model.acts.length; round++) {
    moved = false
    for (const act of model.acts)
      for (const lag of act.preds) {
        const start = ripeAfter(ripe, lag)
        if (start >= (ripe[act.index] as number)) continue
        ripe[act.index] = start
        moved = true
      }
  }
}

/** The latest start that a lag from something not yet placed, or its most, allows. */
export const ripeAfter = (ripe: Float64Array, { from, fromEnd, most }: LagModel): Tick =>
  from.modes.length === 0 ? NEVER : (ripe[from.index] as number) + (fromEnd ? from.maxLen : 0) + most

/** Latest end that its own window and its serving allow. */
export const deadline = (state: State, act: Act): Tick => {
  const { delivery } = act
  if (!delivery || delivery.serving.served) return act.to
  return Math.min(act.to, (state.moments[delivery.serving.index] ?? 0) + delivery.late)
}
