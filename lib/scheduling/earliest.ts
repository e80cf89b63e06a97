import type { Act } from './model.ts'
import { nextPresent } from './stays.ts'

/**
 * The earliest start of every activity under hard lags, its own window, what has happened and who is there (longest paths
 * from the start, relaxed until nothing moves). Pre: longest paths between starts. Post: no schedule that places what leads
 * to it starts it earlier.
 */
export const earliestStarts = (acts: readonly Act[], longest: readonly Float64Array[]): Float64Array => {
  const earliest = Float64Array.from(acts, (act) => (act.fact ? act.fact.start : nextPresent(act, act.from)))
  for (let round = 0, moved = true; moved && round <= acts.length; round++) {
    moved = false
    for (const to of acts) {
      if (to.fact) continue
      let start = earliest[to.index] as number
      for (const from of acts) {
        const path = (longest[from.index] as Float64Array)[to.index] as number
        if (from !== to && path > Number.NEGATIVE_INFINITY) start = Math.max(start, (earliest[from.index] as number) + path)
      }
      start = nextPresent(to, start)
      if (start > (earliest[to.index] as number)) {
        earliest[to.index] = start
        moved = true
      }
    }
  }
  return earliest
}
