import { touchRise } from './attention-rise.ts'
import { laneBlocks, stayBlocks } from './lane-fits.ts'
import { type Act, type CookModel, type ModeModel, NEVER, type Stretch, type TouchModel } from './model.ts'
import type { Item, Lane } from './place.ts'
import { EYE_PIECE, type Tick } from './problem.ts'
import type { Trial } from './scratch.ts'
import { sparePrice } from './spares.ts'
import type { State } from './state.ts'

/**
 * Gives every touch of the trial a cook and a moment, each where it costs the table least, or at once when `eager`. False
 * when one has nobody, with state.lo and state.hi set. Pre: act, mode, team, start and end of the trial are set.
 */
export const pickTouches = (state: State, trial: Trial, eager: boolean): boolean => {
  trial.touches = 0
  const { touches } = trial.mode as ModeModel
  for (let i = 0; i < touches.length; i++) {
    const touch = touches[i] as TouchModel
    const { when, every, takes, lateBy } = touch
    if (when === 'every') {
      for (let at = trial.start + every; every > 0 && at < trial.end; at += every)
        if (!pick(state, trial, touch, at, at + lateBy, eager)) return false
      continue
    }
    const at = when === 'in' ? trial.start : trial.end - takes
    if (!pick(state, trial, touch, at, when === 'in' ? at : at + lateBy, eager)) return false
  }
  return true
}

/** Adds the cheapest place of one touch in [lo, hi] to the trial; false when it has none. */
const pick = (state: State, trial: Trial, { index, takes }: TouchModel, lo: Tick, hi: Tick, eager: boolean): boolean => {
  const { touchCooks } = trial.act as Act
  let best: CookModel | undefined
  let bestAt = lo
  let least = Number.POSITIVE_INFINITY
  let down = -NEVER
  let up = NEVER
  for (let i = 0; i < touchCooks.length && least > 0; i++) {
    const cook = touchCooks[i] as CookModel
    const at = freeFrom(state, trial, cook, lo, takes, hi)
    if (at > hi) {
      if (best) continue
      up = Math.min(up, at - hi)
      down = Math.max(down, freeBefore(state, trial, cook, lo, takes) - lo)
      continue
    }
    const cost = touchPrice(state, trial, cook, at, takes) + (at - lo) * LATER
    if (cost < least) {
      least = cost
      best = cook
      bestAt = at
    }
    if (eager || hi === at || (least < 0.5 && state.jitter === 0)) continue
    const later = cheapestAfter(state, trial, cook, at, hi, takes, lo, least)
    if (later < 0) continue
    least = state.least
    best = cook
    bestAt = later
  }
  state.lo = trial.start + down
  state.hi = trial.start + up
  if (!best) return false
  const n = trial.touches++
  trial.touch[n] = index
  trial.at[n] = bestAt
  trial.takes[n] = takes
  trial.cook[n] = best
  return true
}

/** Sooner rather than later, all else equal: a tick. */
const LATER = 1e-4

/**
 * The cheapest moment after `at` when the cook is up anyway, or has just got up or sat down, and what it costs in
 * state.least; −1 when none is below `least`.
 */
const cheapestAfter = (
  state: State,
  trial: Trial,
  cook: CookModel,
  at: Tick,
  hi: Tick,
  takes: number,
  lo: Tick,
  least: number,
): Tick => {
  state.least = least
  let found = isCheaper(state, trial, cook, hi, takes, lo) ? hi : -1
  const lane = state.cookLanes[cook.index] as Lane
  for (let i = 0; i < lane.length; i++) {
    const { from, to } = lane[i] as Item
    if (from >= hi) break
    if (from > at && isCheaper(state, trial, cook, from, takes, lo)) found = from
    if (to > at && to < hi && isCheaper(state, trial, cook, to, takes, lo)) found = to
  }
  return found
}

const isCheaper = (state: State, trial: Trial, cook: CookModel, at: Tick, takes: number, lo: Tick): boolean => {
  const cost = touchPrice(state, trial, cook, at, takes) + (at - lo) * LATER
  if (cost >= state.least || isBusy(state, trial, cook, at, takes)) return false
  state.least = cost
  return true
}

/** About what a touch costs: what the table misses by it, a little for who misses most already, and jitter. */
const touchPrice = (state: State, trial: Trial, cook: CookModel, at: Tick, takes: number): number => {
  const { attention } = state
  const act = trial.act as Act
  const { atTable } = act
  const jitter = state.jitter > 0 ? state.random.unit() * state.jitter : 0
  const spared = sparePrice(act, cook, at, at + takes)
  const sum = jitter + spared + touchRise(attention, state.model.problem.weights, cook, at, at + takes, !atTable)
  return cook.eats && !atTable ? sum + (attention.missed[cook.index] as number) * 1e-3 : sum
}

const isBusy = (state: State, trial: Trial, cook: CookModel, at: Tick, takes: number): boolean => {
  const { touchStays, spot } = trial.act as Act
  if (stayBlocks(state, touchStays[cook.index] as readonly Stretch[], at, takes)) return true
  const short = takes <= EYE_PIECE
  if (laneBlocks(state, state.cookLanes[cook.index] as Lane, 'hands', spot, short, at, takes)) return true
  for (let i = 0; i < trial.touches; i++) {
    const other = trial.at[i] as Tick
    if (trial.cook[i] !== cook || other >= at + takes || other + (trial.takes[i] as number) <= at) continue
    state.lo = other - takes
    state.hi = other + (trial.takes[i] as number)
    return true
  }
  const { start, end, team, mode } = trial
  if (start >= at + takes || end <= at || ((mode as ModeModel).care === 'eye' && short) || !team.includes(cook)) return false
  state.lo = start - takes
  state.hi = end
  return true
}

/** The first moment from there on at which the cook is free; when none is up to `hi`, a later one before which none is. */
const freeFrom = (state: State, trial: Trial, cook: CookModel, from: Tick, takes: number, hi: Tick): Tick => {
  let at = from
  while (at <= hi && isBusy(state, trial, cook, at, takes)) at = Math.max(at + 1, state.hi)
  return at
}

const freeBefore = (state: State, trial: Trial, cook: CookModel, before: Tick, takes: number): Tick => {
  let at = before - 1
  while (at > -NEVER && isBusy(state, trial, cook, at, takes)) at = Math.min(at - 1, state.lo)
  return at
}
