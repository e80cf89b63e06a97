import type { Bounds } from './bounds.ts'
import { type Act, type ModeModel, NEVER, type TeamModel } from './model.ts'
import { soonest } from './price.ts'
import { CALM_HOUR, type Tick } from './problem.ts'
import type { Random } from './random.ts'
import type { SoftWindow } from './soft-window.ts'
import { ripeAfter, type State } from './state.ts'

/** How many edges of what others do are tried, of all there are. */
const EDGES = 4
/** So little room that every start may be tried. */
const NARROW = 16
/** And so little that a thorough search tries them all. */
const MODEST = 64

/**
 * Starts where the price has a corner, the latest first, without doubles and within bounds: as late as may be, at the
 * limits of lags, just before the table's window and its calm hour, beside what cooks do anyway, and where wished.
 */
export const candidateStarts = (
  state: State,
  act: Act,
  mode: ModeModel,
  team: TeamModel,
  len: number,
  { lo, hi }: Bounds,
  wish: { readonly start?: Tick; readonly thorough?: boolean },
  random: Random,
  soft: SoftWindow,
): readonly Tick[] => {
  const starts: Tick[] = [hi, soft.startFrom, soft.endFrom - len, soft.startTo]
  addLagLimits(state, act, len, starts)
  const { attention } = state
  const first = attention.first + attention.base
  const last = attention.last + attention.base
  if (lo < last && hi + len > first - CALM_HOUR) {
    starts.push(first - len)
    starts.push(first - CALM_HOUR - len)
    if (mode.care === 'leave') addTouchEdges(mode, len, first, starts)
    addEdges(state, act, mode, team, len, { lo: Math.max(lo, first - CALM_HOUR - len), hi: Math.min(hi, last) }, random, starts)
  }
  if (wish.start !== undefined) starts.push(wish.start)
  if (act.told) starts.push(act.told.start)
  for (const cook of team.cooks)
    for (const stay of act.stays[cook.index] ?? []) if (stay.to - len < hi) starts.push(stay.to - len)
  starts.push(lo)
  if (hi - lo < (wish.thorough ? MODEST : NARROW) && (wish.thorough || random.unit() < 0.3))
    for (let start = lo; start < hi; start++) starts.push(start)
  starts.push(lo + random.below(hi - lo))
  return downward(starts, lo, hi)
}

/** In place: in descending order, without doubles and what lies outside. */
const downward = (starts: Tick[], lo: Tick, hi: Tick): Tick[] => {
  let kept = 0
  for (const start of starts) {
    if (start < lo || start > hi) continue
    let i = kept
    while (i > 0 && (starts[i - 1] as number) < start) i--
    if (i > 0 && starts[i - 1] === start) continue
    starts.copyWithin(i + 1, i, kept)
    starts[i] = start
    kept++
  }
  starts.length = kept
  return starts
}

const addLagLimits = (state: State, act: Act, len: number, starts: Tick[]): void => {
  for (const lag of act.preds) {
    const place = state.places[lag.from.index]
    if (!place) {
      if (lag.most < NEVER) starts.push(ripeAfter(state.ripe, lag))
      continue
    }
    const edge = lag.fromEnd ? place.end : place.start
    starts.push(edge + lag.most)
    starts.push(edge + lag.least)
  }
  for (const lag of act.succs) {
    const place = state.places[lag.to.index]
    const own = lag.fromEnd ? len : 0
    if (place) {
      starts.push(place.start - lag.most - own)
      starts.push(place.start - lag.least - own)
    }
  }
  for (const { last, path } of act.heralds) if (!state.places[last.index]) starts.push(soonest(state, last) + path)
  const { delivery } = act
  if (delivery) {
    const arrival = (state.moments[delivery.serving.index] ?? 0) - delivery.early
    starts.push(arrival - len)
    starts.push(arrival - delivery.most - len)
  }
}

const addTouchEdges = (mode: ModeModel, len: number, first: Tick, starts: Tick[]): void => {
  for (const touch of mode.touches) {
    if (touch.when === 'in') starts.push(first - touch.takes)
    if (touch.when === 'out') starts.push(first - len - touch.lateBy)
    if (touch.when === 'every') starts.push(first - touch.takes - touch.every)
  }
}

/** Beside or under what cooks do anyway, so that they get up once. */
const addEdges = (
  state: State,
  act: Act,
  mode: ModeModel,
  team: TeamModel,
  len: number,
  within: Bounds,
  random: Random,
  starts: Tick[],
): void => {
  const cooks =
    mode.care === 'leave' ? state.model.cooks.filter((cook) => (act.touchStays[cook.index] ?? []).length > 0) : team.cooks
  const edges: Tick[] = []
  for (const cook of cooks)
    for (const item of state.cookLanes[cook.index] ?? []) {
      if (item.to < within.lo || item.from > within.hi + len) continue
      edges.push(item.from, item.to - len, item.to, item.from - len)
    }
  for (let i = 0; i < EDGES && edges.length > 0; i++) {
    const edge = edges[random.below(edges.length)]
    if (edge !== undefined) starts.push(edge)
  }
}
