import type { ActivityId, CookId, DeliveryId, KitId, Problem, ServingId, Tick } from './problem.ts'

export interface KitUse {
  readonly id: KitId
  /** Which of a ring kit's rings, 0..count − 1; 0 for every other kit. */
  readonly unit: number
}

/** One activity in its place. `kit` has one entry for each use of the mode, in their order. */
export interface Placement {
  readonly activity: ActivityId
  /** Index into the activity's modes. */
  readonly mode: number
  readonly start: Tick
  readonly end: Tick
  /** Attending cooks: as many as the mode asks when hands-on, one when eye, none when leave. */
  readonly cooks: readonly CookId[]
  readonly kit: readonly KitUse[]
  /** In the order of the mode's touches, an `every` touch as often as it occurs. */
  readonly touches: readonly { readonly touch: number; readonly at: Tick; readonly cook: CookId }[]
}

/** A finished dish waiting for the table, holding its keeping kit in [from, to). Listed when from < to. */
export interface Keeping {
  readonly delivery: DeliveryId
  readonly from: Tick
  readonly to: Tick
  readonly kit: readonly KitUse[]
}

/** An activity for which nothing hard leaves room. */
export interface LeftOut {
  readonly activity: ActivityId
  readonly because: 'no-cook' | 'no-kit' | 'safety'
}

export interface Schedule {
  /** In order of start, ties by activity id. */
  readonly placements: readonly Placement[]
  /** In the order of the problem's servings. */
  readonly servings: readonly { readonly serving: ServingId; readonly toTable: Tick }[]
  readonly keeping: readonly Keeping[]
  readonly left: readonly LeftOut[]
}

/** The eight goals, in order of importance. */
export const GOALS = ['safe', 'on-time', 'waits', 'keeping', 'table', 'calm', 'fresh', 'unchanged'] as const
export type GoalName = (typeof GOALS)[number]

/** What a schedule costs, goal by goal. `total` is their sum. All are ≥ 0; less is better. */
export interface Cost {
  readonly goals: Readonly<Record<GoalName, number>>
  readonly total: number
}

/** A broken wish, in the engine's terms. `by` in ticks, > 0; [from, to) is when. */
export type Breach =
  | { readonly kind: 'lag'; readonly lag: number; readonly from: Tick; readonly to: Tick; readonly by: number }
  | { readonly kind: 'keeps'; readonly delivery: DeliveryId; readonly from: Tick; readonly to: Tick; readonly by: number }
  | { readonly kind: 'carry'; readonly delivery: DeliveryId; readonly from: Tick; readonly to: Tick; readonly by: number }
  | { readonly kind: 'wait'; readonly serving: ServingId; readonly from: Tick; readonly to: Tick; readonly by: number }
  | { readonly kind: 'sit-down'; readonly serving: ServingId; readonly from: Tick; readonly to: Tick; readonly by: number }

/** What would break if a placement started a tick later (or, for `now` and windows, cannot be otherwise). */
export type Cause =
  | { readonly kind: 'after'; readonly activity: ActivityId }
  | { readonly kind: 'kit'; readonly kit: KitId; readonly activity: ActivityId }
  | { readonly kind: 'oven'; readonly kit: KitId; readonly activity: ActivityId }
  | { readonly kind: 'cook'; readonly cook: CookId; readonly activity: ActivityId }
  | { readonly kind: 'serving'; readonly serving: ServingId }
  | { readonly kind: 'window' }
  | { readonly kind: 'presence'; readonly cook: CookId }
  | { readonly kind: 'now' }

/** How much work a solve may do. Steps are insertions tried, so a budget means the same on every machine. */
export interface Budget {
  readonly steps: number
  readonly seed: number
  /** Asked now and then; true ends the search with the best so far. The caller's clock, if any, lives here. */
  readonly stop?: () => boolean
}

/** The engine's whole interface: a problem in, always a schedule out. */
export type Solve = (problem: Problem, budget: Budget, hint?: Schedule) => Schedule
