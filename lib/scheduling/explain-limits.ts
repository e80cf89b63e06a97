import type { ActivityId } from './problem.ts'
import type { Cause } from './schedule.ts'

/** How many ticks later a placement may start before this breaks; never below 0. */
export interface Limit {
  readonly by: number
  readonly cause: Cause
}

/** What holds some of a capacity, and for whom. */
export interface Holder {
  readonly from: number
  readonly to: number
  readonly amount: number
  readonly activity: ActivityId
}

/** When moving its end later first meets a moment where others leave less than its own amount of room. */
export const crowdLimits = (others: readonly Holder[], room: number, end: number, cause: (id: ActivityId) => Cause): Limit[] =>
  others.flatMap((other) => {
    if (other.from < end) return []
    let sum = 0
    for (const one of others) if (one.from <= other.from && one.to > other.from) sum += one.amount
    return sum > room ? [{ by: other.from - end, cause: cause(other.activity) }] : []
  })
