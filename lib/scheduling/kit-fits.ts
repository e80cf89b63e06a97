import { capacityBlocks } from './lane-fits.ts'
import { type Act, type KitModel, type Model, type ModeModel, NEVER, type UseModel } from './model.ts'
import { roundUp } from './pace.ts'
import type { Item } from './place.ts'
import type { Tick } from './problem.ts'
import { type State, vesselWho } from './state.ts'

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
export const kitsFor = (state: State, wanting: Wanting): Kits | undefined => {
  if (wanting.uses.length === 0) return NO_KIT
  const kit: number[] = []
  let vesselKit = -1
  for (const use of wanting.uses) {
    if (use.kind === 'ring' && wanting.vessel >= 0 && vesselKit < 0) {
      vesselKit = vesselRing(state, use, wanting)
      if (vesselKit < 0) return undefined
      kit.push(-1)
      continue
    }
    const chosen = kitFor(state, use, wanting, kit, vesselKit)
    if (chosen < 0) return undefined
    kit.push(chosen)
  }
  return { kit, vesselKit }
}
const NO_KIT: Kits = { kit: [], vesselKit: -1 }

const kitFor = (state: State, use: UseModel, wanting: Wanting, taken: readonly number[], vesselKit: number): number => {
  let lo = -NEVER
  let hi = NEVER
  for (const index of use.kits) {
    const kit = state.model.kits[index]
    if (!kit || index === vesselKit) continue
    if (kit.kind === 'ring' && taken.includes(index)) continue
    const own = ownAmount(wanting.uses, taken, index, use)
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
const ownAmount = (uses: readonly UseModel[], taken: readonly number[], index: number, use: UseModel): number => {
  let own = 0
  for (let i = 0; i < taken.length; i++) {
    const other = uses[i]
    if (taken[i] !== index || !other) continue
    if (use.kind === 'oven' && (use.low > other.high || other.low > use.high)) return -1
    own += other.amount
  }
  return own
}

const kitBlocks = (state: State, kit: KitModel, use: UseModel, wanting: Wanting, own: number): boolean => {
  const lane = state.kitLanes[kit.index] ?? []
  if (kit.kind === 'ring') return ringBlocks(state, lane, wanting.from, wanting.to, -1)
  if (kit.kind === 'oven' && ovenBlocks(state, kit, lane, use, wanting)) return true
  return capacityBlocks(state, lane, kit.capacity - own, use.amount, wanting.from, wanting.to)
}

const ringBlocks = (state: State, lane: readonly Item[], from: Tick, to: Tick, but: number): boolean => {
  for (const item of lane) {
    if (item.from >= to) break
    if (item.to <= from || item.who === but) continue
    state.lo = item.from - (to - from)
    state.hi = item.to
    return true
  }
  return false
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

const ovenBlocks = (state: State, kit: KitModel, lane: readonly Item[], use: UseModel, wanting: Wanting): boolean => {
  const { from, to } = wanting
  let firstFrom = NEVER
  for (const item of lane) {
    if (item.from < firstFrom) firstFrom = item.from
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
  if (use.preheated && firstFrom >= from) {
    const ready = heated(state.model, kit, use.low)
    if (from < ready) {
      state.lo = -NEVER
      state.hi = Math.min(ready, firstFrom + 1)
      return true
    }
  }
  return false
}

/** When a cold oven that was switched on at the horizon's start has reached this. */
export const heated = (model: Model, kit: KitModel, low: number): Tick => model.from + Math.max(0, roundUp((low - 20) / kit.up))

const doorBlocks = (state: State, item: Item, door: number, { from, to, touches }: Wanting): boolean => {
  const shut = (point: Tick, since: Tick, long: number) => point > since && point < since + long
  const mine = (point: Tick) => {
    if (!shut(point, from, door)) return false
    state.lo = point - door
    state.hi = point
    return true
  }
  const theirs = (point: Tick) => {
    if (!shut(point, item.from, item.door)) return false
    state.lo = item.from - (point - from)
    state.hi = item.from + item.door - (point - from)
    return true
  }
  return mine(item.from) || mine(item.to) || item.touches.some(mine) || theirs(from) || theirs(to) || touches.some(theirs)
}

/** Other activities of the vessel that use a ring do not overlap with this one. */
export const sameVessel = (state: State, act: Act, mode: ModeModel, from: Tick, to: Tick): boolean => {
  if (act.vessel < 0 || !mode.uses.some((use) => use.kind === 'ring')) return false
  for (const place of state.vessels[act.vessel]?.members ?? []) {
    if (place.start >= to || place.holdEnd <= from) continue
    state.lo = place.start - (to - from)
    state.hi = place.holdEnd
    return true
  }
  return false
}

/** A ring big enough for every activity of the vessel and free from the first to the last of them; −1 without. */
const vesselRing = (state: State, use: UseModel, { vessel: index, from, to }: Wanting): number => {
  const vessel = state.vessels[index]
  const who = vesselWho(state.model, index)
  const span = vessel?.item
  const start = span ? Math.min(span.from, from) : from
  const end = span ? Math.max(span.to, to) : to
  const held = vessel && span ? vessel.kit : -1
  if (held >= 0 && vesselMay(state, use, index, held) && !ringBlocks(state, state.kitLanes[held] ?? [], start, end, who))
    return held
  let lo = -NEVER
  let hi = NEVER
  for (const kit of use.kits) {
    if (!vesselMay(state, use, index, kit)) continue
    if (!ringBlocks(state, state.kitLanes[kit] ?? [], start, end, who)) return kit
    // With a span longer than this piece alone there is no telling where it ends: one step at a time.
    lo = Math.max(lo, span ? from - 1 : state.lo)
    hi = Math.min(hi, span ? from + 1 : state.hi)
  }
  state.lo = lo
  state.hi = hi
  return -1
}

/** Is the ring big enough for this use and for all the vessel does on it? */
const vesselMay = (state: State, use: UseModel, vessel: number, kit: number): boolean => {
  if (!use.kits.includes(kit)) return false
  for (const place of state.vessels[vessel]?.members ?? []) if (!serves(place.mode, kit)) return false
  return true
}

const serves = (mode: ModeModel, kit: number): boolean => mode.uses.find((use) => use.kind === 'ring')?.kits.includes(kit) ?? true
