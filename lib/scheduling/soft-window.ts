import { type Act, type LagModel, NEVER } from './model.ts'
import type { Tick } from './problem.ts'
import type { State } from './state.ts'

/** A start before `startFrom` or after `startTo`, or an end before `endFrom`, breaks a wish of what is yet to be placed. */
export interface SoftWindow {
  readonly startFrom: Tick
  readonly endFrom: Tick
  readonly startTo: Tick
}

/**
 * Follows greatest lags from an activity over what is not placed, each as long as may be, to what is placed or to the
 * table. Pre: the activity is not placed. Post: outside of this a wish breaks, tick for tick, wherever the rest is placed.
 */
export const softWindow = (state: State, act: Act): SoftWindow => {
  let startFrom = -NEVER
  let endFrom = -NEVER
  let startTo = NEVER
  for (const { to, fromEnd, most } of act.succs) {
    if (most >= NEVER || state.places[to.index]) continue
    const soonest = mustStartFrom(state, to, DEEP) - most
    if (fromEnd) endFrom = Math.max(endFrom, soonest)
    else startFrom = Math.max(startFrom, soonest)
  }
  for (const lag of act.preds) if (!state.places[lag.from.index]) startTo = Math.min(startTo, latestAfter(state, lag, DEEP))
  return { startFrom, endFrom, startTo }
}

/** Chains longer than this are not followed, nor circles for ever. */
const DEEP = 8

/** The earliest start of something not placed that keeps the wishes after it. */
const mustStartFrom = (state: State, act: Act, deep: number): Tick => {
  if (act.modes.length === 0 || deep === 0) return -NEVER
  let from = -NEVER
  for (const lag of act.succs) {
    if (lag.most >= NEVER) continue
    const place = state.places[lag.to.index]
    const next = place ? place.start : mustStartFrom(state, lag.to, deep - 1)
    from = Math.max(from, next - lag.most - (lag.fromEnd ? act.maxLen : 0))
  }
  const { delivery } = act
  if (delivery?.last !== act || delivery.serving.served) return from
  return Math.max(from, (state.moments[delivery.serving.index] as number) - delivery.early - delivery.most - act.maxLen)
}

/** The latest start that this lag, and the wishes before what it comes from, allow. */
const latestAfter = (state: State, { from, fromEnd, most }: LagModel, deep: number): Tick => {
  if (most >= NEVER) return NEVER
  const place = state.places[from.index]
  if (place) return (fromEnd ? place.end : place.start) + most
  if (from.modes.length === 0 || deep === 0) return NEVER
  let start = NEVER
  for (const lag of from.preds) start = Math.min(start, latestAfter(state, lag, deep - 1))
  return start + (fromEnd ? from.maxLen : 0) + most
}
