import type { Problem } from '#lib/scheduling/problem.ts'
import type { Placed, Scene } from './scene.ts'
import { type Violation, violation } from './violation.ts'

/** A touch that a placement owes: its index in the mode, and the moments at which it may begin. */
export interface Owed {
  readonly touch: number
  readonly from: number
  readonly to: number
}

/** Of a planned activity all touches; of one under way those still to come; of what is done none. */
export const owedOf = (problem: Problem, { mode, fact, start, end }: Pick<Placed, 'mode' | 'fact' | 'start' | 'end'>): Owed[] => {
  if (fact?.kind === 'done') return []
  const now = fact ? (problem.now ?? Number.NEGATIVE_INFINITY) : Number.NEGATIVE_INFINITY
  return mode.touches.flatMap(({ when, takes, lateBy }, touch): Owed[] => {
    if (when === 'in') return fact ? [] : [{ touch, from: start, to: start }]
    if (when === 'out') return [{ touch, from: Math.max(now, end - takes), to: Math.max(now, end - takes + lateBy) }]
    if (when.every <= 0) return []
    const owed: Owed[] = []
    for (let from = start + when.every; from < end; from += when.every)
      if (from >= now) owed.push({ touch, from, to: from + lateBy })
    return owed
  })
}

/** H10: the touches are those of the mode, in its order, where it says, each by one known cook. */
export const h10 = ({ problem, placed, cooks }: Scene): Violation[] =>
  placed.flatMap((one) => {
    const tell = (what: 'missing' | 'unknown' | 'early' | 'late', at: number, wanted?: number) =>
      violation('H10', at, { what, found: at, ...(wanted === undefined ? {} : { wanted }) }, { activities: [one.activity.id] })
    const owed = owedOf(problem, one)
    const listed = one.placement.touches
    const strangers = listed.filter(({ cook }) => !cooks.has(cook)).map(({ at }) => tell('unknown', at))
    if (one.fact) {
      const { unmatched } = match(owed, listed)
      return [...strangers, ...unmatched.map(({ at }) => tell('unknown', at))]
    }
    const wrong = owed.flatMap((due, index) => {
      const found = listed[index]
      if (!found || found.touch !== due.touch) return [tell('missing', due.from)]
      if (found.at < due.from) return [tell('early', found.at, due.from)]
      return found.at > due.to ? [tell('late', found.at, due.to)] : []
    })
    return [...strangers, ...wrong, ...listed.slice(owed.length).map(({ at }) => tell('unknown', at))]
  })

/** Touches to come that nobody does, of activities under way: each costs as much as an activity left out. */
export const touchesMissed = ({ problem, placed }: Scene): number =>
  placed
    .filter(({ fact }) => fact?.kind === 'running')
    .reduce((sum, one) => sum + match(owedOf(problem, one), one.placement.touches).missed, 0)

const match = (owed: readonly Owed[], listed: Placed['placement']['touches']) => {
  let next = 0
  const unmatched = listed.filter(({ touch, at }) => {
    const found = owed.findIndex((due, index) => index >= next && due.touch === touch && due.from <= at && at <= due.to)
    if (found >= 0) next = found + 1
    return found < 0
  })
  return { unmatched, missed: owed.length - (listed.length - unmatched.length) }
}
