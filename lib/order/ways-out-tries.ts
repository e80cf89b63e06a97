import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import type { Budget } from '#lib/scheduling/schedule.ts'
import { applyRemedy, type Change } from './apply-remedy.ts'
import type { Ladder } from './remedies.ts'
import { type Outcome, replan } from './replan.ts'
import type { ProblemOptions } from './to-problem.ts'

/** Steps that are enough for some two clashes that have nothing to do with each other. */
export const WAYS_STEPS = 120_000

/** How a change is tried: going on from the order, or beginning anew; for the last word as the screen plans it, and twice anew. */
type Manner = 'on' | 'anew' | 'shown' | 'sure' | 'again'
const STEPS: Readonly<Record<Manner, number>> = { on: 600, anew: 2_000, shown: 4_000, sure: 8_000, again: 8_000 }
/** Added to the seed. */
const OTHER: Readonly<Record<Manner, number>> = { on: 0, anew: 1, shown: 0, sure: 0, again: 2 }
/** With a smaller budget each try is smaller, down to this share. */
const LEAST_SHARE = 0.5

/** The steps that trying may spend, and what was tried: a change that two clashes ask for is tried once. */
export interface Tries {
  /** What becomes of the evening with a change; null when there are no steps left for it. */
  readonly try: (change: Change, manner: Manner) => Outcome | null
  readonly spend: (steps: number) => void
  readonly spent: () => number
  /** Allows the next clash its share of the steps that are left, with so many clashes to come. */
  readonly share: (clashes: number) => void
  readonly isOver: () => boolean
}

export const openTries = (evening: Evening, order: RunningOrder, of: ProblemOptions, budget: Budget): Tries => {
  const share = Math.min(1, Math.max(LEAST_SHARE, budget.steps / WAYS_STEPS))
  let spent = 0
  let limit = budget.steps
  const known = new Map<string, Outcome | null>()
  const isStopped = () => budget.stop?.() ?? false
  const isOver = () => spent >= limit || isStopped()
  return {
    isOver,
    spent: () => spent,
    spend: (steps) => {
      spent += steps
    },
    share: (clashes) => {
      limit = spent + Math.max(0, budget.steps - spent) / clashes
    },
    try: (change, manner) => {
      const key = `${manner} ${JSON.stringify(change)}`
      const before = known.get(key)
      if (before !== undefined) return before
      if (isOver()) return null
      const steps = STEPS[manner] * share
      spent += steps
      const from = manner === 'on' ? { from: order } : manner === 'shown' ? { hint: order } : {}
      const outcome = replan(applyRemedy(evening, change), {
        ...of,
        ...from,
        budget: { ...budget, steps, seed: budget.seed + OTHER[manner] },
      })
      // What was stopped half way says nothing.
      if (isStopped()) return null
      known.set(key, outcome)
      return outcome
    },
  }
}

/**
 * The lowest rung that helps, and what it comes to: where the lowest does not, the highest and then halfway between, as what
 * helps with a little helps with more. It must help when planned as the screen plans it, where the order that is shown may lead
 * to a cheaper one, and from nothing by two searches; else a higher one.
 */
export const climb = (
  tries: Tries,
  ladder: Ladder,
  helps: (outcome: Outcome) => boolean,
): { readonly change: Change; readonly missed: number; readonly starts: Outcome['starts'] } | null => {
  const tried = (rung: number, manner: Manner): Outcome | null => {
    const change = ladder[rung]
    const outcome = change ? tries.try(change, manner) : null
    return outcome && helps(outcome) ? outcome : null
  }
  const works = (rung: number) => tried(rung, 'on') ?? tried(rung, 'anew')
  let high = 0
  if (!works(0)) {
    let low = 0
    high = ladder.length - 1
    if (high === 0 || !works(high)) return null
    while (high - low > 1) {
      const middle = (low + high) >> 1
      if (works(middle)) high = middle
      else low = middle
    }
  }
  for (let rung = high; rung < ladder.length; rung++) {
    const change = ladder[rung]
    const shown = tried(rung, 'shown')
    const sure = shown && tried(rung, 'sure')
    const again = sure && tried(rung, 'again')
    if (change && shown && sure && again)
      return { change, missed: Math.min(shown.missed, sure.missed, again.missed), starts: shown.starts }
  }
  return null
}
