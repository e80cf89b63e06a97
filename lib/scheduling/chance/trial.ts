import type { Problem } from '#lib/scheduling/problem.ts'
import type { Breach, Budget, Cost, Schedule } from '#lib/scheduling/schedule.ts'
import { type Simulated, simulate } from './chances.ts'

/** Each course is to be on time in so many cases of one; a point more, for chance. */
const WANTED = 0.96
const SAMPLES = 400
/** A point of chance for one course may cost as much as 12 s of missed table time, and all together as 10 min, but no table time. */
const WORTH = 400
const MOST = 200
/** How many of the steps that hold courses back are looked at. */
const BLAMED = 8

/** What the referee says of a schedule; null when it breaks a rule. */
export type Judge = (schedule: Schedule) => { readonly cost: Cost; readonly breaches: readonly Breach[] } | null

/** A schedule that the judge accepts. `short`: by how much its courses miss the wanted chance, in all; `broken`: ticks of broken wishes. */
export interface Judged {
  readonly schedule: Schedule
  readonly cost: Cost
  readonly broken: number
  readonly short: number
  readonly simulated: Simulated
}

export interface Trial {
  readonly problem: Problem
  readonly budget: Budget
  readonly judge: Judge
  /** What everything is measured against; none while that is being judged itself. */
  readonly start: Judged | undefined
  /** Schedules that may still be looked at. */
  tries: number
}

/** No more is to be looked at. */
export const isOver = ({ tries, budget }: Trial): boolean => tries <= 0 || budget.stop?.() === true

/** The schedule as the judge and the nights see it; null when refused, or when there are no tries left. */
export const tried = (task: Trial, schedule: Schedule | undefined): Judged | null => {
  if (!schedule || isOver(task)) return null
  task.tries--
  return judged(task, schedule)
}

/** As `tried`, at no cost. */
export const judged = ({ problem, budget, judge, start }: Trial, schedule: Schedule): Judged | null => {
  const verdict = judge(schedule)
  if (!verdict) return null
  const made = { schedule, cost: verdict.cost, broken: brokenBy(verdict.breaches) }
  if (start && !keeps(start, made)) return null
  const simulated = simulate(problem, schedule, { samples: SAMPLES, seed: budget.seed })
  const short = simulated.late.reduce((sum, { samples }) => sum + Math.max(0, WANTED - (1 - samples / SAMPLES)), 0)
  return { ...made, short, simulated }
}

const brokenBy = (breaches: readonly Breach[]): number => breaches.reduce((sum, { by }) => sum + by, 0)

/** M9: never a new broken wish, a step left out or less time at the table, and never dearer than the most a better chance is worth. */
const keeps = (start: Judged, made: Pick<Judged, 'cost' | 'broken'>): boolean =>
  made.cost.total <= start.cost.total + MOST &&
  made.broken <= start.broken &&
  (['safe', 'on-time', 'keeping', 'table'] as const).every((goal) => made.cost.goals[goal] <= start.cost.goals[goal])

/** M9: a better chance may cost something, no chance nothing. `short` as hoped for, when it is still to be made better. */
export const isWorth = ({ start }: Trial, made: Judged, short = made.short): boolean =>
  start === undefined || made.cost.total <= start.cost.total + Math.min(MOST, WORTH * (start.short - short))

/** Likelier by half a point in all, or as likely and cheaper. */
export const isBetter = (made: Judged, best: Judged): boolean =>
  made.short < best.short - 0.005 || (made.short <= best.short && made.cost.total < best.cost.total)

/** The steps that hold back courses which are late too often, the most often blamed first. */
export const mostBlamed = (problem: Problem, { late, samples }: Simulated): number[] => {
  const times = problem.activities.map(() => 0)
  for (const course of late)
    if (course.samples > (1 - WANTED) * samples)
      for (const [i, count] of course.heldBack.entries()) times[i] = (times[i] ?? 0) + count
  return times
    .map((count, i) => ({ count, i }))
    .filter(({ count }) => count > 0)
    .sort((a, b) => b.count - a.count)
    .slice(0, BLAMED)
    .map(({ i }) => i)
}
