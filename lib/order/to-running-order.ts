import { ORDER_FORMAT, type RunningOrder } from '#lib/domain/running-order.ts'
import { instantOfTick } from '#lib/domain/time.ts'
import { GOALS } from '#lib/scheduling/schedule.ts'
import { clashesOf } from './clashes.ts'
import { coursesOf, keepingOf } from './courses.ts'
import { cuesOf } from './cues.ts'
import { ovensOf } from './oven-line.ts'
import type { Planned } from './planned.ts'
import { allHostsAway, cooksOf } from './table-time.ts'

/** The running order in kitchen terms and clock time. Ways out are not worked out here. */
export const toRunningOrder = (planned: Planned, of: RunningOrder['of']): RunningOrder => ({
  format: ORDER_FORMAT,
  evening: planned.evening.id,
  of,
  origin: instantOfTick(planned.evening, 0),
  zone: planned.evening.zone,
  cues: cuesOf(planned),
  keeping: keepingOf(planned),
  courses: coursesOf(planned),
  ovens: ovensOf(planned),
  cooks: cooksOf(planned),
  allHostsAway: allHostsAway(planned),
  goals: GOALS.map((goal) => ({ goal, cost: planned.verdict.cost.goals[goal] })),
  total: planned.verdict.cost.total,
  clashes: clashesOf(planned),
  proof: { kind: 'none' },
})
