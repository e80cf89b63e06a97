import { ticksUp } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Clash, RunningOrder } from '#lib/domain/running-order.ts'
import { epochMsOfTick, msOfInstant } from '#lib/domain/time.ts'
import type { Wish } from '#lib/scheduling/fight-relax.ts'
import { goOnFrom } from '#lib/scheduling/go-on.ts'
import type { Breach, Budget } from '#lib/scheduling/schedule.ts'
import { solve } from '#lib/scheduling/solve.ts'
import { sceneOf } from '#lib/scheduling/verify/scene.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { toHint } from './hint.ts'
import { missedTicks } from './table-time.ts'
import { type ProblemIndex, type ProblemOptions, toProblem } from './to-problem.ts'

/** What an order comes to: its clashes by name with their ticks, how long the cooks together miss at the table, and when steps begin in ms. */
export interface Outcome {
  readonly clashes: ReadonlyMap<string, number>
  readonly missed: number
  readonly starts: ReadonlyMap<string, number>
}

export const lagKey = (after: string | undefined, step: string | undefined): string => `lag ${after} ${step}`

/** Names a clash: the same for the same one in another order of the evening. */
export const clashKey = (clash: Clash): string => {
  switch (clash.kind) {
    case 'lag':
      return lagKey(clash.steps[0], clash.steps[1])
    case 'keeps':
    case 'carry':
      return `${clash.kind} ${clash.dish}`
    case 'wait':
    case 'sit-down':
      return `${clash.kind} ${clash.course}`
    case 'safety':
    case 'no-cook':
    case 'no-kit':
      return `left ${clash.steps[0]}`
  }
}

/** As `clashKey`, of a wish, broken or not. */
export const wishName = (index: ProblemIndex, wish: Breach | Wish): string => {
  switch (wish.kind) {
    case 'lag': {
      const of = index.lags[wish.lag]
      return lagKey(of?.after, of?.step)
    }
    case 'keeps':
    case 'carry':
      return `${wish.kind} ${wish.delivery}`
    case 'wait':
    case 'sit-down':
      return `${wish.kind} ${wish.serving}`
  }
}

/** Ticks by name, added up. */
export const gather = (entries: readonly (readonly [key: string, ticks: number])[]): ReadonlyMap<string, number> => {
  const sums = new Map<string, number>()
  for (const [key, ticks] of entries) sums.set(key, (sums.get(key) ?? 0) + ticks)
  return sums
}

/** The first of each. */
const firsts = (starts: readonly (readonly [step: string, ms: number])[]): ReadonlyMap<string, number> =>
  new Map(starts.toSorted((a, b) => b[1] - a[1]))

export const outcomeOf = (order: RunningOrder): Outcome => ({
  clashes: gather(
    order.clashes.map((clash) => [clashKey(clash), clashKey(clash).startsWith('left') ? 1 : ticksUp(clash.by)] as const),
  ),
  missed: order.cooks.reduce((sum, { missed }) => sum + ticksUp(missed), 0),
  starts: firsts(order.cues.map(({ step, start }) => [step, msOfInstant(start)] as const)),
})

export interface ReplanOptions extends ProblemOptions {
  readonly budget: Budget
  /** What the search goes on from, and from nothing else. */
  readonly from?: RunningOrder
  /** What the search begins from beside nothing, as it does when a changed evening is planned for the screen. */
  readonly hint?: RunningOrder
}

/** Plans an evening as far as its clashes and missed minutes need. Null when the verifier refuses what came of it. */
export const replan = (evening: Evening, { budget, from, hint, ...options }: ReplanOptions): Outcome | null => {
  const { problem, index } = toProblem(evening, options)
  const schedule = from
    ? goOnFrom(problem, toHint(problem, index, from), budget)
    : solve(problem, budget, hint && toHint(problem, index, hint))
  const { violations, breaches } = verify(problem, schedule)
  if (violations.length > 0) return null
  return {
    clashes: gather([
      ...schedule.left.map(({ activity }) => [`left ${index.activities.get(activity)?.step.id}`, 1] as const),
      ...breaches.map((breach) => [wishName(index, breach), breach.by] as const),
    ]),
    missed: missedTicks(problem, sceneOf(problem, schedule)),
    starts: firsts(
      schedule.placements.flatMap(({ activity, start }) => {
        const step = index.activities.get(activity)?.step.id
        return step === undefined ? [] : [[step, epochMsOfTick(evening, start)] as const]
      }),
    ),
  }
}
