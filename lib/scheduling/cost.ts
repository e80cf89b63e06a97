import { calm } from './goals/calm.ts'
import { fresh } from './goals/fresh.ts'
import { keeping } from './goals/keeping.ts'
import { onTime } from './goals/on-time.ts'
import { safe } from './goals/safe.ts'
import { table } from './goals/table.ts'
import { unchanged } from './goals/unchanged.ts'
import { waits } from './goals/waits.ts'
import type { Problem } from './problem.ts'
import { type Cost, GOALS, type Schedule } from './schedule.ts'

/** What a schedule costs, goal by goal (C1–C8), worked out from nothing but the problem and the schedule. */
export const cost = (problem: Problem, schedule: Schedule): Cost => {
  const goals = {
    safe: safe(problem, schedule),
    'on-time': onTime(problem, schedule),
    waits: waits(problem, schedule),
    keeping: keeping(problem, schedule),
    table: table(problem, schedule),
    calm: calm(problem, schedule),
    fresh: fresh(problem, schedule),
    unchanged: unchanged(problem, schedule),
  }
  return { goals, total: GOALS.reduce((sum, goal) => sum + goals[goal], 0) }
}
