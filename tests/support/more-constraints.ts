import type { Lag, Problem } from '#lib/scheduling/problem.ts'
import { type Dice, dice } from './dice.ts'

type Constraint = (d: Dice, problem: Problem) => Problem | null

/** Everything that the new problem allows, the old one allows at no higher price. */
const CONSTRAINTS: Readonly<Record<string, Constraint>> = {
  'a later first start': (d, problem) =>
    withOne(d, problem, 'activities', (one) => ({ ...one, from: Math.max(one.from ?? 0, d.int(1, 12)) })),
  'an earlier last end': (d, problem) =>
    withOne(d, problem, 'activities', (one) => ({ ...one, to: Math.min(one.to ?? problem.horizon.to, d.int(4, 18)) })),
  'a least lag': (d, problem) => {
    const [from, to] = [d.pick(problem.activities).id, d.pick(problem.activities).id]
    if (from === to) return null
    return { ...problem, lags: [...problem.lags, { from, edge: 'end', to, least: d.int(0, 3), bound: 'quality' }] }
  },
  'a most lag': (d, problem) => {
    const [from, to] = [d.pick(problem.activities).id, d.pick(problem.activities).id]
    if (from === to) return null
    const bound = d.pick<Lag['bound']>(['quality', 'safety'])
    const lag: Lag = { from, edge: 'start', to, least: -31, most: d.int(0, 6), bound }
    return { ...problem, lags: [...problem.lags, lag] }
  },
  'no more than one at a time': (_, problem) => ({
    ...problem,
    together: [...problem.together, { activities: problem.activities.map(({ id }) => id), most: 1 }],
  }),
  'a cook who goes earlier': (d, problem) =>
    withOne(d, problem, 'cooks', (cook) => ({ ...cook, presence: cook.presence.slice(0, -1) })),
  'one way fewer': (d, problem) =>
    withOne(d, problem, 'activities', (one) =>
      one.modes.length < 2 || one.fact ? null : { ...one, modes: one.modes.slice(0, -1) },
    ),
  'kit gone': (d, problem) => (problem.kit.length === 0 ? null : { ...problem, kit: without(d, problem.kit) }),
  'a later course': (d, problem) =>
    withOne(d, problem, 'servings', (one) =>
      one.role.kind === 'next' && !one.fact ? { ...one, earliest: (one.earliest ?? 0) + d.int(1, 20) } : null,
    ),
}

const without = <T>(d: Dice, all: readonly T[]): T[] => {
  const gone = d.pick(all)
  return all.filter((one) => one !== gone)
}

const withOne = <K extends 'activities' | 'cooks' | 'servings'>(
  d: Dice,
  problem: Problem,
  key: K,
  change: (one: Problem[K][number]) => Problem[K][number] | null,
): Problem | null => {
  const all: readonly Problem[K][number][] = problem[key]
  if (all.length === 0) return null
  const chosen = d.pick(all)
  const changed = change(chosen)
  return changed && { ...problem, [key]: all.map((one) => (one === chosen ? changed : one)) }
}

/** The problem with one constraint more, and what it is; null when this one has no room for it. */
export const withConstraint = (problem: Problem, seed: number): { readonly problem: Problem; readonly what: string } | null => {
  const d = dice(seed)
  const what = d.pick(Object.keys(CONSTRAINTS))
  const made = CONSTRAINTS[what]?.(d, problem)
  return made ? { problem: made, what } : null
}
