import type { Activity, Cook, Delivery, Fact, Kit, Mode, Problem, Serving, Tick, Touch, Use } from '#lib/scheduling/problem.ts'
import type { KitUse, Placement, Schedule } from '#lib/scheduling/schedule.ts'
import type { Span } from './span.ts'

/** A placed activity whose mode exists. Facts are not planned. */
export interface Placed {
  readonly activity: Activity
  readonly placement: Placement
  readonly mode: Mode
  readonly fact?: Fact
  readonly planned: boolean
  readonly start: Tick
  readonly end: Tick
  /** Until when its kit is held: its end, or the end of its out touch when that is later. */
  readonly holdEnd: Tick
}

/** A cook at work. Touches are planned even when their activity is under way. */
export interface Busy extends Span {
  readonly cook: string
  readonly kind: 'hands-on' | 'eye' | 'touch'
  readonly of: Placed
  readonly planned: boolean
}

/** Kit that is held by an activity or by a delivery that waits for the table. */
export interface Hold extends Span {
  readonly kit: Kit
  readonly unit: number
  readonly use: Use
  readonly planned: boolean
  readonly by: { readonly activity: Placed } | { readonly delivery: Delivery }
}

export interface Served {
  readonly serving: Serving
  readonly moment: Tick
  readonly platesOff: Tick
  readonly planned: boolean
}

/** A delivery of which something is placed. */
export interface Delivered {
  readonly delivery: Delivery
  readonly placed: readonly Placed[]
  readonly served: Served
  readonly ready: Tick
  readonly arrival: Tick
  /** From its first carrying start to the next activity's start, or to arrival. */
  readonly carry?: Span
  /** All its activities are facts: how long it has waited cannot be planned. */
  readonly happened: boolean
}

/** A schedule laid against its problem: what the rules look at. Parts that make no sense are left out; H1, H11 and H16 tell. */
export interface Scene {
  readonly problem: Problem
  readonly schedule: Schedule
  readonly placed: readonly Placed[]
  readonly cooks: ReadonlyMap<string, Cook>
  readonly busy: readonly Busy[]
  readonly holds: readonly Hold[]
  readonly served: readonly Served[]
  readonly delivered: readonly Delivered[]
}

export const sceneOf = (problem: Problem, schedule: Schedule): Scene => {
  const activities = new Map(problem.activities.map((activity) => [activity.id, activity]))
  const placed = schedule.placements.flatMap((placement) => placedOf(activities.get(placement.activity), placement))
  const cooks = new Map(problem.cooks.map((cook) => [cook.id, cook]))
  const served = problem.servings.flatMap((serving) => {
    const entry = schedule.servings.find((each) => each.serving === serving.id)
    return entry ? [servedOf(serving, entry.toTable)] : []
  })
  const delivered = problem.deliveries.flatMap((delivery) => deliveredOf(delivery, placed, served))
  return {
    problem,
    schedule,
    placed,
    cooks,
    busy: placed.flatMap(busyOf),
    holds: [...placed.flatMap((one) => holdsOf(problem, one)), ...keepingHolds(problem, schedule, delivered)],
    served,
    delivered,
  }
}

const placedOf = (activity: Activity | undefined, placement: Placement): Placed[] => {
  const mode = activity?.modes[placement.mode]
  if (!activity || !mode) return []
  const outs = placement.touches.flatMap(({ touch, at }) => {
    const kind = mode.touches[touch]
    return kind?.when === 'out' ? [at + kind.takes] : []
  })
  return [
    {
      activity,
      placement,
      mode,
      ...(activity.fact ? { fact: activity.fact } : {}),
      planned: !activity.fact,
      start: placement.start,
      end: placement.end,
      holdEnd: Math.max(placement.end, ...outs),
    },
  ]
}

const busyOf = (of: Placed): Busy[] => {
  const { care } = of.mode
  const attending =
    care === 'leave'
      ? []
      : of.placement.cooks.map((cook) => ({ cook, kind: care, of, planned: of.planned, from: of.start, to: of.end }))
  const touching = of.placement.touches.flatMap(({ touch, at, cook }) => {
    const kind: Touch | undefined = of.mode.touches[touch]
    return kind ? [{ cook, kind: 'touch' as const, of, planned: true, from: at, to: at + kind.takes }] : []
  })
  return [...attending, ...touching]
}

const servedOf = (serving: Serving, moment: Tick): Served => ({
  serving,
  moment,
  platesOff: serving.fact?.platesOff ?? moment + serving.eating + serving.clearing,
  planned: !serving.fact,
})

const deliveredOf = (delivery: Delivery, all: readonly Placed[], servings: readonly Served[]): Delivered[] => {
  const placed = all.filter(({ activity }) => activity.delivery === delivery.id)
  const served = servings.find(({ serving }) => serving.id === delivery.serving)
  if (placed.length === 0 || !served) return []
  const ready = Math.max(...placed.map(({ end }) => end))
  const arrival = Math.max(ready, served.moment - delivery.early)
  const carry = carryOf(placed, arrival)
  return [
    { delivery, placed, served, ready, arrival, ...(carry ? { carry } : {}), happened: placed.every(({ planned }) => !planned) },
  ]
}

const carryOf = (placed: readonly Placed[], arrival: Tick): Span | undefined => {
  const carrying = placed.filter(({ activity }) => activity.road)
  const byStart = (a: Placed, b: Placed) => a.start - b.start || a.end - b.end || (a.activity.id < b.activity.id ? -1 : 1)
  const first = [...carrying].sort(byStart)[0]
  if (!first) return undefined
  const next = placed.filter(({ activity, start }) => !activity.road && start >= first.end).map(({ start }) => start)
  return { from: first.start, to: next.length > 0 ? Math.min(...next) : arrival }
}

const holdsOf = (problem: Problem, of: Placed): Hold[] =>
  pairs(problem, of.activity.place, of.mode.uses, of.placement.kit).map((pair) => ({
    ...pair,
    planned: of.planned,
    by: { activity: of },
    from: of.start,
    to: of.holdEnd,
  }))

/** Keeping kit is a fact when the course has been served, or the dish has been finished. */
const keepingHolds = (problem: Problem, schedule: Schedule, delivered: readonly Delivered[]): Hold[] =>
  schedule.keeping.flatMap((keeping) => {
    const of = delivered.find(({ delivery }) => delivery.id === keeping.delivery)
    if (!of) return []
    const { place, uses } = of.delivery.keeps
    return pairs(problem, place, uses, keeping.kit).map((pair) => ({
      ...pair,
      planned: of.served.planned && !of.happened,
      by: { delivery: of.delivery },
      from: keeping.from,
      to: keeping.to,
    }))
  })

const pairs = (problem: Problem, place: string, uses: readonly Use[], held: readonly KitUse[]) =>
  uses.flatMap((use, at) => {
    const entry = held[at]
    const kit = problem.kit.find(({ id }) => id === entry?.id)
    return entry && kit && serves(kit, entry.unit, use, place) ? [{ kit, unit: entry.unit, use }] : []
  })

/** Whether this kit can serve this use at this place. */
export const serves = (kit: Kit, unit: number, use: Use, place: string): boolean => {
  if (kit.place !== place) return false
  if (kit.kind === 'ring') return use.kind === 'ring' && kit.size >= use.size && unit >= 0 && unit < kit.count
  if (unit !== 0) return false
  if (kit.kind === 'oven') return use.kind === 'oven' && (use.oven === undefined || use.oven === kit.id)
  return use.kind === 'store' && kit.of === use.of
}

export const isServable = (problem: Problem, use: Use, place: string): boolean =>
  problem.kit.some((kit) => serves(kit, 0, use, place))

/** The first moment at which a running activity may be over. */
export const earliestEnd = (problem: Problem, fact: Fact & { readonly kind: 'running' }): Tick =>
  Math.max(problem.now ?? Number.NEGATIVE_INFINITY, fact.start + fact.atLeast)
