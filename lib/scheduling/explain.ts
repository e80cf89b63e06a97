import { cookLimits } from './explain-cooks.ts'
import { kitLimits } from './explain-kit.ts'
import { crowdLimits, type Limit } from './explain-limits.ts'
import { arrivalsOf, momentOf, type Placed, placedOf } from './placed.ts'
import type { ActivityId, Problem } from './problem.ts'
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
  const placed = placedOf(problem, schedule)
  return new Map(
    placed.map((one): [ActivityId, Explanation] => {
      if (one.activity.fact) return [one.activity.id, { slack: 0, because: [{ kind: 'now' }] }]
      return [one.activity.id, tightest(limitsOf(problem, schedule, placed, one))]
    }),
  )
}

const limitsOf = (problem: Problem, schedule: Schedule, placed: readonly Placed[], one: Placed): Limit[] => [
  { by: Math.min(one.activity.to ?? problem.horizon.to, problem.horizon.to) - one.placement.end, cause: { kind: 'window' } },
  ...lagLimits(problem, placed, one),
  ...groupLimits(problem, placed, one),
  ...servingLimits(problem, schedule, one),
  ...carryLimits(problem, schedule, placed, one),
  ...cookLimits(problem, placed, one),
  ...kitLimits(problem, schedule, placed, one),
]

const tightest = (limits: readonly Limit[]): Explanation => {
  const slack = Math.max(0, Math.min(...limits.map(({ by }) => by)))
  const because = new Map(limits.filter(({ by }) => by <= slack).map(({ cause }) => [JSON.stringify(cause), cause]))
  return { slack, because: [...because.values()] }
}

const lagLimits = (problem: Problem, placed: readonly Placed[], { activity, placement }: Placed): Limit[] =>
  problem.lags.flatMap((lag): Limit[] => {
    if (lag.from === activity.id && lag.to !== activity.id) {
      const after = placed.find((other) => other.activity.id === lag.to)
      if (!after || after.activity.fact) return []
      const by = after.placement.start - lag.least - placement[lag.edge]
      return [{ by, cause: { kind: 'after', activity: lag.to } }]
    }
    const before = placed.find((other) => other.activity.id === lag.from)
    if (lag.to !== activity.id || lag.most === undefined || !before) return []
    return [{ by: before.placement[lag.edge] + lag.most - placement.start, cause: { kind: 'after', activity: lag.from } }]
  })

const groupLimits = (problem: Problem, placed: readonly Placed[], { activity, placement }: Placed): Limit[] =>
  problem.together.flatMap((group) => {
    if (!group.activities.includes(activity.id)) return []
    const others = placed
      .filter((other) => other.activity.id !== activity.id && group.activities.includes(other.activity.id))
      .map((other) => ({ from: other.placement.start, to: other.placement.end, amount: 1, activity: other.activity.id }))
    return crowdLimits(others, group.most - 1, placement.end, (id) => ({ kind: 'after', activity: id }))
  })

const servingLimits = (problem: Problem, schedule: Schedule, { activity, placement }: Placed): Limit[] => {
  const delivery = problem.deliveries.find((one) => one.id === activity.delivery)
  const serving = problem.servings.find((one) => one.id === delivery?.serving)
  const moment = serving && momentOf(schedule, serving.id)
  if (!delivery || !serving || serving.fact || moment === undefined) return []
  return [{ by: moment + delivery.late - placement.end, cause: { kind: 'serving', serving: serving.id } }]
}

/** What ends a time on the road cannot come later than the dish may be on it. */
const carryLimits = (
  problem: Problem,
  schedule: Schedule,
  placed: readonly Placed[],
  { activity, placement }: Placed,
): Limit[] => {
  if (activity.road) return []
  return arrivalsOf(problem, schedule).flatMap(({ delivery, carried, served }): Limit[] => {
    if (delivery.id !== activity.delivery || !carried || !delivery.carry || served) return []
    const ends = carried.to === placement.start
    const carrier = placed.find(
      (other) => other.activity.delivery === delivery.id && other.activity.road && other.placement.start === carried.from,
    )
    if (!ends || !carrier) return []
    return [{ by: carried.from + delivery.carry.most - placement.start, cause: { kind: 'after', activity: carrier.activity.id } }]
  })
}
