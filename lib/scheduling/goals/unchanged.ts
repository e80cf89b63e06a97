import { placedOf } from '#lib/scheduling/placed.ts'
import type { Problem } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'

/** C8: what cooks were told stays as it was; what they were told to do now above all. */
export const unchanged = (problem: Problem, schedule: Schedule): number => {
  const told = new Map((problem.previous ?? []).map((previous) => [previous.activity, previous]))
  return placedOf(problem, schedule).reduce((sum, { activity, placement }) => {
    const before = told.get(activity.id)
    if (!before || activity.fact) return sum
    const sameCooks = sorted(before.cooks) === sorted(placement.cooks)
    if (before.start === placement.start && before.mode === placement.mode && sameCooks) return sum
    return sum + problem.weights.moved * (before.frozen ? 10 : 1)
  }, 0)
}

const sorted = (cooks: readonly string[]): string => [...cooks].sort().join('\n')
