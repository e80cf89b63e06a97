import { tellClauses } from './clauses.ts'
import type { Net } from './net.ts'
import { propagateTable } from './propagate-table.ts'
import { because, openReason, pooled, raise } from './trail.ts'

/** To the fixed point of clauses, lags, choices and stores. False on a conflict, which stands at the trail's end. */
export const propagate = (net: Net): boolean => {
  const { trail, tables, dirty } = net
  for (;;) {
    while (trail.head < trail.size) {
      const side = trail.side[trail.head] as number
      trail.head += 1
      if (trail.bound[side] !== trail.value[trail.head - 1]) continue
      if (!tellClauses(trail, net.watches, side)) return false
      const variable = side >> 1
      if (variable >= net.times) {
        if (trail.bound[side] === chosen(side) && !tellPair(net, side)) return false
        continue
      }
      if (!tellLags(net, side)) return false
      for (const table of net.tablesOf[variable] as Int32Array) dirty[table] = 1
    }
    const next = dirty.indexOf(1)
    if (next < 0) return true
    dirty[next] = 0
    if (!propagateTable(net, tables[next] as (typeof tables)[number])) return false
  }
}

/** What holds of a choice's side. */
export const chosen = (side: number): number => (side & 1 ? 0 : 1)

const tellLags = ({ trail, at, lags }: Net, side: number): boolean => {
  const { bound } = trail
  for (let k = at[side] as number, end = at[side + 1] as number; k < end; k += 3) {
    const to = lags[k] as number
    const by = lags[k + 1] as number
    const choice = lags[k + 2] as number
    const here = bound[side] as number
    if (choice < 0) {
      if (here + by > (bound[to] as number) && !follow(trail, side, here, to, by, -1)) return false
    } else if ((bound[choice] as number) >= chosen(choice)) {
      if (here + by > (bound[to] as number) && !follow(trail, side, here, to, by, choice)) return false
    } else if (here + by + (bound[to ^ 1] as number) > 0 && (bound[choice ^ 1] as number) < chosen(choice ^ 1)) {
      const place = openReason(trail, 0)
      because(trail, place, side, here)
      because(trail, place, to ^ 1, 1 - by - here)
      if (!raise(trail, choice ^ 1, chosen(choice ^ 1), pooled(place))) return false
    }
  }
  return true
}

const follow = (trail: Net['trail'], side: number, here: number, to: number, by: number, choice: number): boolean => {
  const place = openReason(trail, 1)
  because(trail, place, side, here)
  if (choice >= 0) because(trail, place, choice, chosen(choice))
  return raise(trail, to, here + by, pooled(place))
}

/** A choice is made: the second starts when the first is over. */
const tellPair = ({ trail, pairs }: Net, side: number): boolean => {
  const { bound } = trail
  const first = pairs[3 * side] as number
  const second = pairs[3 * side + 1] as number
  const by = pairs[3 * side + 2] as number
  const begin = bound[first] as number
  if (begin + by > (bound[second] as number) && !follow(trail, first, begin, second, by, side)) return false
  const end = bound[second ^ 1] as number
  return end + by <= (bound[first ^ 1] as number) || follow(trail, second ^ 1, end, first ^ 1, by, side)
}
