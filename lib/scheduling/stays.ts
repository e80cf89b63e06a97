import type { Act, Stretch, TeamModel } from './model.ts'
import type { Tick } from './problem.ts'

/** The first start ≥ t at which a whole team could be there; t itself when nobody attends or nobody ever could again. */
export const nextPresent = (act: Act, t: Tick): Tick => nearest(act, t, after)

/** The last start ≤ t at which a whole team could be there; t itself when nobody attends or nobody ever could before. */
export const lastPresent = (act: Act, t: Tick): Tick => -nearest(act, -t, before)

type Step = (stays: readonly Stretch[], t: Tick, len: number) => Tick

/** The nearest time over all modes and teams, in the direction in which `step` grows. */
const nearest = (act: Act, t: Tick, step: Step): Tick => {
  let best = Number.POSITIVE_INFINITY
  for (const { care, teams } of act.modes) {
    if (care === 'leave') return t
    for (const team of teams) best = Math.min(best, teamFrom(act, team, t, step))
    if (best === t) return t
  }
  return best === Number.POSITIVE_INFINITY ? t : best
}

const teamFrom = (act: Act, { cooks, len }: TeamModel, t: Tick, step: Step): Tick => {
  let at = t
  for (let settled = false; !settled && at !== Number.POSITIVE_INFINITY; ) {
    settled = true
    for (const cook of cooks) {
      const next = step(act.stays[cook.index] ?? [], at, len)
      if (next !== at) settled = false
      at = next
    }
  }
  return at
}

const after: Step = (stays, t, len) => {
  for (const stay of stays) if (stay.to - len >= Math.max(t, stay.from)) return Math.max(t, stay.from)
  return Number.POSITIVE_INFINITY
}

/** As `after`, with time running backwards: times and answers are negated. */
const before: Step = (stays, t, len) => {
  for (let i = stays.length - 1; i >= 0; i--) {
    const stay = stays[i]
    if (stay && stay.to - len >= stay.from && stay.from <= -t) return Math.max(t, -(stay.to - len))
  }
  return Number.POSITIVE_INFINITY
}
