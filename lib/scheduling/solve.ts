import { compile } from './compile.ts'
import { construct, firstStuck, putOff } from './construct.ts'
import { copyOut } from './copy-out.ts'
import { startFrom } from './hint.ts'
import { improve, search } from './improve.ts'
import { price } from './price.ts'
import { randomFrom } from './random.ts'
import type { Schedule, Solve } from './schedule.ts'
import { toldSchedule } from './told.ts'
import { leaveOutUnsafe } from './unsafe.ts'

/** Which engine made a schedule. */
export const ENGINE = 'quick/1'

/** Insertions tried: some 0.3 to 0.5 s for an evening of 40 steps on one core of a small server. */
export const DEFAULT_BUDGET_STEPS = 10_000

/** The share of the steps spent on finding room at the wished moments before servings are put off. */
const FIRST_TRY = 0.15

/**
 * A schedule for every problem: compile → construct, and put servings off when something has no room → repair the hint or
 * what was told, if any, and go on from the cheapest → improve → leave out what would be unsafe → copy out. The same
 * problem, hint, seed and steps give the same.
 */
export const solve: Solve = (problem, budget, hint) => {
  const random = randomFrom(budget.seed)
  const model = compile(problem)
  const known = [hint, toldSchedule(problem)].flatMap((one: Schedule | undefined) => (one ? [startFrom(model, one, random)] : []))
  const wished = construct(model, random)
  if (firstStuck(wished) >= 0) search(wished, { ...budget, steps: wished.steps + budget.steps * FIRST_TRY }, random)
  const state = [putOff(wished, random), ...known].reduce((best, other) => (price(other) < price(best) ? other : best))
  improve(state, budget, random)
  leaveOutUnsafe(state)
  return copyOut(state)
}
