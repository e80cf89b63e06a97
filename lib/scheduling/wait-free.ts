import { type Arrival, arrivalsOf, momentOf, type Placed, placedOf } from './placed.ts'
import type { ActivityId, CookId, DeliveryId, Problem, ServingId, Tick } from './problem.ts'
import type { Schedule } from './schedule.ts'

/** What waiting hurts: a wish that is broken further, or a limit that is never bent. */
export type Hurt =
  | { readonly kind: 'lag'; readonly lag: number; readonly safety: boolean }
  | { readonly kind: 'keeps' | 'carry'; readonly delivery: DeliveryId; readonly safety: boolean }
  | { readonly kind: 'window'; readonly activity: ActivityId; readonly safety: true }
  | { readonly kind: 'presence'; readonly activity: ActivityId; readonly cook: CookId; readonly safety: true }

/** What a later serving costs. `by`: ticks past the limit, further than already planned. */
export interface LaterPrice {
  readonly later: number
  /** The rise of the goal "keeping"; what is never bent is not priced but listed. */
  readonly price: number
  readonly hurts: readonly (Hurt & { readonly by: number })[]
}

interface Limit {
  readonly hurt: Hurt
  /** Ticks past it when the serving comes so much later; never falls. */
  readonly over: (later: number) => number
}

/** 4 h at 30 s: nobody asks about more. */
const MOST = 480

/**
 * By how many ticks each serving, with all after it, can come later than planned before a wish is broken further or a hard
 * limit is reached, as V1 and V2 in docs/spec.md say. null for what has been served; at most 4 h.
 */
export const waitFree = (problem: Problem, schedule: Schedule): { readonly serving: ServingId; readonly by: number | null }[] => {
  const laid = lay(problem, schedule)
  return problem.servings.map((serving) => {
    if (serving.fact || momentOf(schedule, serving.id) === undefined) return { serving: serving.id, by: null }
    const limits = limitsOf(laid, serving.id)
    return { serving: serving.id, by: limits.reduce((least, limit) => freeUnder(limit, least), MOST) }
  })
}

/** What gives first when a serving waits beyond what is free, and the most ticks at which nothing else gives; null when it is never bent. */
export interface Beyond {
  readonly hurts: readonly Hurt[]
  readonly by: number | null
}

/** For each serving what comes after `waitFree`, as V2 says; null when it is served, or can wait 4 h for nothing. */
export const waitBeyond = (
  problem: Problem,
  schedule: Schedule,
): { readonly serving: ServingId; readonly beyond: Beyond | null }[] => {
  const laid = lay(problem, schedule)
  return problem.servings.map(({ id, fact }) => {
    if (fact || momentOf(schedule, id) === undefined) return { serving: id, beyond: null }
    const limits = limitsOf(laid, id)
    const free = limits.reduce((least, limit) => freeUnder(limit, least), MOST)
    if (free >= MOST) return { serving: id, beyond: null }
    const first = limits.filter(({ over }) => over(free + 1) > over(0))
    const hurts = first.map(({ hurt }) => hurt)
    if (hurts.some(({ safety }) => safety)) return { serving: id, beyond: { hurts, by: null } }
    const others = limits.filter((limit) => !first.includes(limit))
    return { serving: id, beyond: { hurts, by: others.reduce((least, limit) => freeUnder(limit, least), MOST) } }
  })
}

/** What it costs, and what suffers, when a serving and all after it come so many ticks later (V3). */
export const waitPrices = (problem: Problem, schedule: Schedule, serving: ServingId, later: readonly number[]): LaterPrice[] => {
  const limits = limitsOf(lay(problem, schedule), serving)
  return later.map((by) => {
    const hurts = limits.flatMap(({ hurt, over }) => {
      const more = over(by) - over(0)
      return more > 0 ? [{ ...hurt, by: more }] : []
    })
    const bent = hurts.reduce((sum, hurt) => sum + (hurt.safety ? 0 : hurt.by), 0)
    return { later: by, price: problem.weights.past * bent, hurts }
  })
}

/** The greatest wait ≤ most that this limit lets pass. */
const freeUnder = ({ over }: Limit, most: number): number => {
  const now = over(0)
  if (over(most) <= now) return most
  let [free, dear] = [0, most]
  while (dear - free > 1) {
    const middle = Math.floor((free + dear) / 2)
    if (over(middle) <= now) free = middle
    else dear = middle
  }
  return free
}

interface Laid {
  readonly problem: Problem
  readonly schedule: Schedule
  readonly placed: readonly Placed[]
  readonly byId: ReadonlyMap<ActivityId, Placed>
  readonly arrivals: readonly Arrival[]
}

const lay = (problem: Problem, schedule: Schedule): Laid => {
  const placed = placedOf(problem, schedule)
  const byId = new Map(placed.map((one) => [one.activity.id, one]))
  return { problem, schedule, placed, byId, arrivals: arrivalsOf(problem, schedule) }
}

const limitsOf = (laid: Laid, serving: ServingId): Limit[] => {
  const from = laid.problem.servings.findIndex(({ id }) => id === serving)
  const later = new Set(laid.problem.servings.slice(from).flatMap(({ id, fact }) => (fact ? [] : [id])))
  const servingOf = new Map(laid.problem.deliveries.map((delivery) => [delivery.id, delivery.serving]))
  const word = wordAt(laid, serving)
  const moves = ({ activity, placement }: Placed) => {
    const own = servingOf.get(activity.delivery ?? '')
    return !activity.fact && placement.start >= word && (own === undefined || later.has(own))
  }
  return [
    ...lagLimits(laid, moves),
    ...laid.arrivals.flatMap((arrival) => (later.has(arrival.delivery.serving) ? dishLimits(laid, arrival, moves) : [])),
    ...laid.placed.filter(moves).flatMap((one) => [windowLimit(laid, one), ...presenceLimits(laid, one)]),
  ]
}

/** V1: the word comes when the first plate of the serving is filled, else when it is due. */
const wordAt = ({ problem, schedule, placed }: Laid, serving: ServingId): Tick => {
  const dishes = new Set(problem.deliveries.filter((one) => one.serving === serving).map(({ id }) => id))
  const plating = placed.filter(({ activity }) => activity.plating && !activity.fact && dishes.has(activity.delivery ?? ''))
  const due = momentOf(schedule, serving) ?? 0
  return Math.max(problem.now ?? Number.NEGATIVE_INFINITY, Math.min(due, ...plating.map(({ placement }) => placement.start)))
}

type Moves = (one: Placed) => boolean

const lagLimits = ({ problem, byId }: Laid, moves: Moves): Limit[] =>
  problem.lags.flatMap(({ from, edge, to, least, most, bound }, lag): Limit[] => {
    const [before, after] = [byId.get(from), byId.get(to)]
    if (!before || !after || moves(before) === moves(after) || after.activity.fact) return []
    const gap = after.placement.start - before.placement[edge]
    if (moves(before)) return [{ hurt: { kind: 'lag', lag, safety: true }, over: (later) => Math.max(0, least - gap + later) }]
    if (most === undefined) return []
    return [{ hurt: { kind: 'lag', lag, safety: bound === 'safety' }, over: (later) => Math.max(0, gap + later - most) }]
  })

/** How long a dish waits for the table, and how long it is on the road. */
const dishLimits = (laid: Laid, { delivery }: Arrival, moves: Moves): Limit[] => {
  const own = laid.placed.filter(({ activity }) => activity.delivery === delivery.id)
  const moment = momentOf(laid.schedule, delivery.serving) ?? 0
  const at = (tick: Tick, one: Placed, later: number) => (moves(one) ? tick + later : tick)
  const ready = (later: number) => Math.max(...own.map((one) => at(one.placement.end, one, later)))
  const arrival = (later: number) => Math.max(ready(later), moment + later - delivery.early)
  const { most, bound } = delivery.keeps
  const keeps: Limit = {
    hurt: { kind: 'keeps', delivery: delivery.id, safety: bound === 'safety' },
    over: (later) => Math.max(0, arrival(later) - ready(later) - most),
  }
  const road = own.find(({ activity }) => activity.road)
  const { carry } = delivery
  if (!road || !carry) return [keeps]
  const first = own
    .filter(({ activity }) => activity.road)
    .reduce((a, b) => (b.placement.start < a.placement.start ? b : a), road)
  const next = own.filter(({ activity, placement }) => !activity.road && placement.start >= first.placement.end)
  const carriedTo = (later: number) =>
    next.length > 0 ? Math.min(...next.map((one) => at(one.placement.start, one, later))) : arrival(later)
  const over = (later: number) => Math.max(0, carriedTo(later) - at(first.placement.start, first, later) - carry.most)
  return [keeps, { hurt: { kind: 'carry', delivery: delivery.id, safety: carry.bound === 'safety' }, over }]
}

const windowLimit = ({ problem }: Laid, { activity, placement }: Placed): Limit => {
  const until = Math.min(activity.to ?? problem.horizon.to, problem.horizon.to)
  return {
    hurt: { kind: 'window', activity: activity.id, safety: true },
    over: (later) => Math.max(0, placement.end + later - until),
  }
}

/** Who is there may have to go: the stay, or the way to the next one, in which a piece of work lies ends. */
const presenceLimits = ({ problem }: Laid, { activity, mode, placement }: Placed): Limit[] => {
  const { start, end, cooks, touches } = placement
  const work = [
    ...(mode.care === 'leave' ? [] : cooks.map((cook) => ({ cook, from: start, to: end, road: activity.road }))),
    ...touches.map(({ touch, at, cook }) => ({ cook, from: at, to: at + (mode.touches[touch]?.takes ?? 0), road: undefined })),
  ]
  return work.flatMap(({ cook, from, to, road }): Limit[] => {
    const stays = problem.cooks.find(({ id }) => id === cook)?.presence ?? []
    const until = road
      ? stays.find((stay) => stay.from >= to)?.from
      : stays.find((stay) => stay.place === activity.place && stay.from <= from && stay.to >= to)?.to
    if (until === undefined) return []
    const hurt: Hurt = { kind: 'presence', activity: activity.id, cook, safety: true }
    return [{ hurt, over: (later) => Math.max(0, to + later - until) }]
  })
}
