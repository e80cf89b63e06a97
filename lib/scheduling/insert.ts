import { type Bounds, roomFor, startBounds, within } from './bounds.ts'
import { candidateStarts } from './candidates.ts'
import { fits } from './fits.ts'
import { keepRise, refreshKeep } from './keeping.ts'
import type { Act, ModeModel, TeamModel } from './model.ts'
import type { Place } from './place.ts'
import { floorPrice, NEVER_WORTH, rise, savedBy } from './price.ts'
import type { Tick } from './problem.ts'
import type { Random } from './random.ts'
import { type SoftWindow, softPrice, softWindow } from './soft-window.ts'
import { put, putKeep, type State } from './state.ts'

export interface Wish {
  /** A start worth trying: where it was, or where it is told to be. */
  readonly start?: Tick
  /** Chance that a good enough place is passed over, to see something new. */
  readonly blink: number
  /** Try every start where there are not too many, as if all that can be placed were. */
  readonly thorough?: boolean
}

/** Places the activity where the price rises least; false when nothing hard leaves room. Counts one step. */
export const insert = (state: State, act: Act, random: Random, wish: Wish): boolean => {
  state.steps++
  const { delivery } = act
  const waits = delivery && delivery.uses.length > 0 && !delivery.serving.served
  const search: Search = {
    best: undefined,
    least: Number.POSITIVE_INFINITY,
    waits: waits === true,
    was: waits && state.keeps[delivery.index]?.clash ? NEVER_WORTH : 0,
    saves: savedBy(state, act),
    soft: softWindow(state, act),
    random,
    wish,
  }
  if (waits) putKeep(state, delivery, undefined)
  findBest(state, act, search)
  if (search.best) put(state, search.best)
  if (delivery) refreshKeep(state, delivery)
  return search.best !== undefined
}

interface Search {
  best: Place | undefined
  least: number
  /** Has the dish's keeping to be weighed with the place, and what did it cost before? */
  readonly waits: boolean
  readonly was: number
  /** What placing it may save: its dish is no longer ready too early. */
  readonly saves: number
  /** Where no wish of what is yet to be placed is broken. */
  readonly soft: SoftWindow
  readonly random: Random
  readonly wish: Wish
}

/** First where there is room for all that is yet to be placed, then anywhere. */
const findBest = (state: State, act: Act, search: Search): void => {
  for (const room of search.wish.thorough ? [undefined] : [roomFor(state, act), undefined]) {
    for (const mode of act.modes)
      for (const team of sampled(mode.teams, search.random))
        for (const len of lengths(state, act, mode, team, search)) scan(state, act, mode, team, len, room, search)
    if (search.best) return
  }
}

/** Most activities have few possible teams; of many, a handful is tried each time. */
const sampled = (teams: readonly TeamModel[], random: Random): readonly TeamModel[] => {
  const most = 8
  if (teams.length <= most) return teams
  const from = random.below(teams.length)
  return Array.from({ length: most }, (_, i) => teams[(from + i) % teams.length]).flatMap((team) => team ?? [])
}

/** The lengths worth trying: the likely one, the longest, and those that reach back to just after what comes before. */
const lengths = (state: State, act: Act, mode: ModeModel, team: TeamModel, search: Search): number[] => {
  if (mode.care !== 'leave' || mode.upTo <= team.len) return [team.len]
  const found = new Set([team.len, mode.upTo, team.len + search.random.below(mode.upTo - team.len)])
  const end = latestEnd(state, act, team.len)
  for (const lag of act.preds) {
    const place = state.places[lag.from.index]
    if (!place) continue
    const edge = lag.fromEnd ? place.end : place.start
    for (const start of [edge + lag.least, edge + Math.min(lag.most, 1e6)]) found.add(clamp(end - start, team.len, mode.upTo))
  }
  for (const lag of act.succs) {
    const place = state.places[lag.to.index]
    if (!place || !lag.fromEnd) continue
    const { lo } = startBounds(state, act, team.len)
    found.add(clamp(place.start - Math.min(lag.most, 1e6) - lo, team.len, mode.upTo))
  }
  return [...found]
}

const latestEnd = (state: State, act: Act, len: number): Tick => startBounds(state, act, len).hi + len
const clamp = (x: number, lo: number, hi: number): number => Math.max(lo, Math.min(hi, x))

/** From each candidate start downwards to the first that fits; the cheapest of those is kept. */
const scan = (
  state: State,
  act: Act,
  mode: ModeModel,
  team: TeamModel,
  len: number,
  room: Bounds | undefined,
  search: Search,
): void => {
  const hard = startBounds(state, act, len)
  const bounds = room ? within(hard, room, pushesOn(state, act) ? len - act.minLen : 0) : hard
  if (bounds.lo > bounds.hi) return
  const starts = candidateStarts(state, act, mode, team, len, bounds, search.wish, search.random, search.soft)
  // The latest start that is not yet known to be impossible or tried.
  let open = bounds.hi
  let patience = PATIENCE
  for (let i = 0; i < starts.length && patience > 0; i++) {
    const next = starts[i + 1] ?? bounds.lo
    let start = Math.min(starts[i] as number, open)
    while (
      start >= next &&
      patience-- > 0 &&
      floorPrice(state, act, start, len) + softPrice(state, search.soft, start, len) < search.least + search.saves + EQUAL
    ) {
      const place = fits(state, act, mode, team, start, len)
      if (place) consider(state, place, search)
      open = place ? start - 1 : Math.min(start - 1, state.lo)
      if (place) break
      start = open
    }
  }
}

/** Does its end, too, decide when something that is yet to be placed may start? */
const pushesOn = (state: State, act: Act): boolean => {
  for (const lag of act.succs) if (lag.fromEnd && !state.places[lag.to.index]) return true
  return false
}

/** A bound on the work of one scan through crowded lanes. */
const PATIENCE = 80

/** Prices nearer than this differ by rounding alone. */
const EQUAL = 1e-6

const consider = (state: State, place: Place, search: Search): void => {
  const soft = softPrice(state, search.soft, place.start, place.end - place.start)
  let cost = rise(state, place, search.least + search.was - soft) - search.was + soft
  if (search.waits && cost <= search.least + EQUAL) cost += keepRise(state, place)
  if (cost > search.least + EQUAL || (cost > search.least - EQUAL && search.random.unit() < 0.5)) return
  if (search.best && search.random.unit() < search.wish.blink) return
  search.best = place
  search.least = cost
}
