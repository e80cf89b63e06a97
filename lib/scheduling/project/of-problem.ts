import type { Activity, Problem, Use } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import { MOST_PACKED } from './packed.ts'
import { type Project, type ProjectLag, type ProjectStore, spanOf } from './project.ts'

/** Above this the pairs are too many for one net. */
const MOST_ACTIVITIES = 400

/**
 * Whether all that a problem pays for is when its last activity is over: one mode each, nobody attends, only stores and lags that
 * are never bent, one dish for one first serving that comes as it is ready, and no price but `late` and `left`.
 */
export const isProject = (problem: Problem): boolean =>
  problem.activities.length > 0 &&
  problem.activities.length <= MOST_ACTIVITIES &&
  problem.activities.every((activity) => isPlain(problem, activity)) &&
  problem.now === undefined &&
  !problem.previous?.length &&
  problem.lags.every(({ least, most, bound }) => whole(least) && (most === undefined || (whole(most) && bound === 'safety'))) &&
  endsAtTheTable(problem) &&
  onlyLatenessCosts(problem)

const whole = (value: number): boolean => Number.isInteger(value) && Math.abs(value) <= MOST_PACKED

const isPlain = (problem: Problem, { modes, fact, road, delivery, from = 0, to = 0, place }: Activity): boolean => {
  const [mode] = modes
  if (!mode || modes.length > 1 || fact || road || delivery !== problem.deliveries[0]?.id) return false
  const rigid = mode.care === 'leave' && mode.touches.length === 0 && (mode.upTo ?? mode.likely) === mode.likely
  return (
    rigid &&
    whole(mode.likely) &&
    whole(from) &&
    whole(to) &&
    mode.uses.every((use) => storeOf(problem, place, use) !== undefined)
  )
}

/** The one store that can serve a use. */
const storeOf = ({ kit }: Problem, place: string, use: Use) => {
  if (use.kind !== 'store' || !whole(use.amount)) return undefined
  const fit = kit.flatMap((one) => (one.kind === 'store' && one.place === place && one.of === use.of ? [one] : []))
  return fit.length === 1 && whole(fit[0]?.capacity ?? Number.NaN) ? fit[0] : undefined
}

const endsAtTheTable = ({ servings, deliveries, horizon }: Problem): boolean => {
  const [serving] = servings
  const [delivery] = deliveries
  if (!serving || !delivery || servings.length > 1 || deliveries.length > 1) return false
  if (serving.role.kind !== 'first' || serving.fact || (serving.earliest ?? horizon.from) > horizon.from) return false
  return delivery.serving === serving.id && delivery.late === 0 && !delivery.carry && delivery.keeps.uses.length === 0
}

const onlyLatenessCosts = ({ weights, horizon }: Problem): boolean =>
  weights.late > 0 && weights.early === 0 && weights.left > weights.late * (horizon.to - horizon.from)

/** A project's activities are those of its problem, in their order; tick 0 is the horizon's `from`. Only of what `isProject`. */
export const projectOf = (problem: Problem): Project => {
  const { activities, horizon } = problem
  const index = new Map(activities.map(({ id }, i) => [id, i]))
  const lengths = Int32Array.from(activities, ({ modes }) => modes[0]?.likely ?? 0)
  const room = horizon.to - horizon.from
  const lags: ProjectLag[] = problem.lags.flatMap(({ from, to, edge, least, most }) => {
    const first = index.get(from)
    const second = index.get(to)
    if (first === undefined || second === undefined) return []
    const length = edge === 'end' ? (lengths[first] as number) : 0
    const shortest = { from: first, to: second, least: least + length }
    const longest = most === undefined ? [] : [{ from: second, to: first, least: -most - length }]
    return [...(shortest.least > -room ? [shortest] : []), ...longest]
  })
  return {
    lengths,
    from: Int32Array.from(activities, ({ from }) => Math.max(0, (from ?? horizon.from) - horizon.from)),
    to: Int32Array.from(activities, ({ to }) => Math.min(room, (to ?? horizon.to) - horizon.from)),
    lags,
    stores: [...storesOf(problem), ...groupsOf(problem, index)],
  }
}

const storesOf = (problem: Problem): ProjectStore[] =>
  problem.kit.flatMap((kit) => {
    if (kit.kind !== 'store') return []
    const needs = Int32Array.from(problem.activities, ({ place, modes }) =>
      (modes[0]?.uses ?? []).reduce(
        (sum, use) => sum + (use.kind === 'store' && storeOf(problem, place, use)?.id === kit.id ? use.amount : 0),
        0,
      ),
    )
    return [{ capacity: kit.capacity, needs }]
  })

/** What may run together only so many times is a store of as many. */
const groupsOf = ({ together, activities }: Problem, index: ReadonlyMap<string, number>): ProjectStore[] =>
  together.map(({ activities: group, most }) => {
    const needs = new Int32Array(activities.length)
    for (const id of group) {
      const i = index.get(id)
      if (i !== undefined) needs[i] = 1
    }
    return { capacity: most, needs }
  })

/** The schedule of these starts, served when all is over. */
export const scheduleOf = (problem: Problem, starts: Int32Array): Schedule => {
  const { activities, horizon, servings } = problem
  const placements = activities.map(({ id, place, modes }, i) => {
    const start = horizon.from + (starts[i] as number)
    const uses = modes[0]?.uses ?? []
    return {
      activity: id,
      mode: 0,
      start,
      end: start + (modes[0]?.likely ?? 0),
      cooks: [],
      kit: uses.map((use) => ({ id: storeOf(problem, place, use)?.id ?? '', unit: 0 })),
      touches: [],
    }
  })
  placements.sort((a, b) => a.start - b.start || (a.activity < b.activity ? -1 : 1))
  const toTable = horizon.from + spanOf(projectOf(problem), starts)
  return { placements, servings: servings.map(({ id }) => ({ serving: id, toTable })), keeping: [], left: [] }
}
