import type { Project } from '#lib/scheduling/project/project.ts'

/** Whether these starts keep every window, lag and store. */
export const keepsProject = (project: Project, starts: ArrayLike<number>): boolean =>
  brokenAt(project, Array.from(starts)) === undefined

/** The first thing that is broken, in words; undefined starts are not looked at. */
export const brokenAt = (
  { lengths, from, to, lags, stores }: Project,
  starts: readonly (number | undefined)[],
): string | undefined => {
  for (const [i, start] of starts.entries())
    if (start !== undefined && (start < Number(from[i]) || start + Number(lengths[i]) > Number(to[i]))) return `window of ${i}`
  for (const lag of lags) {
    const first = starts[lag.from]
    const second = starts[lag.to]
    if (first !== undefined && second !== undefined && second < first + lag.least) return `lag ${lag.from} to ${lag.to}`
  }
  // What is used is most when something has just started.
  for (const [at, { capacity, needs }] of stores.entries())
    for (const tick of starts) {
      if (tick === undefined) continue
      let used = 0
      for (const [i, start] of starts.entries())
        if (start !== undefined && start <= tick && tick < start + Number(lengths[i])) used += Number(needs[i])
      if (used > capacity) return `store ${at} at ${tick}`
    }
  return undefined
}

/** The length of the shortest schedule, by trying every start of every activity; undefined when there is none. */
export const shortestByForce = (project: Project): number | undefined => {
  const count = project.lengths.length
  let best: number | undefined
  const place = (starts: readonly number[], span: number): void => {
    if (best !== undefined && span >= best) return
    if (starts.length === count) {
      best = span
      return
    }
    const length = Number(project.lengths[starts.length])
    for (let start = 0; start + length <= Number(project.to[starts.length]); start++) {
      const more = [...starts, start]
      if (brokenAt(project, more) === undefined) place(more, Math.max(span, start + length))
    }
  }
  place([], 0)
  return best
}
