import { type Act, type LagModel, NEVER } from './model.ts'
import type { ActivityId } from './problem.ts'

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
export const longestPaths = (acts: readonly Act[]): Float64Array[] => {
  const longest = acts.map((_, i) => new Float64Array(acts.length).fill(Number.NEGATIVE_INFINITY).fill(0, i, i + 1))
  for (const { from, to, weight } of possibleArcs(acts).arcs) {
    const row = longest[from]
    if (row && (row[to] as number) < weight) row[to] = weight
  }
  for (const [k, via] of longest.entries())
    for (const row of longest) {
      const first = row[k] as number
      if (first === Number.NEGATIVE_INFINITY) continue
      for (let j = 0; j < acts.length; j++)
        if (first + (via[j] as number) > (row[j] as number)) row[j] = first + (via[j] as number)
    }
  return longest
}

/** Activities whose hard lags ask for each other in a circle that no times can keep, circle by circle. */
export const impossibleCycles = (acts: readonly Act[]): ActivityId[][] =>
  possibleArcs(acts).cycles.map((cycle) => cycle.flatMap((arc) => acts[arc.from]?.activity.id ?? []))

/** The hard lags as arcs between starts, less the last of each positive cycle. */
const possibleArcs = (acts: readonly Act[]): { arcs: readonly Arc[]; cycles: readonly (readonly Arc[])[] } => {
  let arcs: readonly Arc[] = acts.flatMap((act) => act.preds.flatMap(arcsOf))
  const cycles: (readonly Arc[])[] = []
  for (;;) {
    const cycle = positiveCycle(acts.length, arcs)
    const dropped = cycle[cycle.length - 1]
    if (!dropped) return { arcs, cycles }
    cycles.push(cycle)
    arcs = arcs.filter((arc) => arc !== dropped)
  }
}

/** What cannot be placed at all asks for nothing. */
const arcsOf = (lag: LagModel): Arc[] => {
  const { from, to } = lag
  if ((!from.fact && from.modes.length === 0) || to.modes.length === 0) return []
  const arcs = [{ from: from.index, to: to.index, weight: lag.least + (lag.fromEnd ? from.minLen : 0) }]
  if (!lag.safety || lag.most >= NEVER) return arcs
  const longest = from.fact
    ? from.minLen
    : Math.max(...from.modes.flatMap(({ teams, upTo }) => teams.map(({ len }) => Math.max(len, upTo))))
  return [...arcs, { from: to.index, to: from.index, weight: -(lag.most + (lag.fromEnd ? longest : 0)) }]
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
