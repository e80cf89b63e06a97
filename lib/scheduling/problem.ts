/**
 * The scheduling problem: activities with alternative modes, minimum and maximum lags, cooks, kit and servings
 * (RCPSP/max with alternative modes and sequence-dependent oven ramps). Times are integer ticks from an origin of the
 * caller's choosing; a window [from, to) has its start inside and its end outside. Nothing here knows a kitchen's words.
 *
 * Sources: Brucker et al. 1999, "Resource-constrained project scheduling", EJOR 112:3-41 (notation);
 * Bartusch, Möhring, Radermacher 1988, "Scheduling project networks with resource constraints and time windows".
 */

export type Tick = number
export type ActivityId = string
export type CookId = string
export type PlaceId = string
export type KitId = string
export type ServingId = string
export type DeliveryId = string

/** quality: a wish, broken at a price and reported; safety: never broken. */
export type Bound = 'quality' | 'safety'

/** How far `quality` and the course's wishes may be bent is the engine's to price, see `Weights`. */
export interface Problem {
  /** Every start and end lies in [from, to). */
  readonly horizon: { readonly from: Tick; readonly to: Tick }
  readonly activities: readonly Activity[]
  readonly lags: readonly Lag[]
  /** At most `most` of these run at the same time (batches of one pan). */
  readonly together: readonly { readonly activities: readonly ActivityId[]; readonly most: number }[]
  readonly cooks: readonly Cook[]
  readonly kit: readonly Kit[]
  /** In the order in which they reach the table. */
  readonly servings: readonly Serving[]
  readonly deliveries: readonly Delivery[]
  /** Nothing that has not started may start before it. Absent while planning ahead. */
  readonly now?: Tick
  /** What cooks were last told; changes against it are priced, and `frozen` ones move only when forced. */
  readonly previous?: readonly Previous[]
  /** When cooks would rather not be asked, or not for some activities. */
  readonly spares?: readonly Spare[]
  readonly weights: Weights
}

/** Each tick in [from, to) in which the cook attends or touches one of these activities (any, when absent) costs `price`. */
export interface Spare {
  readonly cook: CookId
  readonly from: Tick
  readonly to: Tick
  readonly price: number
  readonly activities?: readonly ActivityId[]
}

export interface Activity {
  readonly id: ActivityId
  /** Where its cooks stand and its kit is. */
  readonly place: PlaceId
  /** table and outside: not in the kitchen, so nobody can keep an eye on a pan meanwhile. table: not counted as missed. */
  readonly at: 'kitchen' | 'table' | 'outside'
  /** Carried from `place`: its cook travels, after a presence in `place` and before the next one, which is in `to`. */
  readonly road?: { readonly to: PlaceId }
  /** Earliest start and latest end; the horizon when absent. Hard. */
  readonly from?: Tick
  readonly to?: Tick
  /** The delivery it is part of; none for a chore. */
  readonly delivery?: DeliveryId
  /** A short burst in which all hosts may be up (see `Goal` "table"). */
  readonly plating: boolean
  /** Activities of one vessel hold one ring from the first start to the last end among those that use a ring, and do not overlap. */
  readonly vessel?: string
  /** Who has claimed it, the first before the others. Its attending cooks are drawn from these first; touches may be anyone's. */
  readonly claimed: readonly CookId[]
  readonly modes: readonly Mode[]
  /** What has happened. Facts may break any rule and are never moved. */
  readonly fact?: Fact
}

export type Fact =
  | { readonly kind: 'done'; readonly start: Tick; readonly end: Tick; readonly cooks?: readonly CookId[] }
  /** Under way: its length is at least `atLeast` ticks, and it ends no earlier than `now`. */
  | { readonly kind: 'running'; readonly start: Tick; readonly atLeast: number; readonly cooks?: readonly CookId[] }

export interface Mode {
  /** hands-on: its cooks alone; eye: one cook in that kitchen; leave: nobody but at the touches. */
  readonly care: 'hands-on' | 'eye' | 'leave'
  /** Attending cooks: 1..3 when hands-on, exactly one when eye (whatever stands here), none when leave. */
  readonly cooks: number
  /** Length in ticks at pace 1. A hands-on length is ⌈likely × slowest pace among its cooks⌉. */
  readonly least: number
  readonly likely: number
  readonly most: number
  /** What it likely takes where the plan reckons with more (`likely`), so that nobody waits for who is on the road. For chances alone. */
  readonly usual?: number
  /** leave only: the length may be any of likely..upTo. */
  readonly upTo?: number
  readonly touches: readonly Touch[]
  readonly uses: readonly Use[]
}

/**
 * One cook stands there for `takes` ticks, hands on, not scaled by pace.
 * in: at = start. out: at in [end − takes, end − takes + lateBy]. every n: one for each k ≥ 1 with k·n < length,
 * at in [start + k·n, start + k·n + lateBy].
 */
export interface Touch {
  readonly when: 'in' | 'out' | { readonly every: number }
  readonly takes: number
  readonly lateBy: number
}

/** Held from start until max(end, the out touch's end). */
export type Use =
  | { readonly kind: 'ring'; readonly size: number }
  | {
      readonly kind: 'oven'
      /** This one, or any oven of the place. */
      readonly oven?: KitId
      readonly shelves: number
      readonly lowC: number
      readonly highC: number
      readonly preheated: boolean
      /** No other activity of that oven starts, ends or is touched strictly inside [start, start + doorShut]. */
      readonly doorShut?: number
    }
  /** `amount` of one kit of this class at the place. */
  | { readonly kind: 'store'; readonly of: string; readonly amount: number }

export type Kit =
  /** A bigger ring serves a smaller need. */
  | { readonly kind: 'ring'; readonly id: KitId; readonly place: PlaceId; readonly size: number; readonly count: number }
  | {
      readonly kind: 'oven'
      readonly id: KitId
      readonly place: PlaceId
      readonly shelves: number
      readonly maxC: number
      /** °C a tick. Apart by ⌈Δ/up⌉ or ⌈Δ/down⌉ ticks when two windows do not meet; starts at 20 °C. */
      readonly up: number
      readonly down: number
    }
  | { readonly kind: 'store'; readonly id: KitId; readonly place: PlaceId; readonly of: string; readonly capacity: number }

/** start(to) ≥ edge(from) + least (hard); ≤ edge(from) + most (hard when safety, priced when quality). */
export interface Lag {
  readonly from: ActivityId
  readonly edge: 'start' | 'end'
  readonly to: ActivityId
  readonly least: number
  readonly most?: number
  readonly bound: Bound
}

export interface Cook {
  readonly id: CookId
  readonly host: boolean
  readonly eats: boolean
  readonly pace: number
  /** Every attended activity and every touch lies inside one of these, in its place. In order of time, not overlapping. */
  readonly presence: readonly { readonly place: PlaceId; readonly from: Tick; readonly to: Tick }[]
}

/**
 * A course. Its moment `toTable` is chosen by the engine: ≥ `earliest` (hard); for every later one
 * ≥ the previous moment + previous eating + clearing + own pouring (hard).
 */
export interface Serving {
  readonly id: ServingId
  /** The first one: sit-down. The welcome: when the guests come. Else notBefore, or absent. */
  readonly earliest?: Tick
  /** The wished moment: `wished.at` for the first course (later is priced, "sit-down"); the welcome's is never later than it (hard). */
  readonly role:
    | { readonly kind: 'welcome'; readonly latest: Tick }
    | { readonly kind: 'first'; readonly sitDown: Tick }
    | { readonly kind: 'next' }
  /** Ticks. The next moment's wait counts from toTable + eating + clearing. */
  readonly eating: number
  readonly clearing: number
  readonly pouring: number
  /** Wished length of the wait before this serving: ideal[0]..ideal[1] is free, above `most` is a clash. Next servings only. */
  readonly wait: { readonly ideal: readonly [number, number]; readonly most: number }
  /** On the night: it has been served then. */
  readonly fact?: { readonly toTable: Tick; readonly platesOff?: Tick }
  /** Its plating is best done by this cook (priced). */
  readonly lead?: CookId
}

/**
 * A dish. ready = the latest end among its activities. arrival = max(ready, toTable − early); ready ≤ toTable + late (hard).
 * Wished (or, when safety, held): arrival − ready ≤ keeps. The keeping kit is held in [ready, arrival).
 */
export interface Delivery {
  readonly id: DeliveryId
  readonly serving: ServingId
  readonly early: number
  readonly late: number
  readonly keeps: { readonly most: number; readonly bound: Bound; readonly place: PlaceId; readonly uses: readonly Use[] }
  /** From the start of its first carrying activity to the start of the next activity, or to arrival. */
  readonly carry?: { readonly most: number; readonly bound: Bound }
}

export interface Previous {
  readonly activity: ActivityId
  readonly start: Tick
  readonly mode: number
  readonly cooks: readonly CookId[]
  readonly frozen: boolean
}

/** Prices, each for one tick unless it says otherwise. Kept in order: a dearer goal is not sold for a cheaper one in ordinary amounts. */
export interface Weights {
  /** An activity left out because nothing hard allowed it. Once each. */
  readonly left: number
  /** The first course after sit-down. */
  readonly late: number
  /** A wait above `most`. */
  readonly longWait: number
  /** A wait outside the ideal, within `most`. */
  readonly wait: number
  /** A quality lag, a keeping or a carry past its most. */
  readonly past: number
  /** A cook who eats is up, between the first and the last serving. */
  readonly missed: number
  /** On top, while plates are being eaten: between courses it disturbs less. */
  readonly meal: number
  /** The most that one cook misses, on top: fairness. */
  readonly unfair: number
  /** All hosts up at once, but for plating bursts of at most `PLATING_BURST` ticks. */
  readonly allAway: number
  /** A plating activity that the serving's lead is not at. Once each. */
  readonly lead: number
  /** A cook busy in the hour before the first serving. */
  readonly calm: number
  /** A hundred ticks that an activity of a delivery ends before its serving. */
  readonly early: number
  /** An activity whose start, mode or cooks differ from what was told. Once each; frozen ones ten times. */
  readonly moved: number
}

export const WEIGHTS: Weights = {
  left: 1_000_000,
  late: 2_000,
  longWait: 600,
  wait: 40,
  past: 300,
  missed: 10,
  meal: 5,
  unfair: 5,
  allAway: 10,
  lead: 20,
  calm: 1,
  early: 1,
  moved: 15,
}

/** 6 min at 30 s. */
export const PLATING_BURST = 12
/** What a cook with an eye on something may do meanwhile, at the most, in one piece: 10 min at 30 s. */
export const EYE_PIECE = 20
/** 1 h at 30 s. */
export const CALM_HOUR = 120
/** Shortest gap at the table that counts as sitting: 3 min at 30 s. */
export const SIT_LEAST = 6
