import { attentionRise, teamRise } from './attention-rise.ts'
import { enqueue, queueStarts, WHIM } from './candidates.ts'
import { placeOfTrial, tries } from './fits.ts'
import { keepRise, refreshKeep } from './keeping.ts'
import type { Act, CookModel, Crew, ModeModel, TeamModel } from './model.ts'
import { look, startPrice } from './outlook.ts'
import type { Tick } from './problem.ts'
import type { Random } from './random.ts'
import type { Queue, Trial } from './scratch.ts'
import { spareTeamPrice, spareTouchPrice } from './spares.ts'
import { put, putKeep, type State } from './state.ts'
import { isMovedTo } from './tally.ts'

export interface Wish {
  /** A start worth trying: where it was, or where it is told to be. */
  readonly start?: Tick
  /** Chance that a place is passed over, to see something new. */
  readonly blink: number
  /** Try every start where there are not too many, as if all that can be placed were. */
  readonly thorough?: boolean
}

/**
 * Places the activity where the price rises least; false when nothing hard leaves room. Counts one step.
 *
 * Starts where the price has a corner are queued with a bound below their price, for every mode, team and length; the
 * cheapest bound is tried first, and what does not fit goes on to the next start down that may. Nothing that cannot be
 * cheaper than the best is ever tried (best first search, Hart, Nilsson, Raphael 1968).
 */
export const insert = (state: State, act: Act, random: Random, wish: Wish): boolean => {
  state.steps++
  const { delivery } = act
  const waits = delivery !== undefined && delivery.uses.length > 0 && !delivery.serving.served
  if (waits) putKeep(state, delivery, undefined)
  look(state, act)
  // First where there is room for all that is yet to be placed, then anywhere.
  const found =
    (!wish.thorough && search(state, act, true, waits, random, wish)) || search(state, act, false, waits, random, wish)
  if (found) put(state, placeOfTrial(state.scratch.best))
  if (delivery) refreshKeep(state, delivery)
  return found
}

const search = (state: State, act: Act, withRoom: boolean, waits: boolean, random: Random, wish: Wish): boolean => {
  const { queue } = state.scratch
  queue.size = 0
  queue.choices = 0
  for (const mode of act.modes) for (const crew of mode.crews) queueCrew(state, act, mode, crew, withRoom, random, wish)
  return cheapest(state, act, waits, random, wish.blink)
}

const queueCrew = (
  state: State,
  act: Act,
  mode: ModeModel,
  { len, teams }: Crew,
  withRoom: boolean,
  random: Random,
  wish: Wish,
): void => {
  if (mode.care !== 'leave' || mode.upTo <= len) queueLength(state, act, mode, teams, len, withRoom, random, wish)
  else
    for (const long of lengths(state, act, mode, len, random)) queueLength(state, act, mode, teams, long, withRoom, random, wish)
}

const queueLength = (
  state: State,
  act: Act,
  mode: ModeModel,
  crew: readonly TeamModel[],
  len: number,
  withRoom: boolean,
  random: Random,
  wish: Wish,
): void => {
  const { outlook } = state.scratch
  let lo = Math.max(outlook.lo, outlook.loEnd - len)
  let hi = Math.min(outlook.hi, outlook.hiEnd - len)
  if (withRoom) {
    lo = Math.max(lo, outlook.roomLo)
    hi = Math.min(hi, outlook.roomHi - (outlook.pushesOn ? len - act.minLen : 0))
  }
  if (lo <= hi) queueStarts(state, act, mode, crew, len, lo, hi, wish, random)
}

/** The lengths worth trying: the likely one, the longest, and those that reach back to just after what comes before. */
const lengths = (state: State, act: Act, mode: ModeModel, len: number, random: Random): ReadonlySet<number> => {
  const { outlook } = state.scratch
  const found = new Set([len, mode.upTo, len + random.below(mode.upTo - len)])
  const end = Math.min(outlook.hi + len, outlook.hiEnd)
  const lo = Math.max(outlook.lo, outlook.loEnd - len)
  for (const lag of act.preds) {
    const place = state.places[lag.from.index]
    if (!place) continue
    const edge = lag.fromEnd ? place.end : place.start
    found.add(clamp(end - edge - lag.least, len, mode.upTo))
    found.add(clamp(end - edge - Math.min(lag.most, 1e6), len, mode.upTo))
  }
  for (const lag of act.succs) {
    const place = state.places[lag.to.index]
    if (place && lag.fromEnd) found.add(clamp(place.start - Math.min(lag.most, 1e6) - lo, len, mode.upTo))
  }
  return found
}

const clamp = (x: number, lo: number, hi: number): number => Math.max(lo, Math.min(hi, x))

/** A bound on the work of one insertion through crowded lanes. */
const PATIENCE = 160

/** Prices nearer than this differ by rounding alone. */
const EQUAL = 1e-6

/** Leaves the cheapest place of what is queued in `scratch.best`; false when nothing fits. Empties the queue. */
const cheapest = (state: State, act: Act, waits: boolean, random: Random, blink: number): boolean => {
  const { scratch } = state
  const { queue } = scratch
  let least = Number.POSITIVE_INFINITY
  let found = false
  for (let patience = PATIENCE; patience > 0 && queue.size > 0; ) {
    const next = cheapestFloor(queue)
    if ((queue.floor[next] as number) >= least - EQUAL) break
    if (!queue.team[next]) {
      openTeams(state, act, queue, next, random)
      continue
    }
    patience--
    if (!triesNext(state, act, queue, next)) continue
    const passed = blink > 0 && random.unit() < blink
    if (passed && found) continue
    const { trial } = scratch
    const cost = trialPrice(state, act, trial, waits, least)
    if (cost >= least - EQUAL) continue
    scratch.trial = scratch.best
    scratch.best = trial
    found = true
    if (!passed) least = cost
  }
  return found
}

const cheapestFloor = ({ floor, size }: Queue): number => {
  let next = 0
  for (let i = 1; i < size; i++) if ((floor[i] as number) < (floor[next] as number)) next = i
  return next
}

/** Puts a start of each team in place of one whose team is open: of many, a handful that chance gives. */
const openTeams = (state: State, act: Act, queue: Queue, at: number, random: Random): void => {
  const choice = queue.choice[at] as number
  const crew = queue.crews[choice] as readonly TeamModel[]
  const start = queue.start[at] as Tick
  const least = queue.least[at] as Tick
  const floor = queue.floor[at] as number
  const from = crew.length > TEAMS ? random.below(crew.length) : 0
  const first = crew[from] as TeamModel
  for (let i = Math.min(crew.length, TEAMS) - 1; i > 0; i--) {
    const team = crew[(from + i) % crew.length] as TeamModel
    enqueue(queue, choice, start, least, floor + whoPrice(state, act, queue, choice, team, start) + WHIM * random.unit(), team)
  }
  queue.floor[at] = floor + whoPrice(state, act, queue, choice, first, start)
  queue.team[at] = first
}

/** Most activities have few possible teams. */
const TEAMS = 8

/** What this team and mode at this start cost beside what the start costs, whoever touches what. */
const whoPrice = (state: State, act: Act, queue: Queue, choice: number, { cooks }: TeamModel, start: Tick): number => {
  const mode = queue.modes[choice] as ModeModel
  const { weights } = state.model.problem
  const sum = teamPrice(state, act, mode, cooks, start)
  if (mode.care === 'leave') return sum
  const end = start + (queue.lens[choice] as number)
  const spared = spareTeamPrice(act, cooks, start, end)
  return sum + spared + teamRise(state.attention, weights, cooks, start, end, !act.atTable, mode.care === 'hands-on')
}

/** Without its lead, or not as it was told. */
const teamPrice = (state: State, act: Act, mode: ModeModel, cooks: readonly CookModel[], start: Tick): number => {
  let sum = 0
  if (act.lead && !cooks.includes(act.lead)) sum += state.model.problem.weights.lead
  if (act.told && isMovedTo(act.told, start, mode, cooks)) sum += act.told.price
  return sum
}

/** Tries the start; when it fits its stretch is done with, otherwise the stretch goes on below what is impossible. */
const triesNext = (state: State, act: Act, queue: Queue, at: number): boolean => {
  const choice = queue.choice[at] as number
  const len = queue.lens[choice] as number
  const start = queue.start[at] as Tick
  const mode = queue.modes[choice] as ModeModel
  const team = queue.team[at] as TeamModel
  const fit = tries(state, state.scratch.trial, act, mode, team, start, len)
  const below = Math.min(start - 1, state.lo)
  if (fit || below < (queue.least[at] as Tick)) {
    remove(queue, at)
    return fit
  }
  queue.start[at] = below
  queue.floor[at] = startPrice(state, act, below, len) + whoPrice(state, act, queue, choice, team, below)
  return false
}

const remove = (queue: Queue, at: number): void => {
  const last = --queue.size
  queue.start[at] = queue.start[last] as Tick
  queue.least[at] = queue.least[last] as Tick
  queue.choice[at] = queue.choice[last] as number
  queue.floor[at] = queue.floor[last] as number
  queue.team[at] = queue.team[last]
}

/** By how much the price rises with the trial, where its dish can wait for the table included if that can still matter. */
export const trialPrice = (state: State, act: Act, trial: Trial, waits: boolean, least: number): number => {
  const { start, end, team } = trial
  const mode = trial.mode as ModeModel
  let sum = startPrice(state, act, start, end - start) + teamPrice(state, act, mode, team, start)
  if (mode.care !== 'leave') sum += spareTeamPrice(act, team, start, end)
  if (sum >= least) return sum
  sum += spareTouchPrice(act, trial)
  sum += attentionRise(state.attention, state.model.problem.weights, trial)
  return waits && sum < least ? sum + keepRise(state, trial) : sum
}
