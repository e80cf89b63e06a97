import { capacityBlocks } from './lane-fits.ts'
import { type Act, type KitModel, type Model, type ModeModel, NEVER, type UseModel } from './model.ts'
import { roundUp } from './pace.ts'
import type { Item, Lane } from './place.ts'
import type { Tick } from './problem.ts'
import type { Want } from './scratch.ts'
import { type State, type Vessel, vesselWho } from './state.ts'

/** What wants kit in [from, to). */
export interface Wanting {
  readonly who: number
  readonly uses: readonly UseModel[]
  readonly from: Tick
  readonly to: Tick
  readonly touches: readonly Tick[]
  readonly vessel: number
  /** Keepings neither shut an oven's door nor mind one. */
  readonly isActivity: boolean
}

export interface Kits {
  readonly kit: readonly number[]
  readonly vesselKit: number
}

/** Kit for every use, or undefined with state.lo and state.hi set. */
export const kitsFor = (state: State, asked: Wanting): Kits | undefined => {
  const { wanting } = state.scratch
  Object.assign(wanting, asked, { touched: asked.touches.length })
  const kit: number[] = []
  return findKit(state, wanting, kit) ? { kit, vesselKit: wanting.vesselKit } : undefined
}

/** As `kitsFor`, with the kit written into `kit` and the vessel's ring into `wanting`. */
export const findKit = (state: State, wanting: Want, kit: number[]): boolean => {
  wanting.vesselKit = -1
  const { uses, vessel } = wanting
  for (let i = 0; i < uses.length; i++) {
    const use = uses[i] as UseModel
    if (use.kind === 'ring' && vessel >= 0 && wanting.vesselKit < 0) {
      wanting.vesselKit = vesselRing(state, use, wanting)
      if (wanting.vesselKit < 0) return false
      kit[i] = -1
      continue
    }
    const chosen = kitFor(state, use, wanting, kit, i)
    if (chosen < 0) return false
    kit[i] = chosen
  }
  return true
}

const kitFor = (state: State, use: UseModel, wanting: Want, taken: readonly number[], known: number): number => {
  let lo = -NEVER
  let hi = NEVER
  for (let i = 0; i < use.kits.length; i++) {
    const index = use.kits[i] as number
    const kit = state.model.kits[index] as KitModel
    if (index === wanting.vesselKit) continue
    const own = known === 0 ? 0 : ownAmount(wanting.uses, taken, known, kit, use)
    if (own < 0) continue
    if (!kitBlocks(state, kit, use, wanting, own)) return index
    if (state.lo > lo) lo = state.lo
    if (state.hi < hi) hi = state.hi
  }
  state.lo = lo
  state.hi = hi
  return -1
}

/** What this activity itself already holds of a kit; −1 when that forbids the use. */
const ownAmount = (uses: readonly UseModel[], taken: readonly number[], known: number, kit: KitModel, use: UseModel): number => {
  let own = 0
  for (let i = 0; i < known; i++) {
    const other = uses[i] as UseModel
    if (taken[i] !== kit.index) continue
    if (kit.kind === 'ring' || (use.kind === 'oven' && (use.low > other.high || other.low > use.high))) return -1
    own += other.amount
  }
  return own
}

const kitBlocks = (state: State, kit: KitModel, use: UseModel, wanting: Want, own: number): boolean => {
  const lane = state.kitLanes[kit.index] as Lane
  const { from, to } = wanting
  if (kit.kind === 'ring') {
    const item = ringHolder(lane, from, to, -1)
    if (!item) return false
    state.lo = item.from - (to - from)
    state.hi = item.to
    return true
  }
  if (kit.kind === 'oven' && ovenBlocks(state, kit, lane, use, wanting)) return true
  return capacityBlocks(state, lane, kit.capacity - own, use.amount, from, to)
}

/** Who holds a ring first in [from, to), but for one. */
const ringHolder = (lane: Lane, from: Tick, to: Tick, but: number): Item | undefined => {
  for (let i = 0; i < lane.length; i++) {
    const item = lane[i] as Item
    if (item.from >= to) return undefined
    if (item.to > from && item.who !== but) return item
  }
  return undefined
}

/** Ticks between the end of a hold and the start of a later one; 0 when their windows meet and they may overlap. */
export const gapBetween = (kit: { readonly up: number; readonly down: number }, earlier: Heat, later: Heat): number => {
  if (later.low > earlier.high) return roundUp((later.low - earlier.high) / kit.up)
  if (later.high < earlier.low) return roundUp((earlier.low - later.high) / kit.down)
  return 0
}
interface Heat {
  readonly low: number
  readonly high: number
}

const ovenBlocks = (state: State, kit: KitModel, lane: Lane, use: UseModel, wanting: Want): boolean => {
  const { from, to } = wanting
  for (let i = 0; i < lane.length; i++) {
    const item = lane[i] as Item
    if (use.low > item.high || use.high < item.low) {
      const before = gapBetween(kit, use, item)
      const after = gapBetween(kit, item, use)
      if (from < item.to + after && item.from < to + before) {
        state.lo = item.from - before - (to - from)
        state.hi = item.to + after
        return true
      }
    }
    if (wanting.isActivity && item.who < state.model.acts.length && (use.door > 0 || item.door > 0))
      if (doorBlocks(state, item, use.door, wanting)) return true
  }
  const first = lane.length > 0 ? (lane[0] as Item).from : NEVER
  if (!use.preheated || first < from) return false
  const ready = heated(state.model, kit, use.low)
  if (from >= ready) return false
  state.lo = -NEVER
  state.hi = Math.min(ready, first + 1)
  return true
}

/** When a cold oven that was switched on at the horizon's start has reached this. */
export const heated = (model: Model, kit: KitModel, low: number): Tick => model.from + Math.max(0, roundUp((low - 20) / kit.up))

/** Is either's door shut when the other is put in, taken out or touched? */
const doorBlocks = (state: State, item: Item, door: number, wanting: Want): boolean => {
  const { from, to } = wanting
  if (shuts(state, item.from, from, door) || shuts(state, item.to, from, door)) return true
  for (const at of item.touches) if (shuts(state, at, from, door)) return true
  if (isShutFor(state, item, from, from) || isShutFor(state, item, to, from)) return true
  for (let i = 0; i < wanting.touched; i++) if (isShutFor(state, item, wanting.touches[i] as Tick, from)) return true
  return false
}

/** Something there at `at` while our door, shut since `from`, is. */
const shuts = (state: State, at: Tick, from: Tick, door: number): boolean => {
  if (at <= from || at >= from + door) return false
  state.lo = at - door
  state.hi = at
  return true
}

/** Something of ours at `at`, ours beginning at `from`, while their door is shut. */
const isShutFor = (state: State, item: Item, at: Tick, from: Tick): boolean => {
  if (at <= item.from || at >= item.from + item.door) return false
  state.lo = item.from - (at - from)
  state.hi = item.from + item.door - (at - from)
  return true
}

/** Other activities of the vessel that use a ring do not overlap with this one. */
export const sameVessel = (state: State, act: Act, mode: ModeModel, from: Tick, to: Tick): boolean => {
  if (act.vessel < 0 || !mode.rings) return false
  for (const place of (state.vessels[act.vessel] as Vessel).members) {
    if (place.start >= to || place.holdEnd <= from) continue
    state.lo = place.start - (to - from)
    state.hi = place.holdEnd
    return true
  }
  return false
}

/** A ring big enough for every activity of the vessel and free from the first to the last of them; −1 without. */
const vesselRing = (state: State, use: UseModel, { vessel: index, from, to }: Want): number => {
  const vessel = state.vessels[index] as Vessel
  const who = vesselWho(state.model, index)
  const span = vessel.item
  const start = span ? Math.min(span.from, from) : from
  const end = span ? Math.max(span.to, to) : to
  if (span && vesselMay(vessel, use, vessel.kit) && !ringHolder(state.kitLanes[vessel.kit] as Lane, start, end, who))
    return vessel.kit
  let lo = -NEVER
  let hi = NEVER
  for (let i = 0; i < use.kits.length; i++) {
    const kit = use.kits[i] as number
    if (!vesselMay(vessel, use, kit)) continue
    const item = ringHolder(state.kitLanes[kit] as Lane, start, end, who)
    if (!item) return kit
    // What lies in the span, or between this piece and a span after it, is in the way of every earlier start too.
    const always = span !== undefined && (item.from >= to || (item.from < span.to && item.to > span.from))
    if (!always) lo = Math.max(lo, item.from - (to - from))
    hi = Math.min(hi, span ? from + 1 : item.to)
  }
  state.lo = lo
  state.hi = hi
  return -1
}

/** Is the ring big enough for this use and for all the vessel does on it? */
const vesselMay = (vessel: Vessel, use: UseModel, kit: number): boolean => {
  if (!use.kits.includes(kit)) return false
  for (const { mode } of vessel.members) if (mode.rings && !mode.rings.includes(kit)) return false
  return true
}
