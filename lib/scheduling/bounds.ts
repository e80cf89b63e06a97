import type { Act, Reach } from './model.ts'
import type { Tick } from './problem.ts'
import { deadline, type State } from './state.ts'

export interface Bounds {
  readonly lo: Tick
  readonly hi: Tick
}

/** The starts that hard lags to what is placed (safety limits only when asked), its own window and its serving's, or another, deadline allow. */
export const startBounds = (state: State, act: Act, len: number, safely = true, due = deadline(state, act)): Bounds => {
  let lo = act.from
  let hi = due - len
  for (const lag of act.preds) {
    const place = state.places[lag.from.index]
    if (!place) continue
    const edge = lag.fromEnd ? place.end : place.start
    lo = Math.max(lo, edge + lag.least)
    if (lag.safety && safely) hi = Math.min(hi, edge + lag.most)
  }
  for (const lag of act.succs) {
    const place = state.places[lag.to.index]
    if (!place) continue
    const own = lag.fromEnd ? len : 0
    hi = Math.min(hi, place.start - lag.least - own)
    if (lag.safety && safely) lo = Math.max(lo, place.start - lag.most - own)
  }
  return { lo, hi }
}

/** The starts that leave room for what is yet to be placed before and after it, when it is as short as may be. */
export const roomFor = (state: State, act: Act): Bounds => {
  let lo = state.model.earliest[act.index] as number
  let hi = state.latest[act.index] as number
  const before = state.model.before[act.index] as Reach
  for (let i = 0; i < before.acts.length; i++) {
    const place = state.places[before.acts[i] as number]
    if (place && place.start + (before.paths[i] as number) > lo) lo = place.start + (before.paths[i] as number)
  }
  const after = state.model.after[act.index] as Reach
  for (let i = 0; i < after.acts.length; i++) {
    const place = state.places[after.acts[i] as number]
    if (place && place.start - (after.paths[i] as number) < hi) hi = place.start - (after.paths[i] as number)
  }
  return { lo, hi }
}

export const within = (hard: Bounds, room: Bounds, longer: number): Bounds => ({
  lo: Math.max(hard.lo, room.lo),
  hi: Math.min(hard.hi, room.hi - longer),
})
