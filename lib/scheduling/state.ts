import { type Attention, attentionOf, mark, setWindow } from './attention.ts'
import { fillItems } from './items.ts'
import { addItem, dropItem, itemOf } from './lane.ts'
import { type Act, bitOf, type DeliveryModel, type LagModel, type Model, NEVER, type Reach } from './model.ts'
import type { Item, Keep, Lane, Lanes, Place } from './place.ts'
import type { Tick } from './problem.ts'
import type { Random } from './random.ts'
import { newScratch, type Scratch } from './scratch.ts'
import { lastPresent } from './stays.ts'
import { count, earlyBy, newTally, type Tally } from './tally.ts'

export interface Vessel {
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
  readonly tally: Tally
  /** By delivery, NaN when not known: the latest end of what is placed of it (−∞ for nothing), and what its waiting costs. */
  readonly readies: Float64Array
  readonly dishes: Float64Array
  /** Latest start by activity, if everything after it is to fit. */
  readonly latest: Float64Array
  /** Latest start by activity, if what comes before it is to keep its wishes too. */
  readonly ripe: Float64Array
  /** After a check said no: starts strictly between these are impossible for the same reason. */
  lo: Tick
  hi: Tick
  /** The least price of a touch found so far. */
  least: number
  /** Insertions tried. */
  steps: number
  /** How far chance may sway the choice of touches. */
  jitter: number
  readonly random: Random
  readonly scratch: Scratch
  /** What was done, to be undone; written while recording only, see `begin`. */
  readonly journal: Undo[]
  recording: boolean
}

export type Undo =
  | { readonly kind: 'put' | 'take'; readonly place: Place /** The vessel's ring before. */; readonly kit: number }
  | { readonly kind: 'keep'; readonly delivery: DeliveryModel; readonly keep: Keep | undefined }
  | { readonly kind: 'vessel'; readonly vessel: number; readonly kit: number }
  | { readonly kind: 'moments'; readonly moments: readonly Tick[] }

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
    tally: newTally(model.acts),
    readies: new Float64Array(model.deliveries.length).fill(Number.NaN),
    dishes: new Float64Array(model.deliveries.length).fill(Number.NaN),
    latest: new Float64Array(model.acts.length),
    ripe: new Float64Array(model.acts.length),
    lo: 0,
    hi: 0,
    least: 0,
    steps: 0,
    jitter: 0,
    random,
    scratch: newScratch(),
    journal: [],
    recording: false,
  }
  follow(state, ALL)
  return state
}

/** Pre: its activity is not placed. Nothing is checked here. */
export const put = (state: State, place: Place): void => {
  const { act, items } = place
  const vessel = act.vessel < 0 ? undefined : state.vessels[act.vessel]
  if (items.length === 0) fillItems(state, place)
  if (state.recording) state.journal.push({ kind: 'put', place, kit: vessel ? vessel.kit : -1 })
  count(state.tally, state.places, state.moments, place, 1)
  state.places[act.index] = place
  for (let i = 0; i < items.length; i++) addItem(items[i] as Item)
  mark(state.attention, place, 1)
  if (act.delivery) stale(state, act.delivery)
  if (!vessel || place.vesselKit < 0) return
  vessel.members.push(place)
  holdVessel(state, act.vessel, place.vesselKit)
}

/** Post: the activity is not placed. */
export const take = (state: State, act: Act): void => {
  const place = state.places[act.index]
  if (!place) return
  const vessel = act.vessel < 0 ? undefined : state.vessels[act.vessel]
  if (state.recording) state.journal.push({ kind: 'take', place, kit: vessel ? vessel.kit : -1 })
  count(state.tally, state.places, state.moments, place, -1)
  state.places[act.index] = undefined
  for (let i = 0; i < place.items.length; i++) dropItem(place.items[i] as Item)
  mark(state.attention, place, -1)
  if (act.delivery) stale(state, act.delivery)
  if (place.vesselKit < 0 || !vessel) return
  vessel.members.splice(vessel.members.indexOf(place), 1)
  holdVessel(state, act.vessel, vessel.kit)
}

const stale = (state: State, delivery: DeliveryModel): void => {
  state.readies[delivery.index] = Number.NaN
  state.dishes[delivery.index] = Number.NaN
}

/** Moves a vessel to a ring, held from its first start to its last hold's end. */
export const spanVessel = (state: State, index: number, kit: number): void => {
  if (state.recording) state.journal.push({ kind: 'vessel', vessel: index, kit: state.vessels[index]?.kit ?? -1 })
  holdVessel(state, index, kit)
}

const holdVessel = (state: State, index: number, kit: number): void => {
  const vessel = state.vessels[index]
  if (!vessel) return
  if (vessel.item) dropItem(vessel.item)
  vessel.item = undefined
  vessel.kit = kit
  if (vessel.members.length === 0) return
  let from = NEVER
  let to = -NEVER
  for (const { start, holdEnd } of vessel.members) {
    if (start < from) from = start
    if (holdEnd > to) to = holdEnd
  }
  const lane = kit < 0 ? undefined : state.kitLanes[kit]
  if (!lane) return
  vessel.item = holdItem(lane, vesselWho(state.model, index), from, to, 1, 0, 0)
  addItem(vessel.item)
}

export const vesselWho = (model: Model, vessel: number): number => model.acts.length + model.deliveries.length + vessel

export const holdItem = (lane: Lane, who: number, from: Tick, to: Tick, amount: number, low: number, high: number): Item =>
  itemOf(lane, who, from, to, 'hold', -1, false, amount, low, high, 0, NONE)
const NONE: readonly Tick[] = []

export const putKeep = (state: State, delivery: DeliveryModel, keep: Keep | undefined): void => {
  const was = state.keeps[delivery.index]
  if (!was && !keep) return
  if (state.recording) state.journal.push({ kind: 'keep', delivery, keep: was })
  if (was) for (const item of was.items) dropItem(item)
  state.keeps[delivery.index] = keep
  state.dishes[delivery.index] = Number.NaN
  if (keep) for (const item of keep.items) addItem(item)
}

/** Post: moments as given; the window of the table, and what every activity's start is bounded by, follow. */
export const setMoments = (state: State, moments: readonly Tick[]): void => {
  let moved = 0
  for (let i = 0; i < moments.length; i++) if (moments[i] !== state.moments[i]) moved |= bitOf(i)
  if (moved === 0) return
  if (state.recording) state.journal.push({ kind: 'moments', moments: [...state.moments] })
  countEarly(state, moved, -1)
  for (let i = 0; i < moments.length; i++) state.moments[i] = moments[i] as number
  countEarly(state, moved, 1)
  for (const delivery of state.model.deliveries)
    if ((bitOf(delivery.serving.index) & moved) !== 0) state.dishes[delivery.index] = Number.NaN
  follow(state, moved)
}

/** What hangs on the moments of these servings, worked out anew. */
const follow = (state: State, moved: number): void => {
  const { model, latest, moments } = state
  const meals: Tick[] = []
  for (const { kind, eating, index } of model.servings)
    if (kind !== 'welcome') meals.push(moments[index] as Tick, (moments[index] as Tick) + eating)
  setWindow(state.attention, meals[0] ?? model.from, meals.length > 0 ? (moments[moments.length - 1] as Tick) : model.from, meals)
  for (const act of model.acts)
    if ((act.hangsOn & moved) !== 0) latest[act.index] = lastPresent(act, deadline(state, act) - Math.min(act.minLen, 1e6))
  for (const act of model.deepFirst) {
    if (act.fact || (act.hangsOn & moved) === 0) continue
    const after = model.after[act.index] as Reach
    const alone = latest[act.index] as number
    let start = alone
    for (let i = 0; i < after.acts.length; i++) {
      const own = (latest[after.acts[i] as number] as number) - (after.paths[i] as number)
      if (own < start) start = own
    }
    if (start < alone) latest[act.index] = lastPresent(act, start)
  }
  ripen(state)
}
const ALL = -1

const countEarly = (state: State, moved: number, by: 1 | -1): void => {
  for (const act of state.model.acts) {
    const { delivery } = act
    const place = delivery && (bitOf(delivery.serving.index) & moved) !== 0 ? state.places[act.index] : undefined
    if (place) state.tally.early += by * earlyBy(state.moments, act, place.end)
  }
}

/** Greatest lags bound forward: what must follow soon after something early must be early itself. */
const ripen = ({ model, latest, ripe }: State): void => {
  ripe.set(latest)
  for (const act of model.acts) if (act.fact) ripe[act.index] = act.fact.start
  for (let round = 0, moved = true; moved && round < model.acts.length; round++) {
    moved = false
    for (let i = 0; i < model.bounding.length; i++) {
      const lag = model.bounding[i] as LagModel
      const start = ripeAfter(ripe, lag)
      if (start >= (ripe[lag.to.index] as number)) continue
      ripe[lag.to.index] = start
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
