import type { Act } from './model.ts'
import type { Tick } from './problem.ts'
import { deadline, type State } from './state.ts'

export interface Bounds {
  readonly lo: Tick
  readonly hi: Tick
}

/** The starts that the hard lags to what is placed, the activity's own window and its serving allow. */
export const startBounds = (state: State, act: Act, len: number): Bounds => {
  let lo = act.from
  let hi = deadline(state, act) - len
  for (const lag of act.preds) {
    const place = state.places[lag.from.index]
    if (!place) continue
    const edge = lag.fromEnd ? place.end : place.start
    lo = Math.max(lo, edge + lag.least)
    if (lag.safety) hi = Math.min(hi, edge + lag.most)
  }
  for (const lag of act.succs) {
    const place = state.places[lag.to.index]
    if (!place) continue
    const own = lag.fromEnd ? len : 0
    hi = Math.min(hi, place.start - lag.least - own)
    if (lag.safety) lo = Math.max(lo, place.start - lag.most - own)
  }
  return { lo, hi }
}

/** Narrower: leaves room for what is yet to be placed before and after it. */
export const roomyBounds = (state: State, act: Act, len: number, { lo, hi }: Bounds): Bounds => {
  const { longest } = state.model
  const longer = len - act.minLen
  let from = Math.max(lo, state.earliest[act.index] as number)
  let to = Math.min(hi, (state.latest[act.index] as number) - longer)
  const after = longest[act.index]
  for (const place of state.places) {
    if (!place) continue
    const index = place.act.index
    const before = longest[index]?.[act.index] as number
    if (place.start + before > from) from = place.start + before
    const behind = after?.[index] as number
    if (place.start - behind - longer < to && !place.act.fact) to = place.start - behind - longer
  }
  return { lo: from, hi: to }
}
