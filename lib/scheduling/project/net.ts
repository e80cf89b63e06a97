import type { Watches } from './clauses.ts'
import { addLag, closure, NO_LAG } from './closure.ts'
import type { Circle, Project } from './project.ts'
import { type TimeTable, timeTables } from './time-table.ts'
import { NO_REASON, newTrail, raise, type Trail } from './trail.ts'

/**
 * The variables of a project (starts, then the end of all, then one choice for each pair that cannot run together: 1 when the
 * first comes first) and all that propagates between them.
 */
export interface Net {
  readonly project: Project
  readonly trail: Trail
  readonly watches: Watches
  /** Starts and the end of all: variables below it are in ticks, others are choices. */
  readonly times: number
  readonly variables: number
  /** bound[to] ≥ bound[from] + by for lags[at[from]..at[from + 1]), three numbers each: to, by, and the choice's side that it holds under, or −1. */
  readonly at: Int32Array
  readonly lags: Int32Array
  /** For each side of a choice: the side of the start that comes first, that of the other, and by how much. */
  readonly pairs: Int32Array
  readonly tables: readonly TimeTable[]
  /** For each variable the tables that it is in. */
  readonly tablesOf: readonly Int32Array[]
  readonly dirty: Uint8Array
}

export type NewNet =
  | { readonly kind: 'net'; readonly net: Net }
  | { readonly kind: 'circle'; readonly circle: Circle }
  | { readonly kind: 'infeasible' }

export const newNet = (project: Project): NewNet => {
  const { lengths, from, to } = project
  const count = lengths.length
  if (project.stores.some(({ capacity, needs }) => needs.some((need, i) => need > capacity && lengths[i] !== 0)))
    return { kind: 'infeasible' }
  const closed = closure(project)
  if (closed.kind === 'circle') return closed
  const { longest } = closed
  const orders = pairOrders(project, longest)
  if (!orders) return { kind: 'infeasible' }
  const times = count + 1
  const variables = times + orders.open.length
  const trail = newTrail(variables)
  for (let v = 0; v < variables; v++) {
    const least = v < count ? (from[v] as number) : 0
    const most = v < count ? (to[v] as number) - (lengths[v] as number) : v === count ? Math.max(0, ...to) : 1
    if (!raise(trail, 2 * v, least, NO_REASON) || !raise(trail, 2 * v + 1, -most, NO_REASON)) return { kind: 'infeasible' }
  }
  const arcs: number[][] = Array.from({ length: 2 * variables }, () => [])
  const arc = (from: number, to: number, by: number, choice: number): void => {
    arcs[2 * from]?.push(2 * to, by, choice)
    arcs[2 * to + 1]?.push(2 * from + 1, by, choice)
  }
  for (const { from, to, least } of project.lags) arc(from, to, least, -1)
  for (const { first, second } of orders.fixed) arc(first, second, lengths[first] as number, -1)
  for (let i = 0; i < count; i++) arc(i, count, lengths[i] as number, -1)
  const pairs = new Int32Array(6 * variables)
  orders.open.forEach(({ first, second }, k) => {
    const choice = times + k
    const forth = lengths[first] as number
    const back = lengths[second] as number
    arc(first, second, forth, 2 * choice)
    arc(second, first, back, 2 * choice + 1)
    pairs.set([2 * first, 2 * second, forth, 2 * second, 2 * first, back], 6 * choice)
  })
  const at = new Int32Array(2 * variables + 1)
  arcs.forEach((of, side) => {
    at[side + 1] = (at[side] as number) + of.length
  })
  const tables = timeTables(project, orders.together)
  const net: Net = {
    project,
    trail,
    watches: Array.from({ length: 2 * variables }, () => []),
    times,
    variables,
    at,
    lags: Int32Array.from(arcs.flat()),
    pairs,
    tables,
    tablesOf: Array.from({ length: times }, (_, i) =>
      Int32Array.from(tables.flatMap(({ needs }, table) => ((needs[i] ?? 0) > 0 ? [table] : []))),
    ),
    dirty: new Uint8Array(tables.length).fill(1),
  }
  return { kind: 'net', net }
}

/** No schedule ends before this, as far as is known for good. */
export const endOf = ({ trail, times }: Net): number => trail.bound[2 * times - 2] as number

/** Everything must be over before `span`. False when it cannot be. Only at level 0. */
export const endBefore = ({ trail, times }: Net, span: number): boolean => {
  const side = 2 * times - 1
  return (trail.bound[side] as number) >= 1 - span || raise(trail, side, 1 - span, NO_REASON)
}

interface Pair {
  readonly first: number
  readonly second: number
}

interface Orders {
  /** Which comes first is still to be chosen. */
  readonly open: readonly Pair[]
  /** Lags leave only this order. */
  readonly fixed: readonly Pair[]
  /** Whether two may run at the same time, at i × n + j. */
  readonly together: Uint8Array
}

/** The pairs that no store lets run together, or nothing when lags leave one of them no order. Closes `longest` over the fixed ones. */
const pairOrders = ({ lengths, stores }: Project, longest: Int32Array): Orders | undefined => {
  const count = lengths.length
  const together = new Uint8Array(count * count).fill(1)
  let open: Pair[] = []
  for (let i = 0; i < count; i++)
    for (let j = i + 1; j < count; j++) {
      if (!lengths[i] || !lengths[j]) continue
      if (!stores.some(({ capacity, needs }) => (needs[i] as number) + (needs[j] as number) > capacity)) continue
      together[i * count + j] = 0
      together[j * count + i] = 0
      open.push({ first: i, second: j })
    }
  const fixed: Pair[] = []
  const least = (i: number, j: number): number => longest[i * count + j] as number
  for (let grew = true; grew; ) {
    grew = false
    const still: Pair[] = []
    for (const { first: i, second: j } of open) {
      const forth = least(j, i) === NO_LAG || least(j, i) + (lengths[i] as number) <= 0
      const back = least(i, j) === NO_LAG || least(i, j) + (lengths[j] as number) <= 0
      if (!forth && !back) return undefined
      if (forth && back) {
        still.push({ first: i, second: j })
        continue
      }
      const [first, second] = forth ? [i, j] : [j, i]
      if (least(first, second) >= (lengths[first] as number)) continue
      if (!addLag(longest, count, first, second, lengths[first] as number)) return undefined
      fixed.push({ first, second })
      grew = true
    }
    open = still
  }
  return { open, fixed, together }
}
