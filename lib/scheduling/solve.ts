import { compile } from './compile.ts'
import { construct, putOff } from './construct.ts'
import { copyOut } from './copy-out.ts'
import { startFrom } from './hint.ts'
import { compete } from './improve.ts'
import { planProject } from './project/plan-project.ts'
import { randomFrom } from './random.ts'
import type { Schedule, Solve } from './schedule.ts'
import { toldSchedule } from './told.ts'
import { leaveOutUnsafe } from './unsafe.ts'

/** Which engine made a schedule. */
export const ENGINE = 'quick/1'

/** Insertions tried: about a second for an evening of 60 steps on one core of a small server. */
export const DEFAULT_BUDGET_STEPS = 30_000

/**
 * A schedule for every problem: compile → construct, and put servings off when something has no room → repair the hint or
 * what was told, if any, and go on from the cheapest → improve → leave out what would be unsafe → copy out. The same
 * problem, hint, seed and steps give the same.
 */
export const solve: Solve = (problem, budget, hint) => {
  const project = planProject(problem, budget)
  if (project) return project
  const random = randomFrom(budget.seed)
  const model = compile(problem)
  const known = [hint ?? toldSchedule(problem)].flatMap((one: Schedule | undefined) =>
    one ? [startFrom(model, one, randomFrom(1))] : [],
  )
  const wished = construct(model, random)
  const later = putOff(wished, random)
  if (later !== wished) wished.steps = 0
  const state = compete([...known, ...new Set([later, wished])], budget, random)
  leaveOutUnsafe(state)
  return copyOut(state)
}
