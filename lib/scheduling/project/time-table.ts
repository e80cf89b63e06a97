import type { Net } from './net.ts'
import type { Project } from './project.ts'
import { because, openReason, pooled, raise } from './trail.ts'

/** One store: what surely runs at each time, and what that leaves for the others. */
export interface TimeTable {
  readonly capacity: number
  /** For each variable in ticks. */
  readonly needs: Int32Array
  /** Those that need it, the greedy ones first. */
  readonly users: Int32Array
  /** The same, kept more or less in the order in which their sure parts begin, and end. */
  readonly byBegin: Int32Array
  readonly byEnd: Int32Array
  /** Stretches of constant use: from here, as much, to the next one's. */
  readonly from: Int32Array
  readonly use: Int32Array
}

/** Stores that some three or more can be short of; where no two of the users may run together, the choices say it all. */
export const timeTables = ({ lengths, stores }: Project, together: Uint8Array): TimeTable[] => {
  const count = lengths.length
  return stores.flatMap(({ capacity, needs }) => {
    const users = [...needs.keys()].filter((i) => (needs[i] as number) > 0 && (lengths[i] as number) > 0)
    const sum = users.reduce((total, i) => total + (needs[i] as number), 0)
    const shared = users.some((i) => users.some((j) => i < j && together[i * count + j] === 1))
    if (sum <= capacity || !shared) return []
    users.sort((a, b) => (needs[b] as number) - (needs[a] as number))
    return [
      {
        capacity,
        needs: Int32Array.from([...needs, 0]),
        users: Int32Array.from(users),
        byBegin: Int32Array.from(users),
        byEnd: Int32Array.from(users),
        from: new Int32Array(2 * users.length + 2),
        use: new Int32Array(2 * users.length + 2),
      },
    ]
  })
}

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

/** Writes the stretches and gives their number; the last one is empty. */
const sweep = ({ trail: { bound }, project: { lengths } }: Net, { byBegin, byEnd, needs, from, use }: TimeTable): number => {
  for (let k = 1; k < byBegin.length; k++) {
    const i = byBegin[k] as number
    const begin = -(bound[2 * i + 1] as number)
    let place = k
    for (; place > 0; place--) {
      const other = byBegin[place - 1] as number
      if (-(bound[2 * other + 1] as number) <= begin) break
      byBegin[place] = other
    }
    byBegin[place] = i
  }
  for (let k = 1; k < byEnd.length; k++) {
    const i = byEnd[k] as number
    const end = (bound[2 * i] as number) + (lengths[i] as number)
    let place = k
    for (; place > 0; place--) {
      const other = byEnd[place - 1] as number
      if ((bound[2 * other] as number) + (lengths[other] as number) <= end) break
      byEnd[place] = other
    }
    byEnd[place] = i
  }
  let stretches = 0
  let used = 0
  let e = 0
  for (let b = 0; ; ) {
    while (b < byBegin.length && !sure(bound, lengths, byBegin[b] as number)) b++
    while (e < byEnd.length && !sure(bound, lengths, byEnd[e] as number)) e++
    if (e === byEnd.length) break
    const ender = byEnd[e] as number
    const end = (bound[2 * ender] as number) + (lengths[ender] as number)
    const beginner = byBegin[b] as number
    const begin = b < byBegin.length ? -(bound[2 * beginner + 1] as number) : end
    const now = Math.min(begin, end)
    if (begin < end) {
      used += needs[beginner] as number
      b++
    } else {
      used -= needs[ender] as number
      e++
    }
    if (stretches > 0 && from[stretches - 1] === now) use[stretches - 1] = used
    else {
      from[stretches] = now
      use[stretches] = used
      stretches++
    }
  }
  return stretches
}

const sure = (bound: Int32Array, lengths: Int32Array, i: number): boolean =>
  -(bound[2 * i + 1] as number) < (bound[2 * i] as number) + (lengths[i] as number)

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
