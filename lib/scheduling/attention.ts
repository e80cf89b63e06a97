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
  away: number
  /** Ticks of `missed` in which plates are being eaten, of all cooks who eat. */
  meal: number
  stale: boolean
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
    stale: true,
  }
}

/** Adds (1) or takes away (−1) all that a placed activity asks of its cooks. */
export const mark = (attention: Attention, place: Place, by: 1 | -1): void => {
  for (const { cook, from, to, hand, up } of place.pieces) {
    const start = Math.max(0, from - attention.base)
    const end = Math.min(attention.size, to - attention.base)
    if (up) markUp(attention, cook, start, end, by)
    if (hand) markHand(attention, cook, start, end, by)
  }
  if (place.act.activity.plating) {
    const { plating, base, first, last } = attention
    const start = Math.max(0, place.start - base)
    const end = Math.min(attention.size, place.end - base)
    for (let t = start; t < end; t++) plating[t] = (plating[t] as number) + by
    if (end > first && start < last) attention.stale = true
  }
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
  if (changed > 0) {
    missed[cook.index] = (missed[cook.index] as number) + by * changed
    if (cook.eats) attention.meal += by * meal
    if (cook.host) attention.stale = true
  }
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
  attention.stale = true
  attention.eating.fill(0)
  for (const { from, to } of meals) attention.eating.fill(1, Math.max(0, from - attention.base), Math.max(0, to - attention.base))
  attention.meal = 0
  for (const [cook, up] of attention.up.entries()) {
    attention.missed[cook] = count(up, attention.first, attention.last)
    if (attention.eats[cook]) attention.meal += countBoth(up, attention.eating, attention.first, attention.last)
  }
  for (const [cook, hand] of attention.hand.entries())
    attention.calm[cook] = count(hand, Math.max(0, attention.first - CALM_HOUR), attention.first)
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
  if (attention.stale) {
    attention.away = countAway(attention)
    attention.stale = false
  }
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
