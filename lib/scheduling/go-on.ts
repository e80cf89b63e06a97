import { compile } from './compile.ts'
import { copyOut } from './copy-out.ts'
import { startFrom } from './hint.ts'
import { improve } from './improve.ts'
import type { Problem } from './problem.ts'
import { randomFrom } from './random.ts'
import type { Budget, Schedule } from './schedule.ts'
import { leaveOutUnsafe } from './unsafe.ts'

/**
 * What the search makes of a known schedule for this problem without beginning anew as well: what was kept before is not lost
 * on the way, which with few steps matters more than what a new beginning might find.
 */
export const goOnFrom = (problem: Problem, schedule: Schedule, budget: Budget): Schedule => {
  const random = randomFrom(budget.seed)
  const state = startFrom(compile(problem), schedule, random)
  improve(state, budget, random)
  leaveOutUnsafe(state)
  return copyOut(state)
}
