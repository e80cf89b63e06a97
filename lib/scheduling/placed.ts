import type { Activity, Delivery, Mode, Problem, Serving, Tick } from './problem.ts'
import type { Placement, Schedule } from './schedule.ts'

/** A placement with the activity and mode it is of. */
export interface Placed {
  readonly activity: Activity
  readonly mode: Mode
  readonly placement: Placement
}

/** Every placement with what it places, in the schedule's order. */
export const placedOf = (problem: Problem, schedule: Schedule): Placed[] => {
  const byId = new Map(problem.activities.map((activity) => [activity.id, activity]))
  return schedule.placements.flatMap((placement) => {
    const activity = byId.get(placement.activity)
    const mode = activity?.modes[placement.mode]
    return activity && mode ? [{ activity, mode, placement }] : []
  })
}

export const momentOf = (schedule: Schedule, serving: string): Tick | undefined =>
  schedule.servings.find((one) => one.serving === serving)?.toTable

/** When the plates of a serving are off the table. */
export const platesOffOf = (serving: Serving, toTable: Tick): Tick =>
  serving.fact?.platesOff ?? toTable + serving.eating + serving.clearing

/** Each serving with its moment and what it is waited for since: the plates before, or when the guests come. */
export const waitsOf = (
  problem: Problem,
  schedule: Schedule,
): readonly { readonly serving: Serving; readonly since: Tick; readonly moment: Tick; readonly wait: number }[] =>
  problem.servings.flatMap((serving, i) => {
    const moment = momentOf(schedule, serving.id)
    const before = problem.servings[i - 1]
    const previous = before && momentOf(schedule, before.id)
    const off = before && previous !== undefined ? platesOffOf(before, previous) : undefined
    const since = serving.role.kind === 'next' ? off : serving.role.kind === 'welcome' ? serving.earliest : undefined
    return moment === undefined || since === undefined ? [] : [{ serving, since, moment, wait: moment - since }]
  })

/** The stretch in which who is up misses the table: from the first serving that is not the welcome to the last. */
export const tableWindow = (problem: Problem, schedule: Schedule): { readonly from: Tick; readonly to: Tick } | undefined => {
  const first = problem.servings.find((serving) => serving.role.kind !== 'welcome')
  const last = problem.servings[problem.servings.length - 1]
  const from = first && momentOf(schedule, first.id)
  const to = last && momentOf(schedule, last.id)
  return from === undefined || to === undefined ? undefined : { from, to }
}

/** When people at the table eat: [toTable, toTable + eating) of each serving that is not the welcome. */
export const mealsOf = (problem: Problem, schedule: Schedule): { readonly from: Tick; readonly to: Tick }[] =>
  problem.servings.flatMap((serving) => {
    const from = momentOf(schedule, serving.id)
    return from === undefined || serving.role.kind === 'welcome' ? [] : [{ from, to: from + serving.eating }]
  })

/** When a dish is ready and arrives, and from when to when it is carried; undefined when nothing of it is placed. */
export interface Arrival {
  readonly delivery: Delivery
  readonly ready: Tick
  readonly arrival: Tick
  readonly carried: { readonly from: Tick; readonly to: Tick } | undefined
  readonly served: boolean
  readonly allFacts: boolean
}

export const arrivalsOf = (problem: Problem, schedule: Schedule): Arrival[] => {
  const placed = placedOf(problem, schedule)
  return problem.deliveries.flatMap((delivery) => {
    const own = placed.filter(({ activity }) => activity.delivery === delivery.id)
    const serving = problem.servings.find((one) => one.id === delivery.serving)
    const moment = momentOf(schedule, delivery.serving)
    if (own.length === 0 || !serving || moment === undefined) return []
    const ready = Math.max(...own.map(({ placement }) => placement.end))
    const arrival = Math.max(ready, moment - delivery.early)
    return {
      delivery,
      ready,
      arrival,
      carried: carriedOf(own, arrival),
      served: serving.fact !== undefined,
      allFacts: own.every(({ activity }) => activity.fact),
    }
  })
}

const carriedOf = (own: readonly Placed[], arrival: Tick): Arrival['carried'] => {
  const roads = own.filter(({ activity }) => activity.road).map(({ placement }) => placement)
  roads.sort((a, b) => a.start - b.start || a.end - b.end)
  const first = roads[0]
  if (!first) return undefined
  const later = own.flatMap(({ activity, placement }) =>
    !activity.road && placement.start >= first.end ? [placement.start] : [],
  )
  return { from: first.start, to: later.length > 0 ? Math.min(...later) : arrival }
}
