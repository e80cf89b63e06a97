import { durationOfTicks } from '#lib/domain/duration.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { instantOfTick } from '#lib/domain/time.ts'
import { PLATING_BURST, type Problem, SIT_LEAST } from '#lib/scheduling/problem.ts'
import type { Scene } from '#lib/scheduling/verify/scene.ts'
import { common, cut, overlaps, type Span, ticksOf, union } from '#lib/scheduling/verify/span.ts'
import type { Planned } from './planned.ts'

/** From the first course that is not the welcome to the last one. Empty when there is none. */
const tableWindow = ({ served }: Scene): Span => {
  const first = served.find(({ serving }) => serving.role.kind !== 'welcome')
  const last = served.at(-1)
  return first && last ? { from: first.moment, to: last.moment } : { from: 0, to: 0 }
}

/** When a cook is up from the table, within the window. */
const upOf = (scene: Scene, cook: string, window: Span): Span[] =>
  union(
    cut(
      scene.busy.filter((one) => one.cook === cook && one.of.activity.at !== 'table'),
      window,
    ),
  )

const gaps = (busy: readonly Span[], window: Span): Span[] => {
  const edges = [window.from, ...busy.flatMap(({ from, to }) => [from, to]), window.to]
  return edges.flatMap((from, at) => (at % 2 === 0 ? [{ from, to: edges[at + 1] ?? from }] : []))
}

/** For each cook: minutes missed at the table, hands-on minutes of all days, and when they sit for 3 min or more. */
export const cooksOf = ({ evening, problem, scene }: Planned): RunningOrder['cooks'] => {
  const window = tableWindow(scene)
  return problem.cooks.map(({ id, eats }) => {
    const up = upOf(scene, id, window)
    const handsOn = union(scene.busy.filter((one) => one.cook === id && one.kind !== 'eye'))
    const sits = eats ? gaps(up, window).filter(({ from, to }) => to - from >= SIT_LEAST) : []
    return {
      cook: id,
      missed: durationOfTicks(eats ? ticksOf(up) : 0),
      handsOn: durationOfTicks(ticksOf(handsOn)),
      sits: sits.map(({ from, to }) => ({ from: instantOfTick(evening, from), to: instantOfTick(evening, to) })),
    }
  })
}

/** Ticks that all cooks who eat miss at the table, together. */
export const missedTicks = ({ cooks }: Problem, scene: Scene): number => {
  const window = tableWindow(scene)
  return cooks.reduce((sum, { id, eats }) => sum + (eats ? ticksOf(upOf(scene, id, window)) : 0), 0)
}

/** Time in the window in which no host is at the table, less stretches of at most 6 min in which something is plated. */
export const allHostsAway = ({ problem, scene }: Planned): string => {
  const window = tableWindow(scene)
  const [first, ...rest] = problem.cooks.filter(({ host }) => host).map(({ id }) => upOf(scene, id, window))
  if (!first) return durationOfTicks(0)
  const plating = scene.placed.filter(({ activity }) => activity.plating).map(({ start, end }) => ({ from: start, to: end }))
  const away = union(rest.reduce<readonly Span[]>((shared, host) => common(shared, host), first)).filter(
    (span) => span.to - span.from > PLATING_BURST || !plating.some((one) => overlaps(one, span)),
  )
  return durationOfTicks(ticksOf(away))
}
