import type { Fact, Tick } from './problem.ts'

/** When it was over; what is under way is over no earlier than now and than it must. */
export const factEnd = (fact: Fact, now: Tick): Tick =>
  fact.kind === 'done' ? fact.end : Math.max(now, fact.start + fact.atLeast)
