import { roundUp } from '#lib/scheduling/pace.ts'
import type { Activity, ActivityId, Delivery, Lag, Mode, Problem } from '#lib/scheduling/problem.ts'
import type { Placement, Schedule } from '#lib/scheduling/schedule.ts'
import { quantile, quantilesOf } from './spread.ts'

/** Of so many cases out of one a length is planned long enough, step by step. */
export const LEVELS: readonly number[] = [0.97, 1]

/** Which level each activity is planned at; likely when absent. */
export type Levels = ReadonlyMap<ActivityId, number>

/** A lag with less play than this pulls what follows along: 2 min at 30 s. */
const PLAY = 4

/**
 * The same problem with more time for some steps: as long as it takes in so many cases. The wishes after them, and how long
 * their dish keeps, are tightened by as much, so that a plan made with it keeps them when all is over sooner.
 */
export const lengthened = (problem: Problem, levels: Levels): Problem => {
  const slow = Math.max(1, ...problem.cooks.map(({ pace }) => pace))
  const { more, sooner } = givenTime(problem, levels, slow)
  const kept = (delivery: Delivery) =>
    Math.max(
      0,
      ...problem.activities.map(({ id, delivery: of }) =>
        of === delivery.id && isLast(problem, id) ? (sooner.get(id) ?? 0) : 0,
      ),
    )
  return {
    ...problem,
    activities: problem.activities.map((activity) => ({
      ...activity,
      modes: longer(activity.modes, more.get(activity.id) ?? 0),
    })),
    lags: problem.lags.map((lag): Lag => {
      if (lag.edge === 'start' || lag.most === undefined || isTight(lag)) return lag
      return { ...lag, most: Math.max(lag.least, lag.most - (sooner.get(lag.from) ?? 0)) }
    }),
    deliveries: problem.deliveries.map((delivery) => ({
      ...delivery,
      keeps: { ...delivery.keeps, most: Math.max(0, delivery.keeps.most - kept(delivery)) },
    })),
  }
}

const isTight = ({ least, most }: Lag): boolean => most !== undefined && most - least < PLAY

/** Ticks at pace 1 that each step is planned longer, and by how much sooner than planned it may then be over at the most. */
const givenTime = (problem: Problem, levels: Levels, slow: number) => {
  const more = new Map<ActivityId, number>()
  const sooner = new Map<ActivityId, number>()
  const after = (id: ActivityId) => problem.lags.filter((lag) => lag.from === id && lag.edge === 'end' && lag.most !== undefined)
  const rooms = new Map<ActivityId, number>()
  /** How much sooner it may be over before a wish after it breaks; what is tied to it comes along. */
  const roomOf = (activity: Activity): number => {
    const known = rooms.get(activity.id)
    if (known !== undefined) return known
    rooms.set(activity.id, 0)
    const dish = problem.deliveries.find(({ id }) => id === activity.delivery)
    const room = Math.min(
      dish && isLast(problem, activity.id) ? dish.keeps.most : NEVER,
      ...after(activity.id).map((lag) => {
        const next = isTight(lag) ? problem.activities.find(({ id }) => id === lag.to) : undefined
        return next ? roomOf(next) : (lag.most ?? NEVER) - lag.least
      }),
    )
    rooms.set(activity.id, room)
    return room
  }
  const timeOf = (activity: Activity): number => {
    const known = sooner.get(activity.id)
    if (known !== undefined) return known
    sooner.set(activity.id, 0)
    const tied = problem.lags.filter((lag) => lag.to === activity.id && lag.edge === 'end' && isTight(lag))
    const before = tied.flatMap(({ from }) => problem.activities.filter(({ id }) => id === from)).map(timeOf)
    const already = Math.max(0, ...before)
    const ticks = Math.max(0, Math.min(wantedOf(activity, levels), Math.floor((roomOf(activity) - already) / slow)))
    more.set(activity.id, ticks)
    sooner.set(activity.id, already + roundUp(ticks * slow))
    return already + roundUp(ticks * slow)
  }
  for (const activity of problem.activities) timeOf(activity)
  return { more, sooner }
}

const NEVER = 1e9

const spreadOf = ({ least, likely, most, usual = likely }: Mode) => ({ least, likely: usual, most })

const wantedOf = (activity: Activity, levels: Levels): number => {
  const level = levels.get(activity.id)
  if (level === undefined || activity.fact) return 0
  return Math.max(
    0,
    ...activity.modes.map((mode) => roundUp(quantile(quantilesOf(spreadOf(mode), 'triangular'), level)) - mode.likely),
  )
}

/** Nothing of the same dish comes after it. */
const isLast = (problem: Problem, id: ActivityId): boolean => {
  const delivery = problem.activities.find((one) => one.id === id)?.delivery
  const own = new Set(problem.activities.flatMap((one) => (one.delivery === delivery ? [one.id] : [])))
  return !problem.lags.some((lag) => lag.from === id && own.has(lag.to))
}

const longer = (modes: readonly Mode[], more: number): readonly Mode[] =>
  more === 0
    ? modes
    : modes.map((mode) => ({
        ...mode,
        likely: mode.likely + more,
        most: Math.max(mode.most, mode.likely + more),
        ...(mode.upTo === undefined ? {} : { upTo: Math.max(mode.upTo, mode.likely + more) }),
      }))

/** The plan with its steps as long as they likely are: each begins when it did, or sooner where what it is tied to is over sooner. */
export const shortened = (problem: Problem, plan: Schedule): Schedule => {
  const pace = new Map(problem.cooks.map((cook) => [cook.id, cook.pace]))
  const made = new Map<ActivityId, Placement>()
  const byId = new Map(problem.activities.map((activity) => [activity.id, activity]))
  for (const placement of plan.placements) {
    const activity = byId.get(placement.activity)
    const mode = activity?.modes[placement.mode]
    const isFixed = !activity || !mode || activity.fact
    made.set(placement.activity, isFixed ? placement : cut(placement, mode, startOf(problem, placement, made), pace))
  }
  return { ...plan, placements: [...made.values()] }
}

/** No later than the most of each lag asks, no sooner than the least of any. */
const startOf = (problem: Problem, { activity, start }: Placement, made: ReadonlyMap<ActivityId, Placement>): number => {
  let latest = start
  let soonest = Number.NEGATIVE_INFINITY
  for (const { from, edge, to, least, most } of problem.lags) {
    const before = to === activity ? made.get(from) : undefined
    if (!before) continue
    soonest = Math.max(soonest, before[edge] + least)
    if (most !== undefined) latest = Math.min(latest, before[edge] + most)
  }
  return Math.min(start, Math.max(soonest, latest))
}

const cut = (placement: Placement, mode: Mode, start: number, paces: ReadonlyMap<string, number>): Placement => {
  const slow = mode.care === 'hands-on' ? Math.max(...placement.cooks.map((cook) => paces.get(cook) ?? 1)) : 1
  const end = Math.min(start + placement.end - placement.start, start + Math.max(mode.upTo ?? 0, roundUp(mode.likely * slow)))
  const touches = placement.touches.flatMap((touch) => {
    const isOut = mode.touches[touch.touch]?.when === 'out'
    const at = touch.at + (isOut ? end - placement.end : start - placement.start)
    return at < end || isOut ? [{ ...touch, at }] : []
  })
  return { ...placement, start, end, touches }
}
