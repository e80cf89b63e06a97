import { goOnFrom } from '#lib/scheduling/go-on.ts'
import type { ActivityId, Problem } from '#lib/scheduling/problem.ts'
import { repair } from '#lib/scheduling/repair.ts'
import type { Budget, Schedule } from '#lib/scheduling/schedule.ts'
import { LEVELS, lengthened, shortened } from './lengthen.ts'
import { later, likelier, swapped } from './slides.ts'
import { isBetter, isWorth, type Judge, judged, mostBlamed, type Trial } from './trial.ts'

/** Rounds of planning again, and the share of the steps that each has. */
const ROUNDS = 4
const SHARE = 0.15
/** Each stage may look at a schedule for so many steps of the budget. */
const STEPS_A_TRY = 12

/**
 * A plan that is likelier to keep its times, where that is cheap: slide the steps that most often hold courses back, put
 * what is in their way before them, plan again with more time for the worst, each time keeping the best simulated (M8).
 * Post: what M9 says. The same problem, schedule, seed and steps give the same; `budget.stop` ends it early.
 */
export const sturdier = (problem: Problem, first: Schedule, budget: Budget, judge: Judge): Schedule => {
  const start = judged({ problem, budget, judge, start: undefined, tries: 0 }, first)
  if (!start) return first
  const tries = Math.ceil(budget.steps / STEPS_A_TRY)
  const trial: Trial = { problem, budget, judge, start, tries }
  let best = likelier(trial, start)
  trial.tries = tries
  best = swapped(trial, best)
  const given = new Map<ActivityId, number>()
  for (let round = 0; round < ROUNDS && best.short > 0 && !budget.stop?.(); round++) {
    const raised = raise(problem, mostBlamed(problem, best.simulated), given)
    if (!raised) break
    const share = { ...budget, steps: Math.floor(budget.steps * SHARE), seed: budget.seed + round }
    const longer = goOnFrom(lengthened(problem, new Map([raised])), best.schedule, share)
    const made = judged(trial, repair(problem, shortened(problem, longer)))
    trial.tries = Math.ceil(tries / ROUNDS)
    const slid = made && isWorth(trial, made, 0) ? likelier(trial, made) : null
    if (slid && isBetter(slid, best) && isWorth(trial, slid)) best = slid
  }
  trial.tries = tries
  return best === start ? first : later(trial, best).schedule
}

/** The most blamed step that has not been given all the time it may need, with the next share of cases to plan it for. */
const raise = (
  problem: Problem,
  blamed: readonly number[],
  given: Map<ActivityId, number>,
): readonly [ActivityId, number] | undefined => {
  for (const number of blamed) {
    const id = problem.activities[number]?.id
    const next = id === undefined ? 0 : (given.get(id) ?? -1) + 1
    const level = LEVELS[next]
    if (id === undefined || level === undefined) continue
    given.set(id, next)
    return [id, level]
  }
  return undefined
}
