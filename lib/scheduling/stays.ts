import type { Act, ModeModel, Stretch } from './model.ts'
import type { Tick } from './problem.ts'

/** The first start ≥ t at which a whole team could be there; t itself when nobody attends or nobody ever could again. */
export const nextPresent = ({ present }: Act, t: Tick): Tick => {
  for (let i = 0; i < present.length; i++) {
    const { from, to } = present[i] as Stretch
    if (t <= to) return Math.max(t, from)
  }
  return t
}

/** The last start ≤ t at which a whole team could be there; t itself when nobody attends or nobody ever could before. */
export const lastPresent = ({ present }: Act, t: Tick): Tick => {
  for (let i = present.length - 1; i >= 0; i--) {
    const { from, to } = present[i] as Stretch
    if (t >= from) return Math.min(t, to)
  }
  return t
}

/**
 * The starts (first to last) at which some whole team could be there for as long as it takes, in order and apart; none
 * when some mode needs nobody. Pre: stays by cook, each in order of time.
 */
export const presentStarts = (modes: readonly ModeModel[], stays: readonly (readonly Stretch[])[]): readonly Stretch[] => {
  if (modes.some(({ care }) => care === 'leave')) return []
  const all = modes.flatMap(({ teams }) =>
    teams.flatMap(({ cooks, len }) =>
      cooks
        .map((cook) => startsIn(stays[cook.index] ?? [], len))
        .reduce((both, one) => both.flatMap((a) => one.flatMap((b) => meeting(a, b)))),
    ),
  )
  return joined(all)
}

/** When the stays of those who may attend end. */
export const leavesOf = (modes: readonly ModeModel[], stays: readonly (readonly Stretch[])[]): readonly Tick[] => {
  const cooks = new Set(modes.flatMap(({ teams }) => teams.flatMap((team) => team.cooks)))
  return [...new Set([...cooks].flatMap((cook) => (stays[cook.index] ?? []).map(({ to }) => to)))]
}

const startsIn = (stays: readonly Stretch[], len: number): Stretch[] =>
  stays.flatMap(({ from, to }) => (to - len >= from ? [{ from, to: to - len }] : []))

const meeting = (a: Stretch, b: Stretch): Stretch[] => {
  const from = Math.max(a.from, b.from)
  const to = Math.min(a.to, b.to)
  return from <= to ? [{ from, to }] : []
}

const joined = (all: Stretch[]): Stretch[] => {
  const apart: Stretch[] = []
  for (const next of all.sort((a, b) => a.from - b.from)) {
    const last = apart[apart.length - 1]
    if (last && next.from <= last.to + 1) apart[apart.length - 1] = { from: last.from, to: Math.max(last.to, next.to) }
    else apart.push(next)
  }
  return apart
}
