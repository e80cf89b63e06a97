import type { CookColumn } from './columns.ts'
import type { Doing } from './doings.ts'
import type { Frame } from './frame.ts'
import { MINUTE } from './frame.ts'
import type { Label } from './labels.ts'
import { type Box, inset, outline, rounded } from './outline.ts'

export interface Stretch {
  readonly from: number
  readonly to: number
}

const SHORTEST_SIT = 3 * MINUTE

/** When a cook is up within a window: what they do, gaps too short to sit down in included. Sorted, apart. */
export const upTimes = (doings: readonly Doing[], window: Stretch): readonly Stretch[] => {
  const sorted = doings
    .filter((doing) => doing.to > window.from && doing.from < window.to)
    .map((doing) => ({ from: Math.max(doing.from, window.from), to: Math.min(doing.to, window.to) }))
    .sort((a, b) => a.from - b.from)
  const merged: Stretch[] = []
  for (const next of sorted) {
    const before = merged[merged.length - 1]
    if (before && next.from - before.to < SHORTEST_SIT)
      merged[merged.length - 1] = { from: before.from, to: Math.max(before.to, next.to) }
    else merged.push(next)
  }
  return merged
}

/** When a cook sits: the rest of the window. */
export const sitTimes = (ups: readonly Stretch[], window: Stretch): readonly Stretch[] => {
  const sits: Stretch[] = []
  let at = window.from
  for (const up of ups) {
    if (up.from - at >= SHORTEST_SIT) sits.push({ from: at, to: up.from })
    at = Math.max(at, up.to)
  }
  if (window.to - at > 0) sits.push({ from: at, to: window.to })
  return sits
}

export interface Sit extends Stretch {
  readonly column: string
  readonly box: Box
  /** Baseline of the words about it; null where there is no room for them. */
  readonly said: number | null
}

const ABOVE = 3
const THINNEST = 12

/** Where the cloth lies in a cook's column: their sits, less what the lines written in the notches need. */
export const sitBoxes = (
  column: CookColumn,
  sits: readonly Stretch[],
  labels: readonly Label[],
  y: (ms: number) => number,
  courses: readonly number[],
  bottom: number,
  last: number,
): readonly Sit[] =>
  sits.flatMap((sit) => {
    const own = labels.filter((label) => label.column === column.id)
    const isLast = sit.to === last
    const above = own.filter((label) => label.doing.from < sit.from).map((label) => label.box.y + label.box.height + 2)
    const top = Math.max(y(sit.from), ...above)
    const end = isLast ? bottom : y(sit.to) - ABOVE
    return end - top >= THINNEST
      ? [
          {
            ...sit,
            column: column.id,
            box: { x: column.x, y: top, width: column.width, height: end - top },
            said: isLast ? null : saidAt(top, end, courses.map(y)),
          },
        ]
      : []
  })

const WORDS = 17
const PLATES = 13

/** The middle of the longest piece of a sit that no course line runs through. */
const saidAt = (top: number, bottom: number, lines: readonly number[]): number | null => {
  const inside = lines.filter((line) => line > top - PLATES && line < bottom + PLATES).sort((a, b) => a - b)
  const starts = [top + 5, ...inside.map((line) => line + PLATES)]
  const ends = [...inside.map((line) => line - PLATES), bottom - 5]
  let best: { from: number; to: number } | null = null
  for (const [index, from] of starts.entries()) {
    const to = ends[index] ?? from
    if (to - from >= WORDS && (best === null || to - from > best.to - best.from)) best = { from, to }
  }
  return best === null ? null : (best.from + best.to) / 2 + 4
}

export interface Cloth {
  /** SVG paths: the cloth and its hem. */
  readonly edge: string
  readonly hem: string
}

const RADIUS = 10
const HEM = 3.2

/** One outline of the table and of everybody who sits at it. */
export const clothOf = (boxes: readonly Box[]): Cloth => {
  const loops = outline(
    boxes.map(({ x, y, width, height }) => ({
      x: snap(x),
      y: snap(y),
      width: snap(x + width) - snap(x),
      height: snap(y + height) - snap(y),
    })),
  )
  return {
    edge: loops.map((loop) => rounded(loop, RADIUS)).join(''),
    hem: loops.map((loop) => rounded(inset(loop, HEM), RADIUS - HEM + 1)).join(''),
  }
}

const snap = (value: number): number => Math.round(value * 2) / 2

/** The window in which a cook is at the table or missed there. */
export const tableWindow = (frame: Frame): Stretch => ({ from: frame.seated, to: frame.to })
