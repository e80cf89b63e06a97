import type { Problem } from './problem.ts'
import type { Schedule } from './schedule.ts'

/** What cooks were last told, as far as it is a schedule: lengths are the modes' own, servings as early as they may be. */
export const toldSchedule = (problem: Problem): Schedule | undefined => {
  if (!problem.previous || problem.previous.length === 0) return undefined
  const modes = new Map(problem.activities.map((activity) => [activity.id, activity.modes]))
  return {
    placements: problem.previous.map(({ activity, start, mode, cooks }) => ({
      activity,
      mode,
      start,
      end: start + (modes.get(activity)?.[mode]?.likely ?? 0),
      cooks,
      kit: [],
      touches: [],
    })),
    servings: [],
    keeping: [],
    left: [],
  }
}
