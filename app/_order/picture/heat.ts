import type { RunningOrder } from '#lib/domain/running-order.ts'
import type { Column } from './columns.ts'
import type { Scale } from './scale.ts'

export interface Ribbon {
  /** SVG paths: the heat, and its edge. */
  readonly fill: string
  readonly edge: string
  readonly figures: readonly { readonly y: number; readonly c: number }[]
}

const COLD = 20
const HOT = 250
const WIDEST = 64
const FIGURE_PITCH = 17

/** An oven as a ribbon as wide as it is hot, with its set temperatures where they hold for a while. */
export const ribbonOf = (line: RunningOrder['ovens'][number]['line'], column: Column, scale: Scale): Ribbon => {
  const base = column.x + 8
  const x = (c: number) => base + (Math.max(0, Math.min(HOT, c) - COLD) / (HOT - COLD)) * WIDEST
  const points = clip(
    line.map(({ at, c }) => ({ at: Date.parse(at), c })),
    scale.from,
    scale.to,
  )
  if (points.length < 2) return { fill: '', edge: '', figures: [] }
  const drawn = points.map(({ at, c }) => `${round(x(c))} ${round(scale.y(at))}`)
  const [first, last] = [points[0], points[points.length - 1]]
  const edge = `M${drawn.join('L')}`
  const figures: { y: number; c: number }[] = []
  for (const [index, point] of points.entries()) {
    const next = points[index + 1]
    if (!next || next.c !== point.c || point.c <= 30 || next.at - point.at < 5 * 60_000) continue
    const y = (scale.y(point.at) + scale.y(next.at)) / 2
    const before = figures[figures.length - 1]
    if (before && before.c === point.c && y - before.y < 60) continue
    figures.push({ y: Math.max(y, (before?.y ?? Number.NEGATIVE_INFINITY) + FIGURE_PITCH), c: Math.round(point.c) })
  }
  return {
    fill: `${edge}L${base} ${round(scale.y(last?.at ?? scale.to))}L${base} ${round(scale.y(first?.at ?? scale.from))}Z`,
    edge,
    figures,
  }
}

const round = (value: number): number => Math.round(value * 10) / 10

const clip = (points: readonly { at: number; c: number }[], from: number, to: number): { at: number; c: number }[] => {
  const at = (ms: number): number | null => {
    const index = points.findIndex((point) => point.at >= ms)
    const [before, after] = [points[index - 1], points[index]]
    if (!after) return null
    if (!before) return after.at === ms ? after.c : null
    return before.c + ((ms - before.at) / Math.max(1, after.at - before.at)) * (after.c - before.c)
  }
  const [start, end] = [at(from), at(to)]
  return [
    ...(start === null ? [] : [{ at: from, c: start }]),
    ...points.filter((point) => point.at > from && point.at < to),
    ...(end === null ? [] : [{ at: to, c: end }]),
  ]
}
