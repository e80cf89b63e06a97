import type { Activity, Problem } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import { dice } from './dice.ts'

/**
 * The problem some way into its night, all as the schedule said until now but for one slip: something under way needs
 * longer, or the last thing that was to begin has not. The three ticks to come are frozen.
 */
export const nightOfProblem = (of: Problem, told: Schedule, seed: number): Problem => {
  const d = dice(seed)
  const now = d.int(3, Math.floor(of.horizon.to / 2) + 2)
  const placements = new Map(told.placements.map((placement) => [placement.activity, placement]))
  const begun = told.placements.filter(({ start }) => start < now)
  const forgotten = begun.length > 1 && d.chance(0.3) ? begun.at(-1)?.activity : undefined
  const slower = d.int(1, 5)
  const withFact = (activity: Activity): Activity => {
    const placement = placements.get(activity.id)
    if (activity.fact || !placement || placement.start >= now || activity.id === forgotten) return activity
    const { start, end, cooks } = placement
    if (end <= now) return { ...activity, fact: { kind: 'done', start, end, cooks } }
    return { ...activity, fact: { kind: 'running', start, atLeast: end - start + (forgotten ? 0 : slower), cooks } }
  }
  return {
    ...of,
    now,
    activities: of.activities.map(withFact),
    servings: of.servings.map((serving) => {
      const moment = told.servings.find((one) => one.serving === serving.id)?.toTable
      return moment === undefined || moment >= now ? serving : { ...serving, fact: { toTable: moment } }
    }),
    previous: told.placements.map(({ activity, start, mode, cooks }) => ({
      activity,
      start,
      mode,
      cooks,
      frozen: start >= now && start < now + 3,
    })),
  }
}

/** The planned activities whose start, mode or cooks are not as told. */
export const movedIn = (of: Problem, made: Schedule): string[] =>
  made.placements.flatMap(({ activity, start, mode, cooks }) => {
    const was = of.previous?.find((one) => one.activity === activity)
    const isFact = of.activities.some((one) => one.id === activity && one.fact)
    if (!was || isFact) return []
    const same = was.start === start && was.mode === mode && [...was.cooks].sort().join() === [...cooks].sort().join()
    return same ? [] : [activity]
  })
