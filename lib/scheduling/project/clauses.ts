import { raise, type Trail, twice } from './trail.ts'

/** For each side, the clauses that wait for it: clause and the value from which on their literal is false, in pairs. */
export type Watches = readonly number[][]

/** Adds a clause of 2 or more literals, the first not false; the second is the last to have become false. Gives its place. */
export const addClause = (trail: Trail, watches: Watches, literals: Int32Array, size: number, levels: number): number => {
  while (trail.clausesSize + size + 2 > trail.clauses.length) trail.clauses = twice(trail.clauses)
  const { clauses } = trail
  const place = trail.clausesSize
  clauses[place] = size
  clauses[place + 1] = levels
  for (let k = 0; k < size; k++) clauses[place + 2 + k] = literals[k] as number
  trail.clausesSize = place + 2 + size
  watch(trail, watches, place)
  return place
}

const watch = ({ clauses }: Trail, watches: Watches, place: number): void => {
  for (let k = place + 2; k < place + 6; k += 2) watches[(clauses[k] as number) ^ 1]?.push(place, 1 - (clauses[k + 1] as number))
}

/** Tells the clauses that a bound has risen. Two watched literals (Moskewicz et al. 2001, "Chaff"). False on a conflict. */
export const tellClauses = (trail: Trail, watches: Watches, side: number): boolean => {
  const { bound, clauses } = trail
  const list = watches[side] as number[]
  const reached = bound[side] as number
  let kept = 0
  for (let at = 0; at < list.length; at += 2) {
    const place = list[at] as number
    const from = list[at + 1] as number
    list[kept] = place
    list[kept + 1] = from
    kept += 2
    if (reached < from) continue
    const first = place + 2
    if (clauses[first] === (side ^ 1)) swap(clauses, first, first + 2)
    const other = clauses[first] as number
    const value = clauses[first + 1] as number
    if ((bound[other] as number) >= value) continue
    let moved = false
    for (let k = first + 4, end = first + (clauses[place] as number); k < end; k += 2) {
      const against = (clauses[k] as number) ^ 1
      const falseFrom = 1 - (clauses[k + 1] as number)
      if ((bound[against] as number) >= falseFrom) continue
      swap(clauses, k, first + 2)
      watches[against]?.push(place, falseFrom)
      moved = true
      break
    }
    if (moved) {
      kept -= 2
      continue
    }
    if (raise(trail, other, value, place)) continue
    for (let rest = at + 2; rest < list.length; rest++) list[kept++] = list[rest] as number
    list.length = kept
    return false
  }
  list.length = kept
  return true
}

const swap = (clauses: Int32Array, a: number, b: number): void => {
  const side = clauses[a] as number
  const value = clauses[a + 1] as number
  clauses[a] = clauses[b] as number
  clauses[a + 1] = clauses[b + 1] as number
  clauses[b] = side
  clauses[b + 1] = value
}

/**
 * Forgets the longer half of the clauses (by the levels they spanned: Audemard & Simon 2009) and what holds for good. Only at
 * level 0 with everything propagated. Gives how many are left.
 */
export const forget = (trail: Trail, watches: Watches): number => {
  const { clauses } = trail
  const levels: number[] = []
  for (let place = 0; place < trail.clausesSize; place += 2 + (clauses[place] as number))
    levels.push(clauses[place + 1] as number)
  const most = Math.max(2, levels.toSorted((a, b) => a - b)[levels.length >> 1] ?? 0)
  for (const list of watches) list.length = 0
  let kept = 0
  let many = 0
  for (let place = 0; place < trail.clausesSize; ) {
    const size = 2 + (clauses[place] as number)
    if ((clauses[place + 1] as number) <= most && openFirst(trail, place)) {
      clauses.copyWithin(kept, place, place + size)
      kept += size
      many += 1
    }
    place += size
  }
  trail.clausesSize = kept
  for (let place = 0; place < kept; place += 2 + (clauses[place] as number)) watch(trail, watches, place)
  return many
}

/** Brings the literals that are not false to the front. False when one is true. */
const openFirst = ({ bound, clauses }: Trail, place: number): boolean => {
  let open = place + 2
  for (let k = open, end = k + (clauses[place] as number); k < end; k += 2) {
    const side = clauses[k] as number
    const value = clauses[k + 1] as number
    if ((bound[side] as number) >= value) return false
    if ((bound[side ^ 1] as number) >= 1 - value) continue
    swap(clauses, k, open)
    open += 2
  }
  return true
}
