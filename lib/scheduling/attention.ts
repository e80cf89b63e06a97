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
  /** Where the last meal ends, as an offset. */
  fed: number
  /** See `awayOf`. */
  away: number
  isStale: boolean
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
    fed: 0,
    away: 0,
    isStale: true,
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
  const start = Math.max(0, from - attention.base)
  const end = Math.min(attention.size, to - attention.base)
  if (hand) markHand(attention, cook, start, end, by)
  if (up) markUp(attention, cook, start, end, by)
}

export const markPlating = (attention: Attention, from: Tick, to: Tick, by: 1 | -1): void => {
  const { base, size, first, last, plating } = attention
  const start = Math.max(0, from - base)
  const end = Math.min(size, to - base)
  for (let t = start; t < end; t++) plating[t] = (plating[t] as number) + by
  if (end > first && start < last) attention.isStale = true
}

const markUp = (attention: Attention, cook: CookModel, start: number, end: number, by: 1 | -1): void => {
  const { first, last, hostsUp, missed, eating, hosts } = attention
  const up = attention.up[cook.index] as Uint8Array
  const edge = by === 1 ? 0 : 1
  // All hosts are away from this count on, or were up to it.
  const turn = by === 1 ? hosts - 1 : hosts
  let changed = 0
  let meal = 0
  for (let t = start; t < end; t++) {
    const count = up[t] as number
    up[t] = count + by
    if (count !== edge) continue
    const isIn = t >= first && t < last
    if (isIn) {
      changed++
      meal += eating[t] as number
    }
    if (!cook.host) continue
    const before = hostsUp[t] as number
    if (isIn && before === turn) attention.isStale = true
    hostsUp[t] = before + by
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

/** Post: the window runs from `first` to `last`, people eat in `meals` (from, to, from, to …), and all counts are of them. */
export const setWindow = (attention: Attention, first: Tick, last: Tick, meals: readonly Tick[]): void => {
  const { base, size, eating, eats, missed, calm } = attention
  const from = Math.max(0, Math.min(size, first - base))
  const to = Math.max(from, Math.min(size, last - base))
  eating.fill(0, attention.first, attention.fed)
  attention.fed = from
  for (let i = 0; i < meals.length; i += 2) {
    const end = Math.min(size, Math.max(0, (meals[i + 1] as Tick) - base))
    eating.fill(1, Math.max(from, (meals[i] as Tick) - base), end)
    attention.fed = Math.max(attention.fed, end)
  }
  const hour = Math.max(0, from - CALM_HOUR)
  const hourBefore = Math.max(0, attention.first - CALM_HOUR)
  attention.meal = 0
  for (let cook = 0; cook < eats.length; cook++) {
    const up = attention.up[cook] as Uint8Array
    const hand = attention.hand[cook] as Uint8Array
    // What the new window has and the old one had not, and the other way round.
    missed[cook] = (missed[cook] as number) + count(up, from, attention.first) + count(up, attention.last, to)
    calm[cook] = (calm[cook] as number) + count(hand, hour, hourBefore) + count(hand, attention.first, from)
    if (eats[cook]) attention.meal += countBoth(up, eating, from, to)
  }
  attention.first = from
  attention.last = to
  attention.isStale = true
}

/** Ticks of [from, to) in which something is; less than nothing when it runs backwards. */
const count = (ticks: Uint8Array, from: number, to: number): number => {
  if (from > to) return -count(ticks, to, from)
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
  const shared = weights.unfair * greatest + weights.allAway * awayOf(attention)
  return weights.missed * missed + weights.meal * attention.meal + shared + weights.calm * calm
}

export const isAway = (attention: Attention, t: number): boolean => (attention.hostsUp[t] as number) >= attention.hosts

/** Ticks of the window in which all hosts are up, but for excused bursts; counted again when something about it changed. */
export const awayOf = (attention: Attention): number => {
  if (attention.isStale) {
    attention.away = countAway(attention)
    attention.isStale = false
  }
  return attention.away
}

const countAway = ({ hosts, hostsUp, plating, first, last }: Attention): number => {
  if (hosts === 0) return 0
  let away = 0
  let run = 0
  let excused = false
  for (let t = first; t <= last; t++) {
    if (t < last && (hostsUp[t] as number) >= hosts) {
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
