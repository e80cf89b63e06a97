import { compile } from './compile.ts'
import { construct } from './construct.ts'
import { copyOut } from './copy-out.ts'
import { startFrom } from './hint.ts'
import { improve } from './improve.ts'
import { price } from './price.ts'
import { randomFrom } from './random.ts'
import type { Schedule, Solve } from './schedule.ts'
import { toldSchedule } from './told.ts'
import { leaveOutUnsafe } from './unsafe.ts'

/** Which engine made a schedule. */
export const ENGINE = 'quick/1'

/** Insertions tried; an evening of 40 steps takes about 0.4 s with it on one 2 GHz core. */
export const DEFAULT_BUDGET_STEPS = 10_000

/**
 * A schedule for every problem: compile → construct → repair the hint or what was told, if any, and go on from the
 * cheaper → improve → leave out what would be unsafe → copy out. The same problem, hint, seed and steps give the same.
 */
export const solve: Solve = (problem, budget, hint) => {
  const random = randomFrom(budget.seed)
  const model = compile(problem)
  const starts = [hint, toldSchedule(problem)].flatMap((known: Schedule | undefined) =>
    known ? [startFrom(model, known, random)] : [],
  )
  const state = [construct(model, random), ...starts].reduce((best, other) => (price(other) < price(best) ? other : best))
  improve(state, budget, random)
  leaveOutUnsafe(state)
  return copyOut(state)
}
