import type { Act } from './model.ts'
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
