import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import type { Piece } from './work.ts'

/** Milliseconds since 1970, from the first to the last course at the table; the welcome is before it. */
export interface AtTable {
  readonly from: number
  readonly to: number
}

/** When the guests sit; nothing when fewer than two courses come. */
export const atTable = (evening: Evening, order: RunningOrder): AtTable => {
  const welcome = new Set(evening.courses.filter((course) => course.welcome).map(({ id }) => id))
  const moments = order.courses.filter(({ course }) => !welcome.has(course)).map(({ toTable }) => msOfInstant(toTable))
  return moments.length < 2 ? { from: 0, to: 0 } : { from: Math.min(...moments), to: Math.max(...moments) }
}

/** Minutes in which somebody with these pieces of work is up from the table: together, what overlaps counts once. */
export const missedMinutes = (pieces: readonly Piece[], { from, to }: AtTable): number => {
  const up = pieces
    .filter((piece) => !piece.atTable && piece.to > from && piece.from < to)
    .map((piece) => ({ from: Math.max(from, piece.from), to: Math.min(to, piece.to) }))
    .sort((a, b) => a.from - b.from)
  let sum = 0
  let reached = from
  for (const one of up) {
    sum += Math.max(0, one.to - Math.max(reached, one.from))
    reached = Math.max(reached, one.to)
  }
  return sum / 60_000
}
