import { type Act, NEVER, type Stretch } from './model.ts'
import type { Item, Lane } from './place.ts'
import type { Tick } from './problem.ts'
import type { State } from './state.ts'

// Each check answers whether [from, from + len) is blocked and, when it is, leaves in state.lo and state.hi the nearest
// earlier and later `from` that this reason would allow.

/** Not wholly inside one stay. */
export const stayBlocks = (state: State, stays: readonly Stretch[], from: Tick, len: number): boolean => {
  let lo = -NEVER
  let hi = NEVER
  for (let i = 0; i < stays.length; i++) {
    const stay = stays[i] as Stretch
    const latest = stay.to - len
    if (latest < stay.from) continue
    if (from >= stay.from && from <= latest) return false
    if (latest < from) lo = Math.max(lo, latest)
    else hi = Math.min(hi, stay.from)
  }
  state.lo = lo
  state.hi = hi
  return true
}

/** A cook cannot do both: two hands-on things, or something elsewhere or long while keeping an eye on something. */
export const laneBlocks = (
  state: State,
  lane: Lane,
  kind: Item['kind'],
  spot: number,
  short: boolean,
  from: Tick,
  len: number,
): boolean => {
  const to = from + len
  for (let i = 0; i < lane.length; i++) {
    const item = lane[i] as Item
    if (item.from >= to) break
    if (item.to <= from) continue
    if (kind === 'road' && item.kind === 'road') continue
    if (
      kind === 'eye'
        ? item.spot === spot && (item.kind === 'eye' || item.short)
        : item.kind === 'eye' && short && item.spot === spot
    )
      continue
    state.lo = item.from - len
    state.hi = item.to
    return true
  }
  return false
}

/** What a cook carries in one hole leaves at one moment: something else leaves at another. What is on the road already binds nothing. */
export const tripBlocks = (state: State, lane: Lane, holes: readonly Stretch[], from: Tick, len: number): boolean => {
  for (let i = 0; i < lane.length; i++) {
    const item = lane[i] as Item
    if (item.kind !== 'road' || item.from === from || (state.model.acts[item.who] as Act).fact) continue
    const hole = holes.find((one) => item.from >= one.from && item.to <= one.to)
    if (!hole || from < hole.from || from + len > hole.to) continue
    state.lo = item.from < from ? item.from : hole.from - len
    state.hi = item.from > from ? item.from : hole.to
    return true
  }
  return false
}

/** More than `capacity` at some moment. */
export const capacityBlocks = (state: State, lane: Lane, capacity: number, amount: number, from: Tick, to: Tick): boolean => {
  let sum = amount
  for (const item of lane) {
    if (item.from >= to) break
    if (item.to > from) sum += item.amount
  }
  if (sum <= capacity) return false
  if (overAt(state, lane, capacity - amount, from, from, to)) return true
  for (const item of lane)
    if (item.from > from && item.from < to && overAt(state, lane, capacity - amount, item.from, from, to)) return true
  return false
}

const overAt = (state: State, lane: Lane, room: number, at: Tick, from: Tick, to: Tick): boolean => {
  let sum = 0
  let begins = -NEVER
  let ends = NEVER
  for (const item of lane) {
    if (item.from > at) break
    if (item.to <= at) continue
    sum += item.amount
    begins = Math.max(begins, item.from)
    ends = Math.min(ends, item.to)
  }
  if (sum <= room) return false
  state.lo = begins - (to - from)
  state.hi = ends
  return true
}
