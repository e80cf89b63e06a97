import type { Net } from './net.ts'
import { sweep } from './stretches.ts'
import type { TimeTable } from './time-table.ts'
import { because, openReason, pooled, raise } from './trail.ts'

/**
 * Moves starts out of the stretches where what surely runs leaves no room (time-table propagation with pointwise reasons:
 * Schutt, Feydy, Stuckey, Wallace 2011, "Explaining the cumulative propagator", Constraints 16:250-282). False on a conflict.
 */
export const propagateTable = (net: Net, table: TimeTable): boolean => {
  const { trail, project } = net
  const { bound } = trail
  const { lengths } = project
  const { capacity, needs, users, from, use } = table
  const stretches = sweep(net, table)
  let most = 0
  for (let k = 0; k < stretches; k++) {
    const used = use[k] as number
    if (used > most) most = used
    if (used > capacity && !overload(net, table, from[k] as number)) return false
  }
  for (let u = 0; u < users.length; u++) {
    const i = users[u] as number
    const need = needs[i] as number
    if (most + need <= capacity) break
    const length = lengths[i] as number
    const lo = bound[2 * i] as number
    const hi = -(bound[2 * i + 1] as number)
    if (lo === hi) continue
    if (!forth(net, table, stretches, i, need, length, lo, hi)) return false
    if (!back(net, table, stretches, i, need, length, bound[2 * i] as number, hi)) return false
  }
  return true
}

/** Begins a reason with those that surely run at `time`, as many as leave less than `need`. */
const crowded = (
  { trail, project: { lengths } }: Net,
  { capacity, needs, users }: TimeTable,
  time: number,
  not: number,
  need: number,
): number => {
  const { bound } = trail
  const place = openReason(trail, 0)
  let short = need - capacity
  for (let u = 0; u < users.length && short <= 0; u++) {
    const i = users[u] as number
    const length = lengths[i] as number
    if (i === not || -(bound[2 * i + 1] as number) > time || (bound[2 * i] as number) + length <= time) continue
    because(trail, place, 2 * i, time + 1 - length)
    because(trail, place, 2 * i + 1, -time)
    short += needs[i] as number
  }
  return place
}

/** The least of those that run at `time` would have to start later, and cannot. */
const overload = (net: Net, table: TimeTable, time: number): boolean => {
  const {
    trail,
    project: { lengths },
  } = net
  const { users, needs } = table
  for (let u = users.length - 1; u >= 0; u--) {
    const i = users[u] as number
    const length = lengths[i] as number
    if (-(trail.bound[2 * i + 1] as number) > time || (trail.bound[2 * i] as number) + length <= time) continue
    const place = crowded(net, table, time, i, needs[i] as number)
    because(trail, place, 2 * i, time + 1 - length)
    return raise(trail, 2 * i, time + 1, pooled(place))
  }
  return true
}

const forth = (
  net: Net,
  table: TimeTable,
  stretches: number,
  i: number,
  need: number,
  length: number,
  lo: number,
  hi: number,
): boolean => {
  const { trail } = net
  const { capacity, from, use } = table
  let start = lo
  for (let k = firstAfter(from, stretches, lo); k + 1 < stretches; k++) {
    const begin = from[k] as number
    if (begin >= start + length) break
    if (begin >= hi && hi < lo + length) break
    if ((use[k] as number) + need <= capacity) continue
    const end = from[k + 1] as number
    while (start < end) {
      const time = Math.min(end - 1, start + length - 1)
      const place = crowded(net, table, time, i, need)
      because(trail, place, 2 * i, time + 1 - length)
      start = time + 1
      if (!raise(trail, 2 * i, start, pooled(place))) return false
    }
  }
  return true
}

const back = (
  net: Net,
  table: TimeTable,
  stretches: number,
  i: number,
  need: number,
  length: number,
  lo: number,
  hi: number,
): boolean => {
  const { trail } = net
  const { capacity, from, use } = table
  let start = hi
  for (let k = firstAfter(from, stretches, hi + length - 1); k >= 0; k--) {
    if (k + 1 >= stretches) continue
    const end = from[k + 1] as number
    if (end <= start) break
    if (end <= lo + length && hi < lo + length) break
    if ((use[k] as number) + need <= capacity || (from[k] as number) >= start + length) continue
    const begin = from[k] as number
    while (start + length > begin) {
      const time = Math.max(begin, start)
      const place = crowded(net, table, time, i, need)
      because(trail, place, 2 * i + 1, -time)
      start = time - length
      if (!raise(trail, 2 * i + 1, -start, pooled(place))) return false
    }
  }
  return true
}

/** The stretch in which `time` lies, or the first one. */
const firstAfter = (from: Int32Array, stretches: number, time: number): number => {
  let low = 0
  let high = stretches - 1
  while (low < high) {
    const middle = (low + high + 1) >> 1
    if ((from[middle] as number) <= time) low = middle
    else high = middle - 1
  }
  return low
}
