import type { Problem } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'

/** Ticks in which all hosts are away but for plating bursts, by the referee: what is priced when nothing else is. */
export const awayTicks = (problem: Problem, schedule: Schedule): number => {
  const { weights } = problem
  const free = { ...weights, missed: 0, meal: 0, unfair: 0, lead: 0, allAway: 1 }
  return verify({ ...problem, weights: free }, schedule).cost.goals.table
}
