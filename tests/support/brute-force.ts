import { CALM_HOUR, type Problem } from '#lib/scheduling/problem.ts'
import type { Cost, Keeping, Placement, Schedule } from '#lib/scheduling/schedule.ts'
import { sceneOf } from '#lib/scheduling/verify/scene.ts'
import { owedOf } from '#lib/scheduling/verify/touches.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { fits } from './brute-fits.ts'
import { type Moments, momentsOf } from './brute-moments.ts'
import { countBits, maskOf, type Option, optionOf } from './brute-option.ts'
import { kitChoices, placementsOf, product } from './brute-options.ts'

/** The cheapest schedule there is, with how many nodes were looked at. */
export interface Best {
  readonly schedule: Schedule
  readonly cost: Cost
  readonly nodes: number
}

/** Searched more nodes than allowed: the problem is too big for brute force. */
export const TOO_BIG = 'too big'

/**
 * The exact minimum over all schedules of a small problem in [0, 31), by enumeration of serving moments and, for each, of
 * starts, lengths, modes, cooks, kit and touches. A whole schedule is judged by the verifier alone; on the way, branches
 * are cut that two options, a capacity or a lower bound of the cost rule out.
 */
export const bruteForce = (problem: Problem, mostNodes = 3_000_000): Best | typeof TOO_BIG => {
  const search = searchOf(problem)
  for (const moments of momentsOf(problem)) {
    if (moments.cost >= search.bestTotal() - EPSILON) break
    if (!search.at(moments, mostNodes)) return TOO_BIG
  }
  const best = search.best()
  if (!best) throw new Error('no schedule at all: every problem has one')
  return { ...best, nodes: search.nodes() }
}

const EPSILON = 1e-9

const searchOf = (problem: Problem) => {
  const { weights } = problem
  const domains = problem.activities.map((activity, of) => [
    ...placementsOf(problem, activity).map((placement) => optionOf(problem, of, activity, placement)),
    ...(activity.fact ? [] : [optionOf(problem, of, activity, null)]),
  ])
  const platingAnywhere = problem.activities.some(({ plating }) => plating)
  let best: Omit<Best, 'nodes'> | undefined
  let bestTotal = Number.POSITIVE_INFINITY
  let nodes = 0

  const at = (moments: Moments, mostNodes: number): boolean => {
    const momentOf = new Map(moments.servings.map(({ serving, toTable }) => [serving, toTable]))
    const deliveries = new Map(problem.deliveries.map((delivery) => [delivery.id, delivery]))
    const moment = (activity: Option['activity']): number | undefined => {
      const delivery = activity.delivery === undefined ? undefined : deliveries.get(activity.delivery)
      return delivery && momentOf.get(delivery.serving)
    }
    const first = problem.servings.find(({ role }) => role.kind !== 'welcome')
    const last = problem.servings.at(-1)
    const [from, to] = [momentOf.get(first?.id ?? '') ?? 0, momentOf.get(last?.id ?? '') ?? 0]
    const table = first ? maskOf(from, to) : 0
    const calm = first ? maskOf(from - CALM_HOUR, from) : 0

    /** What an option costs whatever else is placed. */
    const soloCost = (option: Option): number => {
      const { activity, placement, planned } = option
      if (!placement) return weights.left
      let cost = 0
      const due = moment(activity)
      if (planned && due !== undefined && option.end < due) cost += (weights.early * (due - option.end)) / 100
      const told = planned ? problem.previous?.find((previous) => previous.activity === activity.id) : undefined
      if (told && !isAsTold(told, placement)) cost += weights.moved * (told.frozen ? 10 : 1)
      const serving = problem.servings.find(({ id }) => id === deliveries.get(activity.delivery ?? '')?.serving)
      if (activity.plating && serving?.lead !== undefined && !placement.cooks.includes(serving.lead)) cost += weights.lead
      cost += sparedCost(problem, option)
      const mode = activity.modes[placement.mode]
      if (activity.fact && mode) {
        const owed = owedOf(problem, { mode, fact: activity.fact, start: option.start, end: option.end })
        cost += weights.left * (owed.length - placement.touches.length)
      }
      return cost
    }

    /** A dish that would be late for its serving fits no schedule with these moments. */
    const isInTime = ({ activity, placement, end }: Option): boolean => {
      const delivery = deliveries.get(activity.delivery ?? '')
      const serving = problem.servings.find(({ id }) => id === delivery?.serving)
      const due = moment(activity)
      if (!placement || !delivery || due === undefined || serving?.fact) return true
      return end <= due + delivery.late
    }

    const pairCost = (a: Option, b: Option): number => {
      if (!a.placement || !b.placement) return 0
      let cost = 0
      for (const lag of problem.lags) {
        if (lag.bound !== 'quality' || lag.most === undefined) continue
        const [early, late] = lag.from === a.activity.id ? [a, b] : [b, a]
        if (lag.from !== early.activity.id || lag.to !== late.activity.id || !late.planned) continue
        const gap = late.start - (lag.edge === 'start' ? early.start : early.end)
        cost += weights.past * Math.max(0, gap - lag.most)
      }
      return cost
    }

    const away = (option: Option, cook: number): number =>
      option.activity.at === 'table' ? 0 : (option.hands[cook] ?? 0) | (option.eyes[cook] ?? 0)

    /** What the cooks' time costs so far: a lower bound, for what comes later only adds to it. */
    const timeCost = (placed: readonly Option[]): { cost: number; up: number[] } => {
      const up = problem.cooks.map((_, cook) => placed.reduce((mask, option) => mask | away(option, cook), 0) & table)
      const hands = problem.cooks.map((_, cook) => placed.reduce((mask, option) => mask | (option.hands[cook] ?? 0), 0) & calm)
      const missed = problem.cooks.map(({ eats }, cook) => (eats ? countBits(up[cook] ?? 0) : 0))
      let cost = weights.unfair * Math.max(0, ...missed)
      for (const ticks of missed) cost += weights.missed * ticks
      for (const mask of hands) cost += weights.calm * countBits(mask)
      const hosts = problem.cooks.flatMap(({ host }, cook) => (host ? [up[cook] ?? 0] : []))
      if (!platingAnywhere && hosts.length > 0) cost += weights.allAway * countBits(hosts.reduce((all, mask) => all & mask))
      return { cost, up }
    }

    /** What an option adds at the least to the cooks' time, counting only hands, which one cook never has twice. */
    const addedTime = (option: Option, up: readonly number[]): number => {
      if (option.isTrip || !option.planned) return 0
      let cost = 0
      for (let cook = 0; cook < problem.cooks.length; cook += 1) {
        const hands = option.hands[cook] ?? 0
        cost += weights.calm * countBits(hands & calm)
        if (problem.cooks[cook]?.eats && option.activity.at !== 'table')
          cost += weights.missed * countBits(hands & table & ~(up[cook] ?? 0))
      }
      return cost
    }

    /** What keeping costs at the least, if each delivery is ready as late as it still can be. */
    const keepsCost = (placed: readonly Option[], open: readonly (readonly Option[])[]): number =>
      problem.deliveries.reduce((sum, delivery) => {
        const serving = problem.servings.find(({ id }) => id === delivery.serving)
        const due = momentOf.get(delivery.serving)
        const own = placed.filter(({ activity, placement }) => placement && activity.delivery === delivery.id)
        if (serving?.fact || due === undefined || own.length === 0) return sum
        let ready = Math.max(...own.map(({ end }) => end))
        for (const domain of open)
          for (const option of domain)
            if (option.placement && option.activity.delivery === delivery.id && option.end > ready) ready = option.end
        return sum + weights.past * Math.max(0, due - delivery.early - ready - delivery.keeps.most)
      }, 0)

    const descend = (placed: readonly Option[], placedCost: number, open: readonly (readonly Option[])[]): boolean => {
      nodes += 1
      if (nodes > mostNodes) return false
      const { cost: time, up } = timeCost(placed)
      const certain = moments.cost + placedCost + time + keepsCost(placed, open)
      if (open.length === 0) {
        if (certain < bestTotal - EPSILON) judge(placed, moments)
        return true
      }
      const priced = open.map((domain) => domain.map((option) => ({ option, cost: addedTo(option, placed, up) })))
      const least = priced.map((domain) => Math.min(...domain.map(({ cost }) => cost)))
      const bound = certain + least.reduce((sum, cost) => sum + cost, 0)
      if (bound >= bestTotal - EPSILON) return true
      const next = mostUrgent(priced.map((domain) => domain.length))
      const rest = open.filter((_, index) => index !== next)
      const restLeast = bound - certain - (least[next] ?? 0)
      const choices = [...(priced[next] ?? [])].sort((a, b) => a.cost - b.cost)
      for (const { option, cost } of choices) {
        if (certain + cost + restLeast >= bestTotal - EPSILON) break
        if (isTwinOfUnused(placed, option) || !hasRoom(problem, placed, option)) continue
        const left = rest.map((domain) => domain.filter((other) => fits(problem, option, other)))
        if (left.some((domain) => domain.length === 0)) continue
        const added = placed.reduce((sum, other) => sum + pairCost(option, other), solo(option))
        if (!descend([...placed, option], placedCost + added, left)) return false
      }
      return true
    }

    const soloCosts = new Map<Option, number>()
    const solo = (option: Option): number => soloCosts.get(option) ?? 0
    const addedTo = (option: Option, placed: readonly Option[], up: readonly number[]): number =>
      placed.reduce((sum, other) => sum + pairCost(option, other), solo(option) + (option.placement ? addedTime(option, up) : 0))

    const inTime = domains.map((domain) => domain.filter(isInTime))
    for (const domain of inTime) for (const option of domain) soloCosts.set(option, soloCost(option))
    return inTime.some((domain) => domain.length === 0) ? true : descend([], 0, inTime)
  }

  /** Tries the ways of keeping what waits for the table; the cost is the same in all. */
  const judge = (placed: readonly Option[], { servings }: Moments): void => {
    const bare: Schedule = {
      placements: placed.flatMap(({ placement }) => (placement ? [placement] : [])).sort(inOrder),
      servings,
      keeping: [],
      left: placed.flatMap(({ placement, activity }) =>
        placement ? [] : [{ activity: activity.id, because: 'safety' as const }],
      ),
    }
    const { cost } = verify(problem, bare)
    if (cost.total >= bestTotal - EPSILON) return
    for (const keeping of keepingChoices(problem, bare)) {
      const schedule = { ...bare, keeping }
      if (verify(problem, schedule).violations.length > 0) continue
      best = { schedule, cost }
      bestTotal = cost.total
      return
    }
  }

  return { at, best: () => best, bestTotal: () => bestTotal, nodes: () => nodes }
}

/** What of an option lies where cooks are to be spared; an eye and a touch of one cook at once count each. */
const sparedCost = (problem: Problem, { activity, placement, start, end }: Option): number => {
  const mode = placement && activity.modes[placement.mode]
  if (!placement || !mode || !problem.spares) return 0
  const stretches = [
    ...(mode.care === 'leave' ? [] : placement.cooks.map((cook) => ({ cook, from: start, to: end }))),
    ...placement.touches.map(({ touch, at, cook }) => ({ cook, from: at, to: at + (mode.touches[touch]?.takes ?? 0) })),
  ]
  let cost = 0
  for (const spare of problem.spares) {
    if (spare.activities && !spare.activities.includes(activity.id)) continue
    for (const one of stretches)
      if (one.cook === spare.cook) cost += spare.price * Math.max(0, Math.min(one.to, spare.to) - Math.max(one.from, spare.from))
  }
  return cost
}

const inOrder = (a: Placement, b: Placement): number => a.start - b.start || (a.activity < b.activity ? -1 : 1)

const isAsTold = (told: { start: number; mode: number; cooks: readonly string[] }, placement: Placement): boolean =>
  told.start === placement.start &&
  told.mode === placement.mode &&
  told.cooks.length === placement.cooks.length &&
  told.cooks.every((cook) => placement.cooks.includes(cook))

const mostUrgent = (sizes: readonly number[]): number => sizes.indexOf(Math.min(...sizes))

/** Rings of one kit are alike: only the first unused one need be tried. */
const isTwinOfUnused = (placed: readonly Option[], option: Option): boolean =>
  option.holds.filter(({ use }) => use.kind === 'ring').length === 1 &&
  option.holds.some(({ kit, unit, use }) => {
    if (use.kind !== 'ring' || unit === 0) return false
    const used = new Set(placed.flatMap(({ holds }) => holds.filter((hold) => hold.kit === kit).map((hold) => hold.unit)))
    return !used.has(unit) && Array.from({ length: unit }, (_, lower) => lower).some((lower) => !used.has(lower))
  })

/** Shelves and amounts with what is placed so far. */
const hasRoom = (problem: Problem, placed: readonly Option[], option: Option): boolean =>
  option.holds.every(({ kit: id, use }) => {
    const kit = problem.kit.find((each) => each.id === id)
    if (!kit || kit.kind === 'ring' || use.kind === 'ring') return true
    const capacity = kit.kind === 'oven' ? kit.shelves : kit.capacity
    const held = [...placed, option].flatMap(({ holds, planned }) =>
      holds.filter((hold) => hold.kit === id).map((hold) => ({ ...hold, planned })),
    )
    return held.every(({ from: at }) => {
      const now = held.filter(({ from, to }) => from <= at && at < to)
      const sum = now.reduce(
        (total, hold) => total + (hold.use.kind === 'oven' ? hold.use.shelves : hold.use.kind === 'store' ? hold.use.amount : 0),
        0,
      )
      return sum <= capacity || !now.some(({ planned }) => planned)
    })
  })

const keepingChoices = (problem: Problem, bare: Schedule): Keeping[][] =>
  product(
    sceneOf(problem, bare)
      .delivered.filter(({ ready, arrival }) => ready < arrival)
      .map(({ delivery, ready, arrival, happened, served }) => {
        const choices = kitChoices(problem.kit, delivery.keeps.uses, delivery.keeps.place)
        const isFact = happened || !served.planned
        return (choices.length === 0 && isFact ? [[]] : choices).map(
          (kit): Keeping => ({ delivery: delivery.id, from: ready, to: arrival, kit }),
        )
      }),
  )
