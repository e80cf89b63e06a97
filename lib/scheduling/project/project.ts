/**
 * A project: activities of fixed length and one mode, stores that are full again when an activity is over, lags, and nothing
 * to pay for but when the last activity is over (RCPSP and RCPSP/max; the job shop is the case of stores of one).
 * Times are ticks from 0. Notation: Brucker et al. 1999, EJOR 112:3-41.
 */
export interface Project {
  /** Ticks, one for each activity, ≥ 0. */
  readonly lengths: Int32Array
  /** Each start is ≥ its `from`; each end is ≤ its `to`. */
  readonly from: Int32Array
  readonly to: Int32Array
  readonly lags: readonly ProjectLag[]
  readonly stores: readonly ProjectStore[]
}

/** start(to) ≥ start(from) + least. A maximum lag is one with its ends exchanged and a negative `least`. */
export interface ProjectLag {
  readonly from: number
  readonly to: number
  readonly least: number
}

/** What runs at the same time needs no more than `capacity`. `needs` has one amount for each activity. */
export interface ProjectStore {
  readonly capacity: number
  readonly needs: Int32Array
}

/** Activities that wait for each other in a circle, each named once in the order of the lags: their lags add up to more than 0. */
export type Circle = readonly number[]

/** When the last activity is over. */
export const spanOf = ({ lengths }: Project, starts: Int32Array): number => {
  let span = 0
  for (let i = 0; i < lengths.length; i++) span = Math.max(span, (starts[i] as number) + (lengths[i] as number))
  return span
}
