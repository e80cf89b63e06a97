import type { Activity, CookId, DeliveryId, KitId, Problem, ServingId, Tick } from './problem.ts'

/** A stretch of time [from, to). */
export interface Stretch {
  readonly from: Tick
  readonly to: Tick
}

/** The problem with its ids replaced by objects and indices, everything that never changes worked out once. */
export interface Model {
  readonly problem: Problem
  readonly from: Tick
  readonly to: Tick
  readonly acts: readonly Act[]
  /** What runs and still has touches to come or a choice of length. */
  readonly underWay: readonly Act[]
  readonly cooks: readonly CookModel[]
  readonly kits: readonly KitModel[]
  /** The ovens among them. */
  readonly ovens: readonly KitModel[]
  readonly servings: readonly ServingModel[]
  readonly deliveries: readonly DeliveryModel[]
  readonly vessels: number
  /** The most that may run at once, group by group. */
  readonly groups: readonly number[]
  /** By activity: which others hard lags put before it, and after it but for facts. */
  readonly before: readonly Reach[]
  readonly after: readonly Reach[]
  /** Lags with a most, those from what comes first first. */
  readonly bounding: readonly LagModel[]
  /** Activities, those with most before them first. */
  readonly deepFirst: readonly Act[]
  /** Earliest start by activity, if everything before it is to fit. */
  readonly earliest: Float64Array
  /** How many activities come before each under hard lags. */
  readonly depth: Int32Array
}

/** Activities by index, and the least ticks between their starts and that of the one whose reach it is. */
export interface Reach {
  readonly acts: Int32Array
  readonly paths: Float64Array
}

export interface Act {
  readonly index: number
  readonly activity: Activity
  readonly place: number
  /** Place and where in it: what one pair of eyes can watch over. */
  readonly spot: number
  readonly atTable: boolean
  readonly road: boolean
  /** Earliest start and latest end, within horizon and now. */
  readonly from: Tick
  readonly to: Tick
  readonly delivery: DeliveryModel | undefined
  readonly vessel: number
  readonly groups: readonly number[]
  readonly modes: readonly ModeModel[]
  /** Index into the problem's modes for a fact, whose mode nobody told us. */
  readonly factMode: number
  readonly fact: Activity['fact']
  /** Shortest length any mode and team gives; a fact's own. */
  readonly minLen: number
  /** Longest length any mode and team gives; a fact's own. */
  readonly maxLen: number
  /** Servings (see `bitOf`) whose moments bound it: its own and those of what must come after it; and `ALWAYS`. */
  hangsOn: number
  /** Can last longer by choice. */
  readonly stretches: boolean
  /** Lags that end here, and lags that begin here. */
  readonly preds: LagModel[]
  readonly succs: LagModel[]
  /** By cook: where an attended piece of it may lie. */
  readonly stays: readonly (readonly Stretch[])[]
  /** The starts, first to last, at which a whole team could be there; none when it needs nobody. */
  readonly present: readonly Stretch[]
  /** When stays end in which an attended piece of it may lie. */
  readonly leaves: readonly Tick[]
  /** By cook: where a touch of it may lie. */
  readonly touchStays: readonly (readonly Stretch[])[]
  /** Who may ever touch it. */
  readonly touchCooks: readonly CookModel[]
  readonly lead: CookModel | undefined
  /** Last activities of dishes that hard lags put before this one, with the least ticks from their start to its start. */
  readonly heralds: { readonly last: Act; readonly path: number }[]
  readonly told: Told | undefined
  readonly spares: readonly SpareModel[]
}

/** The spares that bear on an activity (C9), by the index of their cook. */
export interface SpareModel {
  readonly cook: number
  readonly from: Tick
  readonly to: Tick
  readonly price: number
}

/** What cooks were told, and what it costs when it is not so. */
export interface Told {
  readonly start: Tick
  readonly mode: number
  readonly cooks: readonly CookId[]
  readonly price: number
  /** Moved only when forced. */
  readonly frozen: boolean
}

export interface LagModel {
  readonly from: Act
  readonly to: Act
  readonly fromEnd: boolean
  readonly least: number
  readonly most: number
  readonly safety: boolean
  /** Has a most that is a wish. */
  readonly priced: boolean
}

export interface ModeModel {
  readonly index: number
  readonly care: 'hands-on' | 'eye' | 'leave'
  readonly likely: number
  readonly upTo: number
  readonly touches: readonly TouchModel[]
  readonly uses: readonly UseModel[]
  readonly teams: readonly TeamModel[]
  /** The same, those that take as long together. */
  readonly crews: readonly Crew[]
  /** The rings that can serve its first ring use; undefined without one. */
  readonly rings: readonly number[] | undefined
}

export interface TouchModel {
  readonly index: number
  readonly when: 'in' | 'out' | 'every'
  readonly every: number
  readonly takes: number
  readonly lateBy: number
}

/** Teams that take equally long. */
export interface Crew {
  readonly len: number
  readonly teams: readonly TeamModel[]
}

/** Who attends, and how long it then takes. */
export interface TeamModel {
  readonly cooks: readonly CookModel[]
  readonly len: number
}

export interface UseModel {
  readonly kind: 'ring' | 'oven' | 'store'
  /** Indices of the kit that can serve it, the least wasteful first. */
  readonly kits: readonly number[]
  readonly amount: number
  readonly low: number
  readonly high: number
  readonly preheated: boolean
  readonly door: number
}

export interface CookModel {
  readonly index: number
  readonly id: CookId
  readonly host: boolean
  readonly eats: boolean
}

/** One ring, one oven or one store. */
export interface KitModel {
  readonly index: number
  readonly id: KitId
  readonly unit: number
  readonly kind: 'ring' | 'oven' | 'store'
  readonly capacity: number
  readonly up: number
  readonly down: number
  /** Ticks from 20 °C to its greatest temperature. */
  readonly heatUp: number
}

export interface ServingModel {
  readonly index: number
  readonly id: ServingId
  readonly kind: 'welcome' | 'first' | 'next'
  readonly earliest: Tick
  readonly hasEarliest: boolean
  /** Sit-down for the first, the latest for the welcome. */
  readonly wished: Tick
  readonly eating: number
  readonly clearing: number
  readonly pouring: number
  readonly ideal: readonly [number, number]
  readonly most: number
  readonly served: { readonly toTable: Tick; readonly platesOff: Tick | undefined } | undefined
}

export interface DeliveryModel {
  readonly index: number
  readonly id: DeliveryId
  readonly serving: ServingModel
  readonly early: number
  readonly late: number
  readonly most: number
  readonly safety: boolean
  readonly uses: readonly UseModel[]
  /** The same, when the dish waits already and nothing can be chosen. */
  readonly factUses: readonly UseModel[]
  readonly carry: { readonly most: number; readonly safety: boolean } | undefined
  readonly acts: Act[]
  /** The one activity that nothing of the dish follows; none when there are several, or when it is a fact. */
  last: Act | undefined
}

/** What never happens: a time before or after everything. */
export const NEVER = 1_000_000_000

/** A serving as one bit of a set; of more than 31, some share one. */
export const bitOf = (serving: number): number => 1 << (serving % 31)

/** A bit that no serving has: in every set. */
export const ALWAYS = 1 << 31
