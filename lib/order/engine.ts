import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { explain } from '#lib/scheduling/explain.ts'
import type { Budget } from '#lib/scheduling/schedule.ts'
import { DEFAULT_BUDGET_STEPS, ENGINE, solve } from '#lib/scheduling/solve.ts'
import { sceneOf } from '#lib/scheduling/verify/scene.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import type { Violation } from '#lib/scheduling/verify/violation.ts'
import { gatherFacts } from './facts.ts'
import { problemHash } from './hash.ts'
import { type ProblemOptions, toProblem } from './to-problem.ts'
import { toRunningOrder } from './to-running-order.ts'

export { ENGINE }

/** Enough for a good order of a dinner of some 50 steps, and the same one everywhere. */
export const DEFAULT_BUDGET: Budget = { steps: DEFAULT_BUDGET_STEPS, seed: 1 }

export interface PlanOptions extends ProblemOptions {
  readonly budget: Budget
}

/**
 * Plans an evening. The same evening, options, seed and steps give the same order, unless `budget.stop` ended the
 * search. Throws when the engine made a schedule that the verifier refuses: a bug, and never shown.
 */
export const planEvening = (evening: Evening, options: PlanOptions): RunningOrder => {
  const { problem, index } = toProblem(evening, options)
  const schedule = solve(problem, options.budget)
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
  }
  const { steps, seed } = options.budget
  return toRunningOrder(planned, { hash: problemHash(evening), engine: ENGINE, seed, budget: steps })
}

const inWords = ({ rule, activities, kit, cooks, at, why }: Violation): string =>
  [rule, why.what, ...activities, ...kit, ...cooks, `at tick ${at}`].join(' ')
