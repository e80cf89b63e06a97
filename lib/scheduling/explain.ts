import { cookLimits, type Piece, piecesByCook } from './explain-cooks.ts'
import { type Hold, holdsByUnit, kitLimits } from './explain-kit.ts'
import { crowdLimits, type Limit } from './explain-limits.ts'
import { type Arrival, arrivalsOf, type Placed, placedOf } from './placed.ts'
import type { ActivityId, Delivery, Lag, Problem, Serving, Tick } from './problem.ts'
import type { Cause, Schedule } from './schedule.ts'

export interface Explanation {
  /** Ticks by which it could start later, all else fixed, with nothing hard and no further wish broken. */
  readonly slack: number
  /** What breaks one tick after that. */
  readonly because: readonly Cause[]
}

/**
 * Why every placement is not later (S5). Its touches move along with it, everything else stays. What is done or under way
 * is where it is because it happened.
 */
export const explain = (problem: Problem, schedule: Schedule): ReadonlyMap<ActivityId, Explanation> => {
  const scene = sceneOf(problem, schedule)
  return new Map(
    scene.placed.map((one): [ActivityId, Explanation] => {
      if (one.activity.fact) return [one.activity.id, { slack: 0, because: [{ kind: 'now' }] }]
      return [one.activity.id, tightest(limitsOf(scene, one))]
    }),
  )
}

/** The schedule by whatever a placement may run into, worked out once for all of them. */
interface Scene {
  readonly problem: Problem
  readonly placed: readonly Placed[]
  readonly byId: ReadonlyMap<ActivityId, Placed>
  /** Lags from and to an activity, in the problem's order. */
  readonly lags: ReadonlyMap<ActivityId, readonly Lag[]>
  readonly deliveries: ReadonlyMap<string, Delivery>
  readonly servings: ReadonlyMap<string, { readonly serving: Serving; readonly moment: Tick | undefined }>
  readonly arrivals: ReadonlyMap<string, Arrival>
  readonly pieces: ReadonlyMap<string, readonly Piece[]>
  readonly holds: ReadonlyMap<string, readonly Hold[]>
}

const sceneOf = (problem: Problem, schedule: Schedule): Scene => {
  const placed = placedOf(problem, schedule)
  const lags = new Map<ActivityId, Lag[]>()
  for (const lag of problem.lags)
    for (const id of new Set([lag.from, lag.to])) {
      const known = lags.get(id)
      if (known) known.push(lag)
      else lags.set(id, [lag])
    }
  const moments = new Map(schedule.servings.map(({ serving, toTable }) => [serving, toTable]))
  return {
    problem,
    placed,
    byId: new Map(placed.map((one) => [one.activity.id, one])),
    lags,
    deliveries: new Map(problem.deliveries.map((delivery) => [delivery.id, delivery])),
    servings: new Map(problem.servings.map((serving) => [serving.id, { serving, moment: moments.get(serving.id) }])),
    arrivals: new Map(arrivalsOf(problem, schedule).map((arrival) => [arrival.delivery.id, arrival])),
    pieces: piecesByCook(problem, placed),
    holds: holdsByUnit(problem, schedule, placed),
  }
}

const limitsOf = (scene: Scene, one: Placed): Limit[] => {
  const { problem } = scene
  const end = Math.min(one.activity.to ?? problem.horizon.to, problem.horizon.to)
  return [
    { by: end - one.placement.end, cause: { kind: 'window' } },
    ...lagLimits(scene, one),
    ...groupLimits(scene, one),
    ...servingLimits(scene, one),
    ...carryLimits(scene, one),
    ...cookLimits(problem, scene.pieces, one),
    ...kitLimits(problem, scene.holds, one),
  ]
}

const tightest = (limits: readonly Limit[]): Explanation => {
  const slack = Math.max(0, Math.min(...limits.map(({ by }) => by)))
  const because = new Map(limits.filter(({ by }) => by <= slack).map(({ cause }) => [JSON.stringify(cause), cause]))
  return { slack, because: [...because.values()] }
}

const lagLimits = ({ lags, byId }: Scene, { activity, placement }: Placed): Limit[] =>
  (lags.get(activity.id) ?? []).flatMap((lag): Limit[] => {
    if (lag.from === activity.id && lag.to !== activity.id) {
      const after = byId.get(lag.to)
      if (!after || after.activity.fact) return []
      const by = after.placement.start - lag.least - placement[lag.edge]
      return [{ by, cause: { kind: 'after', activity: lag.to } }]
    }
    const before = byId.get(lag.from)
    if (lag.most === undefined || !before) return []
    return [{ by: before.placement[lag.edge] + lag.most - placement.start, cause: { kind: 'after', activity: lag.from } }]
  })

const groupLimits = ({ problem, placed }: Scene, { activity, placement }: Placed): Limit[] =>
  problem.together.flatMap((group) => {
    if (!group.activities.includes(activity.id)) return []
    const others = placed
      .filter((other) => other.activity.id !== activity.id && group.activities.includes(other.activity.id))
      .map((other) => ({ from: other.placement.start, to: other.placement.end, amount: 1, activity: other.activity.id }))
    return crowdLimits(others, group.most - 1, placement.end, (id) => ({ kind: 'after', activity: id }))
  })

const servingLimits = ({ deliveries, servings }: Scene, { activity, placement }: Placed): Limit[] => {
  const delivery = deliveries.get(activity.delivery ?? '')
  const { serving, moment } = servings.get(delivery?.serving ?? '') ?? {}
  if (!delivery || !serving || serving.fact || moment === undefined) return []
  return [{ by: moment + delivery.late - placement.end, cause: { kind: 'serving', serving: serving.id } }]
}

/** What ends a time on the road cannot come later than the dish may be on it. */
const carryLimits = ({ arrivals, placed }: Scene, { activity, placement }: Placed): Limit[] => {
  const { delivery, carried, served } = arrivals.get(activity.delivery ?? '') ?? {}
  if (activity.road || !delivery?.carry || !carried || served || carried.to !== placement.start) return []
  const carrier = placed.find(
    (other) => other.activity.delivery === delivery.id && other.activity.road && other.placement.start === carried.from,
  )
  if (!carrier) return []
  return [{ by: carried.from + delivery.carry.most - placement.start, cause: { kind: 'after', activity: carrier.activity.id } }]
}
