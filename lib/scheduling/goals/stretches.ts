import type { Placed } from '#lib/scheduling/placed.ts'
import type { CookId, Tick } from '#lib/scheduling/problem.ts'

export interface Stretch {
  readonly from: Tick
  readonly to: Tick
}

/** The stretches in which a cook is hands on, or (with `eye`) has an eye on something too; touches always. */
export const busy = (
  placed: readonly Placed[],
  cook: CookId,
  options: { readonly eye: boolean; readonly atTable: boolean },
): Stretch[] =>
  placed.flatMap(({ activity, mode, placement }) => {
    if (activity.at === 'table' && !options.atTable) return []
    const touches = placement.touches
      .filter((touch) => touch.cook === cook)
      .map(({ at, touch }) => ({ from: at, to: at + (mode.touches[touch]?.takes ?? 0) }))
    const attends = placement.cooks.includes(cook) && (mode.care === 'hands-on' || (mode.care === 'eye' && options.eye))
    return attends ? [{ from: placement.start, to: placement.end }, ...touches] : touches
  })

/** The same ticks, in order and without overlaps, cut to the window. */
export const union = (stretches: readonly Stretch[], window: Stretch): Stretch[] => {
  const cut = stretches
    .map(({ from, to }) => ({ from: Math.max(from, window.from), to: Math.min(to, window.to) }))
    .filter(({ from, to }) => from < to)
    .sort((a, b) => a.from - b.from)
  const joined: { from: Tick; to: Tick }[] = []
  for (const { from, to } of cut) {
    const last = joined[joined.length - 1]
    if (last && from <= last.to) last.to = Math.max(last.to, to)
    else joined.push({ from, to })
  }
  return joined
}

/** Ticks that lie in both. Each list is in order and without overlaps. */
export const meet = (some: readonly Stretch[], others: readonly Stretch[]): Stretch[] =>
  some.flatMap((one) =>
    others.flatMap((other) => {
      const from = Math.max(one.from, other.from)
      const to = Math.min(one.to, other.to)
      return from < to ? [{ from, to }] : []
    }),
  )

export const length = (stretches: readonly Stretch[]): number => stretches.reduce((sum, { from, to }) => sum + to - from, 0)
