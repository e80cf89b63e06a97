import type { Project } from './project.ts'

/** A project whose lags have no circle, read from its first activity on, or (`mirrored`) from its last one back. */
export interface Direction {
  readonly count: number
  readonly lengths: Int32Array
  readonly from: Int32Array
  /** Every activity after those that it waits for. */
  readonly order: Int32Array
  /** Those that i waits for are before[at[i]..at[i + 1]), with their lags from start to start. */
  readonly at: Int32Array
  readonly before: Int32Array
  readonly lag: Int32Array
  /** Ticks from the start of i to the end of all, at least. */
  readonly tail: Int32Array
  /** No list takes longer. */
  readonly longest: number
}

/** Nothing when the lags have a circle (as maximum lags make). */
export const direction = (project: Project, mirrored: boolean): Direction | undefined => {
  const { lengths } = project
  const count = lengths.length
  const lags = project.lags.map(({ from, to, least }) =>
    mirrored ? { from: to, to: from, least: least + (lengths[to] as number) - (lengths[from] as number) } : { from, to, least },
  )
  const at = new Int32Array(count + 1)
  for (const { to } of lags) at[to + 1] = (at[to + 1] as number) + 1
  for (let i = 0; i < count; i++) at[i + 1] = (at[i + 1] as number) + (at[i] as number)
  const free = at.slice(0, count)
  const before = new Int32Array(lags.length)
  const lag = new Int32Array(lags.length)
  for (const { from, to, least } of lags) {
    const place = free[to] as number
    free[to] = place + 1
    before[place] = from
    lag[place] = least
  }
  const order = inOrder(count, at, before)
  if (!order) return undefined
  const tail = lengths.slice()
  for (const i of order.toReversed())
    for (let k = at[i] as number; k < (at[i + 1] as number); k++) {
      const p = before[k] as number
      tail[p] = Math.max(tail[p] as number, (lag[k] as number) + (tail[i] as number))
    }
  const from = mirrored ? new Int32Array(count) : project.from
  const longest = lags.reduce((sum, { least }) => sum + Math.max(least, 0), 0) + sum(lengths) + Math.max(0, ...from) + 1
  return { count, lengths, from, order, at, before, lag, tail, longest }
}

const sum = (values: Int32Array): number => values.reduce((total, value) => total + value, 0)

const inOrder = (count: number, at: Int32Array, before: Int32Array): Int32Array | undefined => {
  const order = new Int32Array(count)
  const done = new Uint8Array(count)
  let placed = 0
  for (let grew = true; grew; ) {
    grew = false
    for (let i = 0; i < count; i++) {
      if (done[i]) continue
      let ready = true
      for (let k = at[i] as number; k < (at[i + 1] as number); k++) if (!done[before[k] as number]) ready = false
      if (!ready) continue
      done[i] = 1
      order[placed++] = i
      grew = true
    }
  }
  return placed === count ? order : undefined
}
