import { breaches } from './breaches.ts'
import { compile } from './compile.ts'
import { type Demand, demandsOf, relaxed, wishKey } from './fight-relax.ts'
import { smallest } from './fight-smallest.ts'
import { goOnFrom } from './go-on.ts'
import { impossibleCycles } from './lags.ts'
import type { ActivityId, Problem } from './problem.ts'
import type { Breach, Budget, Schedule } from './schedule.ts'

/** What fights, in the order of the problem, and how many steps it took to find out. */
export interface Fight {
  readonly demands: readonly Demand[]
  readonly steps: number
}

/** Insertions for one question, and for the last one before a fight is told. */
const ASK = 400
const SURE = 2000

/**
 * The smallest fight that a broken wish takes part in: what cannot be had all at once, and could without any one of it.
 * First by lags alone, where that no times can keep them is a proof. Else by what the search finds: whatever can be done
 * without so that the wish is kept and none is broken worse takes part, each shown by a schedule; then what else is needed
 * for a fight (sensitivity and deletion filters: Chinneck and Dravnieks 1991, "Locating minimal infeasible constraint sets in
 * linear programs", ORSA J. Computing 3:157-168). Pre: `schedule` is one of `problem`, `breach` one of its broken wishes.
 * Nothing is demanded when the search can keep it all after all, or is out of budget.
 */
export const fightOf = (problem: Problem, schedule: Schedule, breach: Breach, budget: Budget): Fight => {
  const asking = askerOf(problem, schedule, breach, budget)
  const all = demandsOf(problem, asking.left)
  const proved = fightOfLags(problem, schedule, all, breach, asking.left)
  if (proved.length > 0) return { demands: proved, steps: 0 }
  const helpful = groupsOf(problem, all).flatMap((group) => helpfulOf(asking, all, group))
  const others = asking.keeps(helpful) ? missing(asking, all, helpful) : []
  const fight = all.filter((demand) => helpful.includes(demand) || others.includes(demand))
  const isFight = !asking.isOver() && !asking.keeps(fight, SURE)
  return { demands: isFight ? fight : [], steps: asking.spent() }
}

/** The lags with wishes that ask for each other in a circle: without any one of them there is none. */
const fightOfLags = (
  problem: Problem,
  schedule: Schedule,
  all: readonly Demand[],
  breach: Breach,
  left: ReadonlySet<ActivityId>,
): Demand[] => {
  const broken = new Set(breaches(problem, schedule).map(wishKey))
  const lags = all.filter(
    (demand) =>
      demand.kind === 'wish' &&
      demand.wish.kind === 'lag' &&
      (!broken.has(wishKey(demand.wish)) || wishKey(demand.wish) === wishKey(breach)),
  )
  const circles = (some: readonly Demand[]): number => {
    const asked = relaxed(problem, some, left)
    const hard = asked.lags.map((lag) => (lag.most === undefined ? lag : { ...lag, bound: 'safety' as const }))
    return impossibleCycles(compile({ ...asked, lags: hard }).acts).length
  }
  const without = circles([])
  const fails = (some: readonly Demand[]) => circles(some) > without
  return breach.kind === 'lag' && fails(lags) ? smallest(lags, fails) : []
}

/** Of each dish and of all else: its wishes, its kit, its cooks, its earliest times. What helps is mostly in few of these. */
const groupsOf = (problem: Problem, all: readonly Demand[]): Demand[][] => {
  const dishOf = new Map(problem.activities.map(({ id, delivery }) => [id, delivery ?? id]))
  const groups = new Map<string, Demand[]>()
  for (const demand of all) {
    const key = `${demand.kind} ${ownerOf(problem, dishOf, demand)}`
    groups.set(key, [...(groups.get(key) ?? []), demand])
  }
  return [...groups.values()]
}

const ownerOf = (problem: Problem, dishOf: ReadonlyMap<ActivityId, string>, demand: Demand): string => {
  switch (demand.kind) {
    case 'cooks':
    case 'from':
      return dishOf.get(demand.activity) ?? ''
    case 'kit':
      return 'delivery' in demand.by ? demand.by.delivery : (dishOf.get(demand.by.activity) ?? '')
    case 'wish':
      if (demand.wish.kind === 'lag') return dishOf.get(problem.lags[demand.wish.lag]?.to ?? '') ?? ''
      return 'delivery' in demand.wish ? demand.wish.delivery : ''
  }
}

/** Those of a group without which the wish is kept. */
const helpfulOf = (asking: Asking, all: readonly Demand[], group: readonly Demand[]): readonly Demand[] => {
  const helps = (some: readonly Demand[]) => asking.helps(all.filter((demand) => !some.includes(demand)))
  if (!helps(group)) return []
  return group.length === 1 ? group : group.filter((demand) => helps([demand]))
}

/** What must be added to some demands so that they cannot all be kept. */
const missing = (asking: Asking, all: readonly Demand[], some: readonly Demand[]): Demand[] => {
  const others = all.filter((demand) => !some.includes(demand))
  const fails = (more: readonly Demand[]) => !asking.keeps([...some, ...more])
  return fails(others) ? smallest(others, fails) : []
}

interface Asking {
  readonly left: ReadonlySet<ActivityId>
  /** Whether a schedule was found that keeps the wish and breaks no other worse than now, with these demands alone. */
  readonly helps: (demands: readonly Demand[]) => boolean
  /** Whether a schedule was found that keeps every wish among these demands, with these alone. */
  readonly keeps: (demands: readonly Demand[], steps?: number) => boolean
  readonly isOver: () => boolean
  readonly spent: () => number
}

/** Out of budget, nothing helps and everything is kept. */
const askerOf = (problem: Problem, schedule: Schedule, breach: Breach, budget: Budget): Asking => {
  let spent = 0
  const isOver = () => spent >= budget.steps || (budget.stop?.() ?? false)
  const placed = new Set(schedule.placements.map(({ activity }) => activity))
  const left = new Set(problem.activities.flatMap(({ id }) => (placed.has(id) ? [] : [id])))
  const now = new Map(breaches(problem, schedule).map((one) => [wishKey(one), one.by]))
  const broken = (demands: readonly Demand[], steps: number): readonly Breach[] | undefined => {
    spent += steps
    const asked = relaxed(problem, demands, left)
    const found = goOnFrom(asked, schedule, { ...budget, steps })
    const wished = new Set(demands.flatMap((demand) => (demand.kind === 'wish' ? [wishKey(demand.wish)] : [])))
    return found.left.length > 0 ? undefined : breaches(asked, found).filter((one) => wished.has(wishKey(one)))
  }
  const isNoWorse = (one: Breach) => wishKey(one) !== wishKey(breach) && one.by <= (now.get(wishKey(one)) ?? 0)
  return {
    left,
    isOver,
    spent: () => spent,
    helps: (demands) => !isOver() && (broken(demands, ASK)?.every(isNoWorse) ?? false),
    keeps: (demands, steps = ASK) => isOver() || broken(demands, steps)?.length === 0,
  }
}
