import type { Evening } from '#lib/domain/evening.ts'
import type { Chances } from '#lib/scheduling/chance/chances.ts'
import type { Activity, Problem, ServingId } from '#lib/scheduling/problem.ts'
import type { Cause, Schedule } from '#lib/scheduling/schedule.ts'
import type { Scene } from '#lib/scheduling/verify/scene.ts'
import type { Verdict } from '#lib/scheduling/verify/violation.ts'
import type { Beyond } from '#lib/scheduling/wait-free.ts'
import type { NightFacts } from './facts.ts'
import type { ProblemIndex } from './to-problem.ts'

/** Why a placement is where it is, and how many ticks later it may start. */
export interface Explained {
  readonly slack: number
  readonly because: readonly Cause[]
}

/** An evening with the schedule that was found for it and accepted: all that a running order is written from. */
export interface Planned {
  readonly evening: Evening
  readonly problem: Problem
  readonly index: ProblemIndex
  readonly facts: NightFacts
  readonly activities: ReadonlyMap<string, Activity>
  readonly schedule: Schedule
  readonly scene: Scene
  readonly verdict: Verdict
  readonly explained: ReadonlyMap<string, Explained>
  readonly chances: Chances
  /** Ticks that each serving can wait at no cost; null once it is served. */
  readonly waitFree: readonly { readonly serving: ServingId; readonly by: number | null }[]
  /** What gives first beyond that. */
  readonly waitBeyond: readonly { readonly serving: ServingId; readonly beyond: Beyond | null }[]
}
