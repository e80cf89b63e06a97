import type { Clash } from '#lib/domain/running-order.ts'
import type { Demand } from '#lib/scheduling/fight-relax.ts'
import type { Problem } from '#lib/scheduling/problem.ts'
import { clashKey, wishName } from './replan.ts'
import type { ProblemIndex } from './to-problem.ts'

/** A fight in kitchen terms: ids of steps, dishes and courses, each list without repeats. */
export interface KitchenFight {
  /** Everybody who takes part. */
  readonly steps: readonly string[]
  /** Who holds kit, and of which kind: ring, oven, or the class of a store. A dish holds it while it waits for the table. */
  readonly kit: readonly { readonly by: { readonly step: string } | { readonly dish: string }; readonly of: string }[]
  /** Steps whose cooks are wanted elsewhere. */
  readonly attended: readonly string[]
  /** Steps that may not begin so early. */
  readonly early: readonly string[]
  readonly lags: readonly { readonly step: string; readonly after: string }[]
  /** Dishes that would have to keep longer, or to be longer on their way. */
  readonly kept: readonly string[]
  /** The wishes, as clashes of them are named. */
  readonly keys: readonly string[]
  /** Courses that would have to come later. */
  readonly courses: readonly string[]
}

/** What was found to fight, in kitchen terms. */
export const inKitchen = (problem: Problem, index: ProblemIndex, fight: readonly Demand[]): KitchenFight => {
  const stepOf = (activity: string | undefined) => index.activities.get(activity ?? '')?.step.id
  const wishes = fight.flatMap((demand) => (demand.kind === 'wish' ? [demand.wish] : []))
  const lags = wishes.flatMap((wish) => (wish.kind === 'lag' ? (index.lags[wish.lag] ?? []) : []))
  const kit = fight.flatMap((demand): KitchenFight['kit'] => {
    if (demand.kind !== 'kit') return []
    if ('delivery' in demand.by) return [{ by: { dish: demand.by.delivery }, of: demand.of }]
    const step = stepOf(demand.by.activity)
    return step === undefined ? [] : [{ by: { step }, of: demand.of }]
  })
  const stepsOf = (kind: 'cooks' | 'from') =>
    fight.flatMap((demand) => (demand.kind === kind ? (stepOf(demand.activity) ?? []) : []))
  const [attended, early] = [stepsOf('cooks'), stepsOf('from')]
  const kept = wishes.flatMap((wish) => ('delivery' in wish ? [wish.delivery] : []))
  const last = problem.activities.filter(({ delivery }) => kept.includes(delivery ?? '')).map(({ id }) => id)
  const ends = last.filter((id) => !problem.lags.some((lag) => lag.from === id && last.includes(lag.to)))
  const steps = [
    ...lags.flatMap(({ after, step }) => [after, step]),
    ...kit.flatMap(({ by }) => ('step' in by ? [by.step] : [])),
    ...attended,
    ...early,
    ...ends.flatMap((id) => stepOf(id) ?? []),
  ]
  return {
    steps: unique(steps),
    kit: kit.filter((one, at) => kit.findIndex((other) => JSON.stringify(other) === JSON.stringify(one)) === at),
    attended: unique(attended),
    early: unique(early),
    lags: lags.filter((one, at) => lags.findIndex((other) => other?.step === one.step && other.after === one.after) === at),
    kept: unique(kept),
    keys: unique(wishes.map((wish) => wishName(index, wish))),
    courses: unique(wishes.flatMap((wish) => ('serving' in wish ? [wish.serving] : []))),
  }
}

/** Whether what a clash breaks is one of the wishes that fight. */
export const takesPart = (clash: Clash, fight: KitchenFight): boolean => fight.keys.includes(clashKey(clash))

/** What is known of a clash without a fight: what it names, any of which may be the reason. */
export const ofClash = (clash: Clash, kitKind: string | null): KitchenFight => {
  const [after, step] = clash.steps
  const holds = kitKind === null ? [] : clash.steps.map((id) => ({ by: { step: id }, of: kitKind }))
  return {
    steps: clash.steps,
    kit: holds,
    attended: clash.steps,
    early: clash.steps,
    lags: clash.kind === 'lag' && after !== undefined && step !== undefined ? [{ step, after }] : [],
    kept: (clash.kind === 'keeps' || clash.kind === 'carry') && clash.dish !== null ? [clash.dish] : [],
    keys: [clashKey(clash)],
    courses: clash.course === null ? [] : [clash.course],
  }
}

const unique = (ids: readonly string[]): string[] => [...new Set(ids)]
