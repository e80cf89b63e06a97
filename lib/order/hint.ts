import { TICK_SECONDS } from '#lib/domain/duration.ts'
import type { Cue, RunningOrder } from '#lib/domain/running-order.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import type { Mode, Problem, Tick } from '#lib/scheduling/problem.ts'
import type { Placement, Schedule } from '#lib/scheduling/schedule.ts'
import type { ProblemIndex } from './to-problem.ts'

/**
 * A running order as a schedule of this problem, to begin a search with. Ticks count from the order's own origin, so an
 * order of another date of the evening serves as well. What the problem no longer has is not in it; it may break any rule.
 */
export const toHint = (problem: Problem, index: ProblemIndex, order: RunningOrder): Schedule => {
  const origin = msOfInstant(order.origin)
  const tickOf = (instant: string): Tick => Math.round((msOfInstant(instant) - origin) / (TICK_SECONDS * 1000))
  const cues = new Map(order.cues.map((cue) => [`${cue.step} ${cue.batch}`, cue]))
  return {
    placements: problem.activities.flatMap(({ id, modes }): Placement[] => {
      const of = index.activities.get(id)
      const cue = of && cues.get(`${of.step.id} ${of.batch}`)
      const mode = cue && modes[cue.way]
      if (!mode) return []
      const [start, end] = [tickOf(cue.start), tickOf(cue.end)]
      const touches = touchesOf(mode, cue, end - start, tickOf)
      return [{ activity: id, mode: cue.way, start, end, cooks: cue.cooks, kit: cue.kit, touches }]
    }),
    servings: order.courses.flatMap(({ course, toTable }) =>
      problem.servings.some(({ id }) => id === course) ? [{ serving: course, toTable: tickOf(toTable) }] : [],
    ),
    keeping: [],
    left: [],
  }
}

/** A cue tells its touches in the order of its way, an `every` touch as often as it occurs. */
const touchesOf = (mode: Mode, cue: Cue, length: number, tickOf: (instant: string) => Tick): Placement['touches'] => {
  const numbers = mode.touches.flatMap(({ when }, touch) =>
    typeof when === 'string' ? [touch] : Array.from({ length: Math.max(0, Math.ceil(length / when.every) - 1) }, () => touch),
  )
  return cue.touches.flatMap(({ at, cook }, i) => {
    const touch = numbers[i]
    return touch === undefined ? [] : [{ touch, at: tickOf(at), cook }]
  })
}
