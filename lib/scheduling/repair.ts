import { compile } from './compile.ts'
import { copyOut } from './copy-out.ts'
import { startFrom } from './hint.ts'
import type { Problem } from './problem.ts'
import { randomFrom } from './random.ts'
import type { Schedule } from './schedule.ts'
import { leaveOutUnsafe } from './unsafe.ts'

/** The last schedule made to fit a problem that has changed, with few moves and without a search. Keeps every hard rule. */
export const repair = (problem: Problem, last: Schedule): Schedule => {
  const state = startFrom(compile(problem), last, randomFrom(1))
  leaveOutUnsafe(state)
  return copyOut(state)
}
