import type { Act, CookModel, ModeModel } from './model.ts'
import type { Tick } from './problem.ts'

/** One thing in its lane (of a cook, a kit or a group): it holds the lane in [from, to). */
export interface Item {
  readonly lane: Lane
  /** Index of the activity, or beyond the activities: a keeping or a vessel. */
  readonly who: number
  readonly from: Tick
  readonly to: Tick
  readonly kind: 'hands' | 'eye' | 'road' | 'hold'
  readonly spot: number
  /** Short enough to be done while keeping an eye on something. */
  readonly short: boolean
  readonly amount: number
  readonly low: number
  readonly high: number
  readonly door: number
  readonly touches: readonly Tick[]
}

export type Lane = Item[]

/** The lanes by index of cook, of kit and of group. */
export interface Lanes {
  readonly cookLanes: readonly Lane[]
  readonly kitLanes: readonly Lane[]
  readonly groupLanes: readonly Lane[]
}

/** A stretch of a cook's attention. */
export interface Piece {
  readonly cook: CookModel
  readonly from: Tick
  readonly to: Tick
  readonly hand: boolean
  readonly touch: boolean
  readonly up: boolean
}

export interface TouchPlace {
  readonly touch: number
  readonly at: Tick
  readonly takes: number
  readonly cook: CookModel
}

/** An activity in its place. */
export interface Place {
  readonly act: Act
  readonly mode: ModeModel
  readonly team: readonly CookModel[]
  readonly start: Tick
  readonly end: Tick
  /** Kit is held until then. */
  readonly holdEnd: Tick
  readonly touches: readonly TouchPlace[]
  /** One kit for each use; the vessel's ring is in `vesselKit`, here −1. */
  readonly kit: readonly number[]
  readonly vesselKit: number
  /** Touches of something running for which there is nobody. */
  readonly missing: number
  readonly pieces: readonly Piece[]
  /** Empty until it is first put. */
  readonly items: Item[]
}

/** A dish that waits for the table in [from, to). */
export interface Keep {
  readonly from: Tick
  readonly to: Tick
  readonly kit: readonly number[] | undefined
  /** There is no room for it beside what is planned. */
  readonly clash: boolean
  readonly items: readonly Item[]
}
