import { newlyAway, newlyBusy, newlyMissed } from './attention.ts'
import { laneBlocks, stayBlocks } from './lane-fits.ts'
import { type Act, type CookModel, type ModeModel, NEVER, type Stretch, type TeamModel } from './model.ts'
import type { TouchPlace } from './place.ts'
import { EYE_PIECE, type Tick } from './problem.ts'
import type { State } from './state.ts'

interface Wanted {
  readonly act: Act
  readonly mode: ModeModel
  readonly team: TeamModel
  readonly start: Tick
  readonly end: Tick
}

/**
 * A cook and a moment for every touch, each where it costs the table least, or at once when `eager`. Undefined when one
 * has nobody, with state.lo and state.hi set.
 */
export const pickTouches = (
  state: State,
  act: Act,
  mode: ModeModel,
  team: TeamModel,
  start: Tick,
  end: Tick,
  eager: boolean,
): readonly TouchPlace[] | undefined => {
  if (mode.touches.length === 0) return NONE
  const wanted = { act, mode, team, start, end }
  const chosen: TouchPlace[] = []
  for (const { index, when, every, takes, lateBy } of mode.touches) {
    if (when === 'every') {
      for (let at = start + every; every > 0 && at < end; at += every)
        if (!pick(state, wanted, chosen, index, at, at + lateBy, takes, eager)) return undefined
      continue
    }
    const at = when === 'in' ? start : end - takes
    if (!pick(state, wanted, chosen, index, at, when === 'in' ? at : at + lateBy, takes, eager)) return undefined
  }
  return chosen
}
const NONE: readonly TouchPlace[] = []

/** Adds the cheapest place of one touch to the chosen ones; false when it has none. */
const pick = (
  state: State,
  wanted: Wanted,
  chosen: TouchPlace[],
  touch: number,
  lo: Tick,
  hi: Tick,
  takes: number,
  eager: boolean,
): boolean => {
  const { act } = wanted
  let best: CookModel | undefined
  let bestAt = lo
  let least = Number.POSITIVE_INFINITY
  let down = -NEVER
  let up = NEVER
  for (const cook of state.model.cooks) {
    if ((act.touchStays[cook.index] ?? NO_STAYS).length === 0) continue
    const at = freeFrom(state, wanted, chosen, cook, lo, takes)
    if (at > hi) {
      up = Math.min(up, at - hi)
      down = Math.max(down, freeBefore(state, wanted, chosen, cook, lo, takes) - lo)
      continue
    }
    let price = touchPrice(state, act, cook, at, takes) + (at - lo) * 1e-4
    if (price < least) {
      least = price
      best = cook
      bestAt = at
    }
    if (eager || hi === at || (least < 0.5 && state.jitter === 0)) continue
    for (const moment of laterMoments(state, cook, at, hi)) {
      if (freeFrom(state, wanted, chosen, cook, moment, takes) !== moment) continue
      price = touchPrice(state, act, cook, moment, takes) + (moment - lo) * 1e-4
      if (price >= least) continue
      least = price
      best = cook
      bestAt = moment
    }
  }
  if (best) chosen.push({ touch, takes, at: bestAt, cook: best })
  state.lo = wanted.start + down
  state.hi = wanted.start + up
  return best !== undefined
}
const NO_STAYS: readonly Stretch[] = []

/** When the cook is up anyway, or has just got up or sat down. */
const laterMoments = (state: State, cook: CookModel, at: Tick, hi: Tick): Tick[] => {
  const moments = [hi]
  for (const item of state.cookLanes[cook.index] ?? []) {
    if (item.from > at && item.from < hi) moments.push(item.from)
    if (item.to > at && item.to < hi) moments.push(item.to)
  }
  return moments
}

/** About what a touch costs: ticks newly missed, away or busy, a little for who misses most already, and jitter. */
const touchPrice = (state: State, act: Act, cook: CookModel, at: Tick, takes: number): number => {
  const { attention } = state
  const { weights } = state.model.problem
  const jitter = state.jitter > 0 ? state.random.unit() * state.jitter : 0
  const sum = jitter + weights.calm * newlyBusy(attention, cook, at, at + takes)
  if (act.atTable || !(cook.eats || cook.host)) return sum
  const away = weights.allAway * newlyAway(attention, cook, at, at + takes)
  if (!cook.eats) return sum + away
  const missed = newlyMissed(attention, weights, cook, at, at + takes)
  return sum + away + missed + (attention.missed[cook.index] as number) * 1e-3
}

const blocked = (
  state: State,
  { act, mode, team, start, end }: Wanted,
  chosen: readonly TouchPlace[],
  cook: CookModel,
  at: Tick,
  takes: number,
): boolean => {
  if (stayBlocks(state, act.touchStays[cook.index] ?? NO_STAYS, at, takes)) return true
  const short = takes <= EYE_PIECE
  if (laneBlocks(state, state.cookLanes[cook.index] ?? [], 'hands', act.spot, short, at, takes)) return true
  for (const other of chosen)
    if (other.cook === cook && other.at < at + takes && other.at + other.takes > at) {
      state.lo = other.at - takes
      state.hi = other.at + other.takes
      return true
    }
  if (!(mode.care === 'eye' && short) && team.cooks.includes(cook) && start < at + takes && end > at) {
    state.lo = start - takes
    state.hi = end
    return true
  }
  return false
}

const freeFrom = (
  state: State,
  wanted: Wanted,
  chosen: readonly TouchPlace[],
  cook: CookModel,
  from: Tick,
  takes: number,
): Tick => {
  let at = from
  while (at < NEVER && blocked(state, wanted, chosen, cook, at, takes)) at = Math.max(at + 1, state.hi)
  return at
}

const freeBefore = (
  state: State,
  wanted: Wanted,
  chosen: readonly TouchPlace[],
  cook: CookModel,
  before: Tick,
  takes: number,
): Tick => {
  let at = before - 1
  while (at > -NEVER && blocked(state, wanted, chosen, cook, at, takes)) at = Math.min(at - 1, state.lo)
  return at
}
