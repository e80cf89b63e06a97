import { roundUp } from './pace.ts'
import type { ActivityId, Problem } from './problem.ts'

interface Arc {
  readonly from: number
  readonly to: number
  readonly weight: number
}

/**
 * Longest paths between starts under the hard lags (all pairs, Floyd 1962, "Algorithm 97"). Pre: lengths are the least
 * possible. Post: longest[i][j] ≤ start(j) − start(i) in every schedule that keeps the hard lags of all activities;
 * −∞ without a path. Lags that close a positive cycle are left out of it, one for each cycle, so that the rest still bounds.
 */
export const longestPaths = (problem: Problem): Float64Array[] => {
  const n = problem.activities.length
  let arcs = hardArcs(problem)
  for (;;) {
    const cycle = positiveCycle(n, arcs)
    if (cycle.length === 0) break
    const dropped = cycle[cycle.length - 1]
    arcs = arcs.filter((arc) => arc !== dropped)
  }
  const longest = Array.from({ length: n }, (_, i) => new Float64Array(n).fill(Number.NEGATIVE_INFINITY).fill(0, i, i + 1))
  for (const { from, to, weight } of arcs) {
    const row = longest[from]
    if (row && (row[to] as number) < weight) row[to] = weight
  }
  for (const [k, via] of longest.entries())
    for (const row of longest) {
      const first = row[k] as number
      if (first === Number.NEGATIVE_INFINITY) continue
      for (let j = 0; j < n; j++) if (first + (via[j] as number) > (row[j] as number)) row[j] = first + (via[j] as number)
    }
  return longest
}

/** Activities whose hard lags ask for each other in a circle that no times can keep, circle by circle. */
export const impossibleCycles = (problem: Problem): ActivityId[][] => {
  const found: ActivityId[][] = []
  let arcs = hardArcs(problem)
  for (;;) {
    const cycle = positiveCycle(problem.activities.length, arcs)
    if (cycle.length === 0) return found
    found.push(cycle.flatMap((arc) => problem.activities[arc.from]?.id ?? []))
    const dropped = cycle[cycle.length - 1]
    arcs = arcs.filter((arc) => arc !== dropped)
  }
}

const hardArcs = (problem: Problem): Arc[] => {
  const index = new Map(problem.activities.map((activity, i) => [activity.id, i]))
  const pace = Math.min(1, ...problem.cooks.map((cook) => cook.pace))
  const shortest = problem.activities.map(({ fact, modes }) =>
    fact?.kind === 'done'
      ? fact.end - fact.start
      : Math.min(...modes.map((mode) => (mode.care === 'hands-on' ? roundUp(mode.likely * pace) : mode.likely))),
  )
  const slowest = Math.max(1, ...problem.cooks.map((cook) => cook.pace))
  const longestLen = problem.activities.map(({ fact, modes }) =>
    fact
      ? Number.POSITIVE_INFINITY
      : Math.max(
          ...modes.map((mode) => (mode.care === 'hands-on' ? roundUp(mode.likely * slowest) : (mode.upTo ?? mode.likely))),
        ),
  )
  const arcs: Arc[] = []
  for (const lag of problem.lags) {
    const from = index.get(lag.from)
    const to = index.get(lag.to)
    if (from === undefined || to === undefined || problem.activities[to]?.fact) continue
    const running = problem.activities[from]?.fact?.kind === 'running'
    const least = lag.edge === 'start' || running ? 0 : (shortest[from] ?? 0)
    arcs.push({ from, to, weight: least + lag.least })
    const most = lag.edge === 'start' ? 0 : (longestLen[from] ?? 0)
    if (lag.bound === 'safety' && lag.most !== undefined && Number.isFinite(most))
      arcs.push({ from: to, to: from, weight: -(most + lag.most) })
  }
  return arcs
}

/** The arcs of one positive cycle (Bellman 1958, Ford 1956, for longest paths), or none. */
const positiveCycle = (n: number, arcs: readonly Arc[]): Arc[] => {
  const reach = new Float64Array(n)
  const via: (Arc | undefined)[] = Array.from({ length: n })
  let last: Arc | undefined
  for (let round = 0; round <= n; round++) {
    last = undefined
    for (const arc of arcs)
      if ((reach[arc.from] as number) + arc.weight > (reach[arc.to] as number)) {
        reach[arc.to] = (reach[arc.from] as number) + arc.weight
        via[arc.to] = arc
        last = arc
      }
    if (!last) return []
  }
  let node = last?.to ?? 0
  for (let i = 0; i < n; i++) node = via[node]?.from ?? node
  const cycle: Arc[] = []
  for (let at = node; cycle.length <= n; ) {
    const arc = via[at]
    if (!arc) break
    cycle.unshift(arc)
    at = arc.from
    if (at === node) break
  }
  return cycle
}
