import type { Problem, Spare } from '#lib/scheduling/problem.ts'
import { dice } from './dice.ts'

/** The problem with one to three stretches of a quarter of its time or so in which a cook is to be spared, some of a few activities only. */
export const withSpares = (problem: Problem, seed: number): Problem => {
  const d = dice(seed)
  const { to } = problem.horizon
  if (problem.cooks.length === 0) return problem
  const spares = Array.from({ length: d.int(1, 3) }, (): Spare => {
    const from = d.int(0, Math.floor(to * 0.75))
    const some = problem.activities.map(({ id }) => id).filter(() => d.chance(0.5))
    return {
      cook: d.pick(problem.cooks).id,
      from,
      to: from + d.int(1, Math.ceil(to / 3)),
      price: d.pick([4, 8, 20]),
      ...(d.chance(0.5) ? { activities: some } : {}),
    }
  })
  return { ...problem, spares }
}
