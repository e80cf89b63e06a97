import { placeAsTold } from './as-told.ts'
import { startBounds } from './bounds.ts'
import { putFacts } from './facts.ts'
import { fits } from './fits.ts'
import { keepHands } from './keep-hands.ts'
import { refreshKeep } from './keeping.ts'
import { type Act, type DeliveryModel, type ModeModel, NEVER, type ServingModel, type TeamModel } from './model.ts'
import type { Place } from './place.ts'
import { readyOf } from './price.ts'
import type { Tick } from './problem.ts'
import type { Placement } from './schedule.ts'
import { deadline, put, putKeep, type State, take } from './state.ts'
import { shiftedTargets, type Target } from './targets.ts'

/** A known schedule: where it has what is to be planned, how it has what has happened since, and its moments. */
export interface Known {
  readonly told: ReadonlyMap<Act, Placement>
  readonly happened: ReadonlyMap<Act, Placement>
  readonly moments: readonly Tick[]
}

/**
 * Puts what happened and then what was told into an empty schedule, each as told or as little later as all that is there
 * allows. `stay`: what no lag moves keeps its place and the rest goes round it; otherwise the earlier go first. Some may be
 * over after their course's deadline: gives the moment each serving then needs, −∞ where it is fine, and what has no room.
 */
export const putBack = (
  state: State,
  { told, happened, moments: before }: Known,
  stay: boolean,
): { readonly floors: readonly Tick[]; readonly roomless: readonly Act[] } => {
  const { model } = state
  putFacts(state)
  keepHands(state, happened)
  for (const delivery of model.deliveries)
    if (delivery.acts.every((act) => act.fact || act.modes.length === 0)) refreshKeep(state, delivery)
  const hard = shiftedTargets(model, told, before, state.moments, false)
  const kind = shiftedTargets(model, told, before, state.moments, true)
  const frozen = new Set((model.problem.previous ?? []).flatMap((one) => (one.frozen ? [one.activity] : [])))
  const start = (act: Act) => (frozen.has(act.activity.id) ? hard : kind).get(act)?.start ?? 0
  const line = inTurn(
    state,
    told,
    (act) => (frozen.has(act.activity.id) ? 0 : !stay || start(act) === told.get(act)?.start ? 1 : 2),
    start,
  )
  const evicted = new Set<Act>()
  for (let act = line.shift(); act; act = line.shift()) {
    const [placement, least] = [told.get(act), hard.get(act)]
    const wish = frozen.has(act.activity.id) ? least : kind.get(act)
    if (!placement || !least || !wish) continue
    const it: Case = { state, act, told: placement, least, wish, others: kind }
    let place = soonest(it)
    if (!place) {
      const out = act.succs.flatMap(({ to }) => (told.has(to) && state.places[to.index] && !evicted.has(to) ? [to] : []))
      for (const other of new Set(out)) {
        evicted.add(other)
        take(state, other)
        line.push(other)
      }
      if (out.length > 0) place = soonest(it)
    }
    if (place) put(state, place)
    if (act.delivery) refreshKeepOf(state, told, act.delivery)
  }
  return {
    floors: model.servings.map((serving) => (serving.served ? -NEVER : needed(state, serving))),
    roomless: [...told.keys()].filter((act) => !state.places[act.index]),
  }
}

/** A dish waits when all of it that was told is there. */
const refreshKeepOf = (state: State, told: ReadonlyMap<Act, Placement>, delivery: DeliveryModel): void => {
  if (delivery.acts.some((act) => told.has(act) && !state.places[act.index])) putKeep(state, delivery, undefined)
  else refreshKeep(state, delivery)
}

const needed = (state: State, serving: ServingModel): Tick => {
  let moment = -NEVER
  for (const delivery of state.model.deliveries)
    if (delivery.serving === serving) moment = Math.max(moment, readyOf(state, delivery) - delivery.late)
  return moment
}

/** By rank, then by time, what leads to it first. */
const inTurn = (
  { model }: State,
  told: ReadonlyMap<Act, Placement>,
  rank: (act: Act) => number,
  start: (act: Act) => Tick,
): Act[] => {
  const depth = (act: Act) => model.depth[act.index] as number
  return [...told.keys()].sort((a, b) => rank(a) - rank(b) || start(a) - start(b) || depth(a) - depth(b) || a.index - b.index)
}

interface Case {
  readonly state: State
  readonly act: Act
  readonly told: Placement
  /** From when on it may start, and from when on it had better. */
  readonly least: Target
  readonly wish: Target
  readonly others: ReadonlyMap<Act, Target>
}

/** In time for its course if that can be, and else as soon as may be. */
const soonest = (it: Case): Place | undefined => {
  const due = deadline(it.state, it.act)
  return (
    inTime(it, it.wish, due) ?? (due < it.act.to || it.least.start < it.wish.start ? inTime(it, it.least, it.act.to) : undefined)
  )
}

/** By its own cooks when they are there at once or nobody has to wait for them; otherwise by whoever is there first. */
const inTime = (it: Case, from: Target, due: Tick): Place | undefined => {
  const { act, told } = it
  const mode = act.modes.find((one) => one.index === told.mode)
  const team = mode?.teams.find((one) => isTeam(one, told.cooks))
  const own = mode && team && firstFit(it, mode, team, from, due, NEVER)
  if (own && (own.start <= from.start || nobodyWaits(it, own))) return own
  let best = own
  for (const other of mode ? [mode, ...act.modes.filter((one) => one !== mode)] : act.modes) {
    for (const hands of other.teams.slice(0, MOST_TEAMS)) {
      const place = hands === team ? undefined : firstFit(it, other, hands, from, due, best ? best.start - 1 : NEVER)
      if (place) best = place
    }
    if (best) return best
  }
  return undefined
}

/** Of many teams a handful is asked. */
const MOST_TEAMS = 12

const isTeam = (team: TeamModel, cooks: readonly string[]): boolean =>
  team.cooks.length === cooks.length && team.cooks.every((cook) => cooks.includes(cook.id))

const nobodyWaits = ({ state, act, others }: Case, place: Place): boolean =>
  place.end <= deadline(state, act) &&
  act.succs.every((lag) => {
    const after = others.get(lag.to)
    return !after || after.start >= (lag.fromEnd ? place.end : place.start) + lag.least
  })

/** The first start from its target on, over by `due` and up to `most`, at which nothing hard forbids it. */
const firstFit = (
  { state, act, told }: Case,
  mode: ModeModel,
  team: TeamModel,
  target: Target,
  due: Tick,
  most: Tick,
): Place | undefined => {
  let { start } = target
  for (let patience = PATIENCE; patience > 0 && start <= most; patience--) {
    const len = mode.care === 'leave' ? Math.max(team.len, Math.min(mode.upTo, target.end - start)) : team.len
    const { lo, hi } = startBounds(state, act, len, true, due)
    if (start > hi) return undefined
    if (start < lo) {
      start = lo
      continue
    }
    const as = told.mode === mode.index ? placeAsTold(state, act, mode, team, told, start, len) : undefined
    const place = as ?? fits(state, act, mode, team, start, len)
    if (place) return place
    start = Math.max(start + 1, state.hi)
  }
  return undefined
}

/** A bound on the work of one search through crowded lanes. */
const PATIENCE = 120
