import type { CookModel, Model } from './model.ts'
import type { Piece, Place } from './place.ts'
import { CALM_HOUR, PLATING_BURST, type Tick, type Weights } from './problem.ts'

/** Who is up when, tick by tick, so that a change is priced by the ticks it touches. */
export interface Attention {
  readonly base: Tick
  readonly size: number
  readonly up: readonly Uint8Array[]
  readonly hand: readonly Uint8Array[]
  readonly hostsUp: Uint8Array
  readonly plating: Uint8Array
  /** 1 while plates are being eaten at the table. */
  readonly eating: Uint8Array
  readonly hosts: number
  readonly eats: readonly boolean[]
  /** Ticks up inside the window, and busy in the hour before it, by cook. */
  readonly missed: Int32Array
  readonly calm: Int32Array
  /** From the first serving that is not the welcome to the last, as offsets. */
  first: number
  last: number
  /** Ticks of the window in which all hosts are up, but for excused bursts. */
  away: number
  /** Ticks of `missed` in which plates are being eaten, of all cooks who eat. */
  meal: number
  /** Ticks newly missed by cook, while a price is worked out; zero otherwise. */
  readonly more: Int32Array
}

export const attentionOf = (model: Model): Attention => {
  // Room for facts and servings a little outside the horizon; what lies further off is never at the table.
  const before = 240
  const after = 2880
  const size = model.to - model.from + before + after
  return {
    base: model.from - before,
    size,
    up: model.cooks.map(() => new Uint8Array(size)),
    hand: model.cooks.map(() => new Uint8Array(size)),
    hostsUp: new Uint8Array(size),
    plating: new Uint8Array(size),
    eating: new Uint8Array(size),
    hosts: model.cooks.filter((cook) => cook.host).length,
    eats: model.cooks.map((cook) => cook.eats),
    missed: new Int32Array(model.cooks.length),
    calm: new Int32Array(model.cooks.length),
    first: 0,
    last: 0,
    away: 0,
    meal: 0,
    more: new Int32Array(model.cooks.length),
  }
}

/** Adds (1) or takes away (−1) all that a placed activity asks of its cooks. */
export const mark = (attention: Attention, { act, start, end, pieces }: Place, by: 1 | -1): void => {
  for (let i = 0; i < pieces.length; i++) {
    const { cook, from, to, hand, up } = pieces[i] as Piece
    markPiece(attention, cook, from, to, hand, up, by)
  }
  if (act.activity.plating) markPlating(attention, start, end, by)
}

export const markPiece = (
  attention: Attention,
  cook: CookModel,
  from: Tick,
  to: Tick,
  hand: boolean,
  up: boolean,
  by: 1 | -1,
): void => {
  const { base, size, first, last } = attention
  const start = Math.max(0, from - base)
  const end = Math.min(size, to - base)
  if (hand) markHand(attention, cook, start, end, by)
  if (!up) return
  if (!cook.host || end <= first || start >= last) {
    markUp(attention, cook, start, end, by)
    return
  }
  const begins = awayFrom(attention, start)
  const ends = awayTo(attention, end)
  attention.away -= awayIn(attention, begins, ends)
  markUp(attention, cook, start, end, by)
  attention.away += awayIn(attention, begins, ends)
}

export const markPlating = (attention: Attention, from: Tick, to: Tick, by: 1 | -1): void => {
  const { base, size, first, last, plating } = attention
  const start = Math.max(0, from - base)
  const end = Math.min(size, to - base)
  const meets = end > first && start < last
  const begins = meets ? awayFrom(attention, start) : 0
  const ends = meets ? awayTo(attention, end) : 0
  attention.away -= awayIn(attention, begins, ends)
  for (let t = start; t < end; t++) plating[t] = (plating[t] as number) + by
  attention.away += awayIn(attention, begins, ends)
}

const markUp = (attention: Attention, cook: CookModel, start: number, end: number, by: 1 | -1): void => {
  const { first, last, hostsUp, missed, eating } = attention
  const up = attention.up[cook.index]
  if (!up) return
  const edge = by === 1 ? 0 : 1
  let changed = 0
  let meal = 0
  for (let t = start; t < end; t++) {
    const count = up[t] as number
    up[t] = count + by
    if (count !== edge) continue
    if (t >= first && t < last) {
      changed++
      meal += eating[t] as number
    }
    if (cook.host) hostsUp[t] = (hostsUp[t] as number) + by
  }
  if (changed === 0) return
  missed[cook.index] = (missed[cook.index] as number) + by * changed
  if (cook.eats) attention.meal += by * meal
}

const markHand = (attention: Attention, cook: CookModel, start: number, end: number, by: 1 | -1): void => {
  const { first, calm } = attention
  const hand = attention.hand[cook.index]
  if (!hand) return
  const edge = by === 1 ? 0 : 1
  let changed = 0
  for (let t = start; t < end; t++) {
    const count = hand[t] as number
    hand[t] = count + by
    if (count === edge && t < first && t >= first - CALM_HOUR) changed++
  }
  if (changed > 0) calm[cook.index] = (calm[cook.index] as number) + by * changed
}

/** Post: the window runs from `first` to `last`, people eat in `meals`, and all counts are of them. */
export const setWindow = (
  attention: Attention,
  first: Tick,
  last: Tick,
  meals: readonly { readonly from: Tick; readonly to: Tick }[],
): void => {
  attention.first = Math.max(0, Math.min(attention.size, first - attention.base))
  attention.last = Math.max(attention.first, Math.min(attention.size, last - attention.base))
  attention.eating.fill(0)
  for (const { from, to } of meals) attention.eating.fill(1, Math.max(0, from - attention.base), Math.max(0, to - attention.base))
  attention.meal = 0
  for (const [cook, up] of attention.up.entries()) {
    attention.missed[cook] = count(up, attention.first, attention.last)
    if (attention.eats[cook]) attention.meal += countBoth(up, attention.eating, attention.first, attention.last)
  }
  for (const [cook, hand] of attention.hand.entries())
    attention.calm[cook] = count(hand, Math.max(0, attention.first - CALM_HOUR), attention.first)
  attention.away = awayIn(attention, attention.first, attention.last)
}

const count = (ticks: Uint8Array, from: number, to: number): number => {
  let sum = 0
  for (let t = from; t < to; t++) if ((ticks[t] as number) > 0) sum++
  return sum
}

const countBoth = (some: Uint8Array, others: Uint8Array, from: number, to: number): number => {
  let sum = 0
  for (let t = from; t < to; t++) if ((some[t] as number) > 0 && (others[t] as number) > 0) sum++
  return sum
}

/** The goals "table" (without its leads) and "calm". */
export const attentionPrice = (attention: Attention, weights: Weights): number => {
  let missed = 0
  let greatest = 0
  let calm = 0
  for (let cook = 0; cook < attention.eats.length; cook++) {
    calm += attention.calm[cook] as number
    if (!attention.eats[cook]) continue
    const own = attention.missed[cook] as number
    missed += own
    if (own > greatest) greatest = own
  }
  const shared = weights.unfair * greatest + weights.allAway * attention.away
  return weights.missed * missed + weights.meal * attention.meal + shared + weights.calm * calm
}

export const isAway = (attention: Attention, t: number): boolean => (attention.hostsUp[t] as number) >= attention.hosts

/** Where the stretch without hosts that ends at `start` began, within the window; `start` itself without one. */
const awayFrom = (attention: Attention, start: number): number => {
  let from = Math.max(attention.first, start)
  while (from > attention.first && isAway(attention, from - 1)) from--
  return from
}

/** Where the stretch without hosts that begins at `end` ends, within the window. */
const awayTo = (attention: Attention, end: number): number => {
  let to = Math.min(attention.last, end)
  while (to < attention.last && isAway(attention, to)) to++
  return to
}

/** Ticks in which all hosts are up, less each stretch that is short and plating. Pre: no stretch crosses its ends. */
const awayIn = (attention: Attention, from: number, to: number): number => {
  const { hosts, hostsUp, plating } = attention
  if (hosts === 0) return 0
  let away = 0
  let run = 0
  let excused = false
  for (let t = from; t <= to; t++) {
    if (t < to && (hostsUp[t] as number) >= hosts) {
      run++
      if ((plating[t] as number) > 0) excused = true
    } else if (run > 0) {
      if (!(excused && run <= PLATING_BURST)) away += run
      run = 0
      excused = false
    }
  }
  return away
}
