import { type Lag, type Problem, WEIGHTS } from '#lib/scheduling/problem.ts'
import type { Project } from '#lib/scheduling/project/project.ts'
import { activity, delivery, mode, problem, serving } from './small-problem.ts'

/** A project as the engine's problem: one dish whose serving is wanted at once and comes when the last activity is over. */
export const projectProblem = ({ lengths, from, to, lags, stores }: Project): Problem => {
  const end = Math.max(0, ...to)
  return problem({
    horizon: { from: 0, to: end },
    activities: Array.from(lengths, (length, i) =>
      activity(
        idOf(i),
        mode('leave', length, {
          cooks: 0,
          uses: stores.flatMap(({ needs }, store) =>
            needs[i] ? [{ kind: 'store' as const, of: `store ${store}`, amount: needs[i] }] : [],
          ),
        }),
        { delivery: 'all', from: from[i] ?? 0, to: to[i] ?? end },
      ),
    ),
    lags: lags.map(({ from, to, least }): Lag => {
      if (least >= 0) return { from: idOf(from), to: idOf(to), edge: 'start', least, bound: 'safety' }
      return { from: idOf(to), to: idOf(from), edge: 'start', least: -end, most: -least, bound: 'safety' }
    }),
    kit: stores.map(({ capacity }, store) => ({
      kind: 'store',
      id: `store ${store}`,
      place: 'home',
      of: `store ${store}`,
      capacity,
    })),
    servings: [serving('table', { role: { kind: 'first', sitDown: 0 } })],
    deliveries: [delivery('all', 'table', { early: 0, keeps: { most: 0, bound: 'quality', place: 'home', uses: [] } })],
    weights: { ...WEIGHTS, late: 1, early: 0, left: end + 1 },
  })
}

const idOf = (i: number): string => `activity ${i}`
