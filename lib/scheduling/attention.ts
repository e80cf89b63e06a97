import type { CookModel, Model } from './model.ts'
import type { Place } from './place.ts'
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
export const mark = (attention: Attention, place: Place, by: 1 | -1): void => {
  const { base, size } = attention
  const near = nearAway(attention, place)
  if (near) attention.away -= awayIn(attention, near.from, near.to)
  for (const { cook, from, to, hand, up } of place.pieces) {
    const start = Math.max(0, from - base)
    const end = Math.min(size, to - base)
    if (up) markUp(attention, cook, start, end, by)
    if (hand) markHand(attention, cook, start, end, by)
  }
  if (place.act.activity.plating) {
    const { plating } = attention
    const end = Math.min(size, place.end - base)
    for (let t = Math.max(0, place.start - base); t < end; t++) plating[t] = (plating[t] as number) + by
  }
  if (near) attention.away += awayIn(attention, near.from, near.to)
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

/** What the ticks of [from, to) cost that this cook would newly be up inside the window. */
export const newlyMissed = (attention: Attention, weights: Weights, cook: CookModel, from: Tick, to: Tick): number => {
  const up = attention.up[cook.index]
  if (!up) return 0
  const start = Math.max(attention.first, from - attention.base)
  const end = Math.min(attention.last, to - attention.base)
  let sum = 0
  for (let t = start; t < end; t++)
    if ((up[t] as number) === 0) sum += weights.missed + weights.meal * (attention.eating[t] as number)
  return sum
}

/** How many of [from, to) would newly be spent up by this cook inside the window. */
const newlyUp = (attention: Attention, cook: CookModel, from: Tick, to: Tick): number => {
  const up = attention.up[cook.index] as Uint8Array
  const end = Math.min(attention.last, to - attention.base)
  let sum = 0
  for (let t = Math.max(attention.first, from - attention.base); t < end; t++) if ((up[t] as number) === 0) sum++
  return sum
}

/** How many of [from, to) would newly leave no host at the table. */
export const newlyAway = (attention: Attention, cook: CookModel, from: Tick, to: Tick): number => {
  const up = attention.up[cook.index]
  if (!up || !cook.host) return 0
  const start = Math.max(attention.first, from - attention.base)
  const end = Math.min(attention.last, to - attention.base)
  let sum = 0
  for (let t = start; t < end; t++) if ((up[t] as number) === 0 && (attention.hostsUp[t] as number) + 1 >= attention.hosts) sum++
  return sum
}

/** How many of [from, to) would newly be busy for this cook in the hour before the window. */
export const newlyBusy = (attention: Attention, cook: CookModel, from: Tick, to: Tick): number => {
  const hand = attention.hand[cook.index]
  if (!hand) return 0
  const start = Math.max(0, attention.first - CALM_HOUR, from - attention.base)
  const end = Math.min(attention.first, to - attention.base)
  let sum = 0
  for (let t = start; t < end; t++) if ((hand[t] as number) === 0) sum++
  return sum
}

/** Does [from, to) meet the hour before the first serving or the window itself? */
export const matters = (attention: Attention, from: Tick, to: Tick): boolean =>
  to - attention.base > attention.first - CALM_HOUR && from - attention.base < attention.last

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

/** By how much `attentionPrice` rises when this is put there. Pre: it is not. */
export const attentionRise = (attention: Attention, weights: Weights, place: Place): number => {
  if (place.mode.care === 'eye' && place.touches.length > 0) return riseByMarking(attention, weights, place)
  const { more } = attention
  let sum = 0
  let away = false
  for (const { cook, from, to, hand, up } of place.pieces) {
    if (hand) sum += weights.calm * newlyBusy(attention, cook, from, to)
    if (!up) continue
    if (cook.eats) {
      sum += newlyMissed(attention, weights, cook, from, to)
      more[cook.index] = (more[cook.index] as number) + newlyUp(attention, cook, from, to)
    }
    away ||= newlyAway(attention, cook, from, to) > 0
  }
  if (away || place.act.activity.plating) {
    more.fill(0)
    return riseByMarking(attention, weights, place)
  }
  let before = 0
  let after = 0
  for (let cook = 0; cook < more.length; cook++) {
    if (!attention.eats[cook]) continue
    const own = attention.missed[cook] as number
    if (own > before) before = own
    if (own + (more[cook] as number) > after) after = own + (more[cook] as number)
    more[cook] = 0
  }
  return sum + weights.unfair * (after - before)
}

/** Where pieces may lie on each other, or a stretch without hosts may begin or be excused. */
const riseByMarking = (attention: Attention, weights: Weights, place: Place): number => {
  const before = attentionPrice(attention, weights)
  mark(attention, place, 1)
  const after = attentionPrice(attention, weights)
  mark(attention, place, -1)
  return after - before
}

/** The part of the window in which a place may change whether all hosts are away, whole stretches of that included. */
const nearAway = (attention: Attention, place: Place): { from: number; to: number } | undefined => {
  const { hosts, base, first, last } = attention
  if (hosts === 0) return undefined
  let from = last
  let to = first
  const { plating } = place.act.activity
  if (plating) {
    from = Math.max(first, place.start - base)
    to = Math.min(last, place.end - base)
  }
  for (const piece of place.pieces) {
    if (!piece.up || !piece.cook.host) continue
    if (piece.from - base < from) from = Math.max(first, piece.from - base)
    if (piece.to - base > to) to = Math.min(last, piece.to - base)
  }
  if (from >= to) return undefined
  while (from > first && isAway(attention, from - 1)) from--
  while (to < last && isAway(attention, to)) to++
  return { from, to }
}

const isAway = (attention: Attention, t: number): boolean => (attention.hostsUp[t] as number) >= attention.hosts

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
