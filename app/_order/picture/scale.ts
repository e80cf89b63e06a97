/** From `at` on, so many pixels a minute, unless a demand asks for more. */
export interface Pace {
  readonly at: number
  readonly perMinute: number
}

/** What happens at `to` must be at least `px` below what happens at `from`; both in milliseconds, from < to. */
export interface Demand {
  readonly from: number
  readonly to: number
  readonly px: number
}

export interface Scale {
  readonly from: number
  readonly to: number
  readonly height: number
  /** Pixels from the top of a moment in milliseconds; clamped to the ends, never decreasing. */
  readonly y: (ms: number) => number
  /** The moment that lies so many pixels from the top: where `y` comes from. */
  readonly at: (px: number) => number
  /** Where the scale changes by its pace: a visible fold. */
  readonly folds: readonly number[]
}

const MINUTE = 60_000

/**
 * Elastic time: one mapping for all columns. The height of each moment is the longest path to it over the paces and the
 * demands, so every demand holds and the mapping never runs backwards. Between stops it is linear.
 */
export const elastic = (from: number, to: number, paces: readonly Pace[], demands: readonly Demand[]): Scale => {
  const inside = (ms: number) => ms > from && ms < to
  const wanted = demands.filter((demand) => demand.from >= from && demand.to <= to && demand.to > demand.from)
  const stops = [
    ...new Set([
      from,
      to,
      ...paces.map((pace) => pace.at).filter(inside),
      ...wanted.flatMap((demand) => [demand.from, demand.to]),
    ]),
  ].sort((a, b) => a - b)
  const endingAt = new Map<number, Demand[]>()
  for (const demand of wanted) endingAt.set(demand.to, [...(endingAt.get(demand.to) ?? []), demand])
  const sorted = [...paces].sort((a, b) => a.at - b.at)
  const paceAt = (ms: number): number => sorted.findLast((pace) => pace.at <= ms)?.perMinute ?? sorted[0]?.perMinute ?? 1

  const height = new Map<number, number>([[from, 0]])
  const heightOf = (ms: number): number => height.get(ms) ?? 0
  let before = from
  for (const stop of stops.slice(1)) {
    let y = heightOf(before) + ((stop - before) / MINUTE) * paceAt(before)
    for (const demand of endingAt.get(stop) ?? []) y = Math.max(y, heightOf(demand.from) + demand.px)
    height.set(stop, y)
    before = stop
  }
  const ys = stops.map(heightOf)

  const y = (ms: number): number => {
    if (ms <= from) return 0
    if (ms >= to) return heightOf(to)
    let low = 0
    let high = stops.length - 1
    while (high - low > 1) {
      const middle = (low + high) >> 1
      if ((stops[middle] ?? to) <= ms) low = middle
      else high = middle
    }
    const [t0, t1, y0, y1] = [stops[low] ?? from, stops[high] ?? to, ys[low] ?? 0, ys[high] ?? 0]
    return t1 === t0 ? y0 : y0 + ((ms - t0) / (t1 - t0)) * (y1 - y0)
  }
  const at = (px: number): number => {
    const index = ys.findIndex((each) => each > px)
    if (index < 0) return to
    if (index === 0) return from
    const [t0, t1, y0, y1] = [stops[index - 1] ?? from, stops[index] ?? to, ys[index - 1] ?? 0, ys[index] ?? 0]
    return t0 + ((px - y0) / (y1 - y0)) * (t1 - t0)
  }
  return {
    from,
    to,
    height: heightOf(to),
    y,
    at,
    folds: sorted
      .filter((pace, index) => index > 0 && inside(pace.at) && pace.perMinute !== sorted[index - 1]?.perMinute)
      .map((pace) => pace.at),
  }
}
