/**
 * Bounds and how they came about. Variable x has two sides: 2x is a lower bound of x, 2x + 1 one of −x. A literal (side, value)
 * says bound[side] ≥ value; its opposite is (side ^ 1, 1 − value). Lazy clause generation over bounds, after Ohrimenko, Stuckey,
 * Codish 2009, "Propagation via lazy clause generation", Constraints 14:357-391.
 */
export interface Trail {
  readonly bound: Int32Array
  /** The last entry of each side, −1 for none. */
  readonly last: Int32Array
  /** Entries: which side went from `old` to `value`, the entry of that side before it, and why. */
  side: Int32Array
  value: Int32Array
  old: Int32Array
  previous: Int32Array
  reason: Int32Array
  /** The entry at `size` is the one that was refused, when `raise` said so. */
  size: number
  /** Entries up to here are propagated. */
  head: number
  /** Where each level begins, in the entries and in the pool. Level 0 is for good. */
  readonly levels: number[]
  readonly pools: number[]
  /** Reasons of propagators, one after the other: twice the number of literals, 1 when the first may be lifted, then side, value. */
  pool: Int32Array
  poolSize: number
  /** Learned clauses, one after the other: twice the number of literals, how many levels they spanned, then side, value. */
  clauses: Int32Array
  clausesSize: number
}

/** Why a bound is where it is: by decision or for good, a clause (≥ 0), or a place in the pool (−2 − place). */
export const NO_REASON = -1
export const pooled = (place: number): number => -2 - place

/** No bound yet. */
const UNBOUND = -(2 ** 28)

export const newTrail = (variables: number): Trail => ({
  bound: new Int32Array(2 * variables).fill(UNBOUND),
  last: new Int32Array(2 * variables).fill(-1),
  side: new Int32Array(1024),
  value: new Int32Array(1024),
  old: new Int32Array(1024),
  previous: new Int32Array(1024),
  reason: new Int32Array(1024),
  size: 0,
  head: 0,
  levels: [0],
  pools: [0],
  pool: new Int32Array(8192),
  poolSize: 0,
  clauses: new Int32Array(8192),
  clausesSize: 0,
})

export const levelOf = (trail: Trail): number => trail.levels.length - 1

export const openLevel = (trail: Trail): void => {
  trail.levels.push(trail.size)
  trail.pools.push(trail.poolSize)
}

/** Takes back every bound above `level`. */
export const backTo = (trail: Trail, level: number): void => {
  if (level >= levelOf(trail)) return
  const size = trail.levels[level + 1] as number
  for (let entry = trail.size - 1; entry >= size; entry--) {
    const side = trail.side[entry] as number
    trail.bound[side] = trail.old[entry] as number
    trail.last[side] = trail.previous[entry] as number
  }
  trail.size = size
  trail.head = size
  trail.poolSize = trail.pools[level + 1] as number
  trail.levels.length = level + 1
  trail.pools.length = level + 1
}

/** Raises a bound. False when the opposite bound forbids it: the refused entry then stands at `size`. */
export const raise = (trail: Trail, side: number, value: number, reason: number): boolean => {
  const { bound, last, size } = trail
  if (size === trail.side.length) grow(trail)
  trail.side[size] = side
  trail.value[size] = value
  trail.old[size] = bound[side] as number
  trail.previous[size] = last[side] as number
  trail.reason[size] = reason
  if (value + (bound[side ^ 1] as number) > 0) return false
  bound[side] = value
  last[side] = size
  trail.size = size + 1
  return true
}

/** Begins a reason in the pool, for `because` to add to; `lift`: a lower value needs as much less of its first literal. */
export const openReason = (trail: Trail, lift: 0 | 1): number => {
  const place = trail.poolSize
  if (place + 2 > trail.pool.length) trail.pool = twice(trail.pool)
  trail.pool[place] = 0
  trail.pool[place + 1] = lift
  trail.poolSize = place + 2
  return place
}

export const because = (trail: Trail, place: number, side: number, value: number): void => {
  const at = trail.poolSize
  if (at + 2 > trail.pool.length) trail.pool = twice(trail.pool)
  const { pool } = trail
  pool[at] = side
  pool[at + 1] = value
  pool[place] = (pool[place] as number) + 2
  trail.poolSize = at + 2
}

/** Writes to `into` (side, value, …) what made an entry's bound at least `value`, and gives how many numbers that is. */
export const explain = (trail: Trail, entry: number, value: number, into: Int32Array): number => {
  const reason = trail.reason[entry] as number
  if (reason === NO_REASON) return 0
  if (reason < 0) {
    const { pool } = trail
    const place = -2 - reason
    const size = pool[place] as number
    for (let k = 0; k < size; k++) into[k] = pool[place + 2 + k] as number
    if (pool[place + 1] === 1) into[1] = (into[1] as number) - ((trail.value[entry] as number) - value)
    return size
  }
  const { clauses } = trail
  const own = trail.side[entry] as number
  let size = 0
  for (let k = reason + 2, end = k + (clauses[reason] as number); k < end; k += 2) {
    const side = clauses[k] as number
    if (side === own) continue
    into[size++] = side ^ 1
    into[size++] = 1 - (clauses[k + 1] as number)
  }
  return size
}

/** The entry that made bound[side] ≥ value, −1 when it is so for good from the start. */
export const entryOf = (trail: Trail, side: number, value: number): number => {
  let entry = trail.last[side] as number
  while (entry >= 0 && (trail.old[entry] as number) >= value) entry = trail.previous[entry] as number
  return entry
}

const grow = (trail: Trail): void => {
  trail.side = twice(trail.side)
  trail.value = twice(trail.value)
  trail.old = twice(trail.old)
  trail.previous = twice(trail.previous)
  trail.reason = twice(trail.reason)
}

export const twice = (from: Int32Array): Int32Array<ArrayBuffer> => {
  const to = new Int32Array(2 * from.length)
  to.set(from)
  return to
}
