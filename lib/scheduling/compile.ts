import { kitModels, modelUses } from './compile-kit.ts'
import { earliestStarts } from './earliest.ts'
import { factEnd } from './fact-end.ts'
import { longestPaths } from './lags.ts'
import type {
  Act,
  CookModel,
  DeliveryModel,
  KitModel,
  LagModel,
  Model,
  ModeModel,
  Reach,
  ServingModel,
  Stretch,
} from './model.ts'
import { ALWAYS, bitOf, NEVER } from './model.ts'
import { roundUp } from './pace.ts'
import type { Activity, Cook, Mode, Problem } from './problem.ts'
import { sparesOf } from './spares.ts'
import { leavesOf, presentStarts } from './stays.ts'

/**
 * Ids → objects and indices, with everything that never changes worked out once. A mode that no kit or no team can ever
 * serve is dropped; an activity without modes is one that will be left out. Facts keep their one guessed mode.
 */
export const compile = (problem: Problem): Model => {
  const from = problem.horizon.from
  const now = Math.max(from, problem.now ?? from)
  const places = indexer<string>()
  const vessels = indexer<string>()
  const cooks: CookModel[] = problem.cooks.map((cook, index) => ({ index, id: cook.id, host: cook.host, eats: cook.eats }))
  const kits = kitModels(problem)
  const servings = problem.servings.map((serving, index) => servingModel(problem, serving, index, now))
  const deliveries = deliveryModels(problem, servings, kits)
  const deliveryOf = new Map(deliveries.map((delivery) => [delivery.id, delivery]))
  const leadOf = new Map(problem.servings.map((serving) => [serving.id, serving.lead]))
  const told = new Map((problem.previous ?? []).map((previous) => [previous.activity, previous]))
  const spares = sparesOf(problem)
  const groupsOf = (id: string) => problem.together.flatMap((group, i) => (group.activities.includes(id) ? [i] : []))
  const acts = problem.activities.map((activity, index): Act => {
    const place = places(activity.place)
    const delivery = deliveryOf.get(activity.delivery ?? '')
    const before = told.get(activity.id)
    const factMode = Math.min(before?.mode ?? 0, activity.modes.length - 1)
    const stays = problem.cooks.map((cook) =>
      activity.road ? holes(cook, activity.place, activity.road.to) : presences(cook, activity.place),
    )
    const touchStays = problem.cooks.map((cook) => presences(cook, activity.place))
    const modes = activity.modes.flatMap((mode, i): ModeModel[] => {
      const uses = modelUses(problem, kits, activity.place, mode.uses, activity.fact !== undefined)
      const teams = activity.fact ? [] : teamsOf(problem.cooks, cooks, activity, mode, stays)
      const usable = activity.fact ? i === factMode : teams.length > 0 && uses.every((use) => use.kits.length > 0)
      return usable ? [modeModel(mode, i, uses, teams)] : []
    })
    const serving = delivery?.serving
    return {
      index,
      activity,
      place,
      spot: place * 3 + (activity.at === 'kitchen' ? 0 : activity.at === 'table' ? 1 : 2),
      atTable: activity.at === 'table',
      road: activity.road !== undefined,
      from: Math.max(activity.from ?? from, now),
      to: Math.min(activity.to ?? problem.horizon.to, problem.horizon.to),
      delivery,
      vessel: activity.vessel === undefined ? -1 : vessels(`${activity.vessel}\n${activity.place}`),
      groups: groupsOf(activity.id),
      modes,
      factMode,
      fact: activity.fact,
      minLen: activity.fact
        ? factEnd(activity.fact, now) - activity.fact.start
        : Math.min(...modes.flatMap((mode) => mode.teams.map((team) => team.len)), NEVER),
      maxLen: activity.fact
        ? factEnd(activity.fact, now) - activity.fact.start
        : Math.max(
            0,
            ...modes.flatMap((mode) => mode.teams.map((team) => Math.max(team.len, mode.care === 'leave' ? mode.upTo : 0))),
          ),
      hangsOn: ALWAYS | (delivery ? bitOf(delivery.serving.index) : 0),
      stretches: !activity.fact && modes.some((mode) => mode.upTo > mode.likely),
      preds: [],
      succs: [],
      stays,
      present: presentStarts(modes, stays),
      leaves: leavesOf(modes, stays),
      touchStays,
      touchCooks: cooks.filter((cook) => (touchStays[cook.index] ?? []).length > 0),
      heralds: [],
      spares: spares[index] ?? [],
      lead: activity.plating && serving ? cooks.find((cook) => cook.id === leadOf.get(serving.id)) : undefined,
      told:
        before && !activity.fact
          ? {
              start: before.start,
              mode: before.mode,
              cooks: before.cooks,
              price: problem.weights.moved * (before.frozen ? 10 : 1),
              frozen: before.frozen,
            }
          : undefined,
    }
  })
  for (const act of acts) act.delivery?.acts.push(act)
  joinLags(problem, acts)
  const longest = longestPaths(acts)
  for (const delivery of deliveries) markHeralds(delivery, acts, longest)
  const before = acts.map(({ index }) => reach(acts, (other) => longest[other.index]?.[index] ?? NONE, index))
  for (const act of acts)
    for (const index of before[act.index]?.acts ?? []) {
      const first = acts[index]
      if (first && act.delivery) first.hangsOn |= bitOf(act.delivery.serving.index)
    }
  const depth = Int32Array.from(before, (one) => one.acts.length + 1)
  const deepFirst = [...acts].sort((a, b) => (depth[b.index] as number) - (depth[a.index] as number) || a.index - b.index)
  return {
    problem,
    from,
    to: problem.horizon.to,
    acts,
    underWay: acts.filter(
      ({ fact, modes }) => fact?.kind === 'running' && modes.some((mode) => mode.touches.length > 0 || mode.upTo > mode.likely),
    ),
    cooks,
    kits,
    ovens: kits.filter((kit) => kit.kind === 'oven'),
    servings,
    deliveries,
    vessels: vessels.count(),
    groups: problem.together.map((group) => group.most),
    before,
    after: acts.map(({ index }) => reach(acts, (other) => (other.fact ? NONE : (longest[index]?.[other.index] ?? NONE)), index)),
    earliest: earliestStarts(acts, longest),
    depth,
    bounding: [...deepFirst].reverse().flatMap((act) => act.succs.filter((lag) => lag.most < NEVER)),
    deepFirst,
  }
}
const NONE = Number.NEGATIVE_INFINITY

const reach = (acts: readonly Act[], path: (other: Act) => number, self: number): Reach => {
  const found = acts.filter((other) => other.index !== self && path(other) > NONE)
  return { acts: Int32Array.from(found, (other) => other.index), paths: Float64Array.from(found, path) }
}

interface Indexer<T> {
  (key: T): number
  count: () => number
}

const indexer = <T>(): Indexer<T> => {
  const seen = new Map<T, number>()
  const index = (key: T): number => {
    const known = seen.get(key)
    if (known !== undefined) return known
    seen.set(key, seen.size)
    return seen.size - 1
  }
  return Object.assign(index, { count: () => seen.size })
}

const presences = (cook: Cook, place: string): Stretch[] => cook.presence.filter((stay) => stay.place === place)

const holes = (cook: Cook, place: string, to: string): Stretch[] =>
  cook.presence.flatMap((stay, i) => {
    const next = cook.presence[i + 1]
    return stay.place === place && next?.place === to && next.from > stay.to ? [{ from: stay.to, to: next.from }] : []
  })

const modeModel = (mode: Mode, index: number, uses: ModeModel['uses'], teams: ModeModel['teams']): ModeModel => ({
  index,
  care: mode.care,
  likely: mode.likely,
  upTo: mode.care === 'leave' ? Math.max(mode.likely, mode.upTo ?? mode.likely) : mode.likely,
  touches: mode.touches.map(({ when, takes, lateBy }, i) => ({
    index: i,
    when: typeof when === 'string' ? when : 'every',
    every: typeof when === 'string' ? 0 : when.every,
    takes,
    lateBy,
  })),
  uses,
  teams,
  crews: [...new Set(teams.map(({ len }) => len))].map((len) => ({ len, teams: teams.filter((team) => team.len === len) })),
  rings: uses.find((use) => use.kind === 'ring')?.kits,
})

/** Everybody who could attend: claimed ones first and as far as they go, then each choice among the others. */
const teamsOf = (
  all: readonly Cook[],
  models: readonly CookModel[],
  activity: Activity,
  mode: Mode,
  stays: readonly (readonly Stretch[])[],
): ModeModel['teams'] => {
  const size = mode.care === 'leave' ? 0 : mode.care === 'eye' ? 1 : mode.cooks
  const claimed = activity.claimed.slice(0, size).map((id) => all.findIndex((cook) => cook.id === id))
  const rest = all.flatMap((cook, i) => (activity.claimed.includes(cook.id) ? [] : [i]))
  return choices(rest, size - claimed.length).flatMap((chosen) => {
    const team = [...claimed, ...chosen]
    const pace = team.map((i) => all[i]?.pace ?? 1).reduce((slow, one) => Math.max(slow, one), 0)
    const len = mode.care === 'hands-on' ? roundUp(mode.likely * (pace || 1)) : mode.likely
    const fits = team.every((i) => (stays[i] ?? []).some((stay) => stay.to - stay.from >= len))
    const cooks = team.flatMap((i) => models[i] ?? [])
    return fits && cooks.length === size ? [{ cooks, len }] : []
  })
}

const choices = (from: readonly number[], size: number): number[][] => {
  if (size === 0) return [[]]
  return from.flatMap((first, i) => choices(from.slice(i + 1), size - 1).map((rest) => [first, ...rest]))
}

const joinLags = (problem: Problem, acts: readonly Act[]): void => {
  const byId = new Map(acts.map((act) => [act.activity.id, act]))
  for (const lag of problem.lags) {
    const from = byId.get(lag.from)
    const to = byId.get(lag.to)
    if (!from || !to || to.fact) continue
    const model: LagModel = {
      from,
      to,
      fromEnd: lag.edge === 'end',
      least: lag.least,
      most: lag.most ?? NEVER,
      safety: lag.bound === 'safety',
      priced: lag.most !== undefined && lag.bound === 'quality',
    }
    to.preds.push(model)
    from.succs.push(model)
  }
}

/** When one activity ends a dish, those that must come after it cannot come before the dish may be ready. */
const markHeralds = (delivery: DeliveryModel, acts: readonly Act[], longest: readonly Float64Array[]): void => {
  const ends = delivery.acts.filter((act) => !act.succs.some((lag) => lag.to.delivery === delivery))
  const [last] = ends
  if (!last || ends.length > 1 || last.fact) return
  delivery.last = last
  for (const act of acts) {
    const path = longest[last.index]?.[act.index] as number
    if (act !== last && path > Number.NEGATIVE_INFINITY) act.heralds.push({ last, path })
  }
}

const servingModel = (problem: Problem, serving: Problem['servings'][number], index: number, now: number): ServingModel => {
  const ended = problem.activities.flatMap(({ delivery, fact }) => {
    const of = problem.deliveries.find((one) => one.id === delivery && one.serving === serving.id)
    return of && fact ? [factEnd(fact, now) - of.late] : []
  })
  const earliest = Math.max(serving.earliest ?? problem.horizon.from, problem.now ?? problem.horizon.from, ...ended)
  const { role } = serving
  return {
    index,
    id: serving.id,
    kind: role.kind,
    earliest,
    hasEarliest: serving.earliest !== undefined,
    wished: role.kind === 'first' ? role.sitDown : role.kind === 'welcome' ? Math.max(role.latest, earliest) : NEVER,
    eating: serving.eating,
    clearing: serving.clearing,
    pouring: serving.pouring,
    ideal: serving.wait.ideal,
    most: serving.wait.most,
    served: serving.fact && { toTable: serving.fact.toTable, platesOff: serving.fact.platesOff },
  }
}

const deliveryModels = (
  problem: Problem,
  servings: readonly ServingModel[],
  kits: readonly KitModel[],
): readonly DeliveryModel[] =>
  problem.deliveries.flatMap((delivery, index) => {
    const serving = servings.find((one) => one.id === delivery.serving)
    if (!serving) return []
    return {
      index,
      id: delivery.id,
      serving,
      early: delivery.early,
      late: delivery.late,
      most: delivery.keeps.most,
      safety: delivery.keeps.bound === 'safety',
      uses: modelUses(problem, kits, delivery.keeps.place, delivery.keeps.uses),
      factUses: modelUses(problem, kits, delivery.keeps.place, delivery.keeps.uses, true),
      carry: delivery.carry && { most: delivery.carry.most, safety: delivery.carry.bound === 'safety' },
      acts: [],
      last: undefined,
    }
  })
