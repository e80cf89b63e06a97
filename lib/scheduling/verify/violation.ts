import type { ActivityId, CookId, DeliveryId, KitId, ServingId, Tick } from '#lib/scheduling/problem.ts'
import type { Breach, Cost } from '#lib/scheduling/schedule.ts'

/** The hard rules of docs/spec.md, section H. */
export type RuleId = `H${1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9 | 10 | 11 | 12 | 13 | 14 | 15 | 16 | 17 | 18 | 20}`

/** What is wrong, in one word for a machine and two numbers for a person. */
export interface Why {
  readonly what:
    | 'missing'
    | 'unknown'
    | 'twice'
    | 'order'
    | 'moved'
    | 'early'
    | 'late'
    | 'length'
    | 'crowd'
    | 'unclaimed'
    | 'overlap'
    | 'elsewhere'
    | 'absent'
    | 'unfit'
    | 'other-ring'
    | 'full'
    | 'ramp'
    | 'door'
    | 'too-long'
    | 'apart'
  readonly wanted?: number
  readonly found?: number
}

/** One broken rule, once, with everything that takes part in it. */
export interface Violation {
  readonly rule: RuleId
  readonly activities: readonly ActivityId[]
  readonly cooks: readonly CookId[]
  readonly kit: readonly KitId[]
  readonly servings: readonly ServingId[]
  readonly deliveries: readonly DeliveryId[]
  readonly at: Tick
  readonly why: Why
}

/** A schedule is good when it has no violations; `cost` and `breaches` follow the definitions, not the engine. */
export interface Verdict {
  readonly violations: readonly Violation[]
  readonly cost: Cost
  readonly breaches: readonly Breach[]
}

/** A violation with only the parties that it has. */
export const violation = (rule: RuleId, at: Tick, why: Why, parties: Partial<Violation>): Violation => ({
  rule,
  activities: [],
  cooks: [],
  kit: [],
  servings: [],
  deliveries: [],
  ...parties,
  at,
  why,
})
