import type { Tick } from '#lib/scheduling/problem.ts'

/** A stretch of time: `from` is in it, `to` is not. Empty when from ≥ to. */
export interface Span {
  readonly from: Tick
  readonly to: Tick
}

/** Whether two spans share a moment. An empty span shares none. */
export const overlaps = (a: Span, b: Span): boolean => Math.max(a.from, b.from) < Math.min(a.to, b.to)

export const isWithin = (inner: Span, outer: Span): boolean => outer.from <= inner.from && inner.to <= outer.to

/** The parts of the spans that lie in the window. */
export const cut = (spans: readonly Span[], window: Span): Span[] =>
  spans
    .map((span) => ({ from: Math.max(span.from, window.from), to: Math.min(span.to, window.to) }))
    .filter((span) => span.from < span.to)

/** The same moments as maximal, disjoint spans in order of time. */
export const union = (spans: readonly Span[]): Span[] => {
  const joined: Span[] = []
  for (const span of spans.filter(({ from, to }) => from < to).sort((a, b) => a.from - b.from)) {
    const last = joined.at(-1)
    if (last && span.from <= last.to) joined[joined.length - 1] = { from: last.from, to: Math.max(last.to, span.to) }
    else joined.push(span)
  }
  return joined
}

/** The moments that both have; both must be unions. */
export const common = (a: readonly Span[], b: readonly Span[]): Span[] => a.flatMap((span) => cut(b, span))

export const ticksOf = (spans: readonly Span[]): number => spans.reduce((sum, { from, to }) => sum + to - from, 0)

/** Rounds up, forgiving what binary fractions add: ⌈10 × 1.1⌉ is 11. */
export const roundUp = (ticks: number): number => Math.ceil(ticks - 1e-9)
