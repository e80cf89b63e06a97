import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { chances } from '#lib/scheduling/chance/chances.ts'
import { sturdier } from '#lib/scheduling/chance/sturdier.ts'
import { explain } from '#lib/scheduling/explain.ts'
import type { Problem } from '#lib/scheduling/problem.ts'
import type { Budget, Schedule } from '#lib/scheduling/schedule.ts'
import { DEFAULT_BUDGET_STEPS, ENGINE, solve } from '#lib/scheduling/solve.ts'
import { sceneOf } from '#lib/scheduling/verify/scene.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import type { Violation } from '#lib/scheduling/verify/violation.ts'
import { waitBeyond, waitFree } from '#lib/scheduling/wait-free.ts'
import { gatherFacts } from './facts.ts'
import { problemHash } from './hash.ts'
import { toHint } from './hint.ts'
import { type ProblemIndex, type ProblemOptions, toProblem } from './to-problem.ts'
import { toRunningOrder } from './to-running-order.ts'

export { ENGINE }

/** Enough for a good order of a dinner of some 50 steps, and the same one everywhere. */
export const DEFAULT_BUDGET: Budget = { steps: DEFAULT_BUDGET_STEPS, seed: 1 }

/** Nights that the chances are reckoned from: good to 1.6 points, and to 3 in a first order, which is wanted at once. */
const SAMPLES = { whole: 1000, quick: 300 }

export interface OrderOptions extends ProblemOptions {
  readonly budget: Budget
}

export interface PlanOptions extends OrderOptions {
  /** An order to begin the search from. Unlike `previous`, nothing is priced by it. */
  readonly hint?: RunningOrder
  /** The first good order will do: no planning again for a better chance. */
  readonly quick?: boolean
}

/**
 * Plans an evening. The same evening, options, seed and steps give the same order, unless `budget.stop` ended the
 * search. Throws when the engine made a schedule that the verifier refuses: a bug, and never shown.
 */
export const planEvening = (evening: Evening, options: PlanOptions): RunningOrder => {
  const made = toProblem(evening, options)
  const known = options.hint ?? options.previous
  const start = known && toHint(made.problem, made.index, known)
  return write(evening, made, options, scheduleFor(made.problem, options, start))
}

/** The share of the steps that goes to the search alone when a better chance is to be looked for too. */
const SEARCH = 0.8

/** With fewer steps than that the search needs them all. */
const FEW = 400

/** The search, and then what makes it likelier that the courses are on time, judged by the verifier. */
const scheduleFor = (problem: Problem, { budget, quick }: PlanOptions, start: Schedule | undefined): Schedule => {
  if (quick || budget.steps < FEW) return solve(problem, budget, start)
  const steps = Math.ceil(budget.steps * SEARCH)
  const found = solve(problem, { ...budget, steps }, start)
  return sturdier(problem, found, { ...budget, steps: budget.steps - steps }, (schedule) => {
    const verdict = verify(problem, schedule)
    return verdict.violations.length > 0 ? null : verdict
  })
}

/** The running order of a schedule that was found elsewhere for this evening and these options. Throws when the verifier refuses it. */
export const orderOf = (evening: Evening, options: OrderOptions, schedule: Schedule): RunningOrder =>
  write(evening, toProblem(evening, options), options, schedule)

const write = (
  evening: Evening,
  { problem, index }: { problem: Problem; index: ProblemIndex },
  { budget, quick }: PlanOptions,
  schedule: Schedule,
): RunningOrder => {
  const verdict = verify(problem, schedule)
  if (verdict.violations.length > 0)
    throw new Error(`the engine broke its own rules: ${verdict.violations.map(inWords).join('; ')}`)
  const planned = {
    evening,
    problem,
    index,
    facts: gatherFacts(evening),
    activities: new Map(problem.activities.map((activity) => [activity.id, activity])),
    schedule,
    scene: sceneOf(problem, schedule),
    verdict,
    explained: explain(problem, schedule),
    chances: chances(problem, schedule, { samples: SAMPLES[quick ? 'quick' : 'whole'], seed: budget.seed }),
    waitFree: waitFree(problem, schedule),
    waitBeyond: waitBeyond(problem, schedule),
  }
  return toRunningOrder(planned, { hash: problemHash(evening), engine: ENGINE, seed: budget.seed, budget: budget.steps })
}

const inWords = ({ rule, activities, kit, cooks, at, why }: Violation): string =>
  [rule, why.what, ...activities, ...kit, ...cooks, `at tick ${at}`].join(' ')
