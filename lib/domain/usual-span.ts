import type { Span } from './atoms.ts'
import { durationOf } from './duration.ts'

const LEAST = 0.88
const MOST = 1.22

/** Half minutes below five, whole ones below thirty, then fives. */
const grid = (seconds: number): number => (seconds < 300 ? 30 : seconds < 1800 ? 60 : 300)

const onGrid = (seconds: number, usual: number, round: (value: number) => number): number => {
  const step = grid(usual)
  return round(seconds / step) * step
}

/**
 * Least and most suggested from the usual length in seconds: 45 min can be 40 to 55. Cooks' times spread more upwards than down;
 * common practice, no published source. To be shown as a suggestion.
 */
export const spanFromUsual = (seconds: number): Span => ({
  least: durationOf(Math.min(seconds, Math.max(0, onGrid(seconds * LEAST, seconds, Math.round)))),
  likely: durationOf(seconds),
  most: durationOf(Math.max(seconds, onGrid(seconds * MOST, seconds, Math.round))),
})

/** A span from the bounds that a text gives, in seconds: both, one, or neither; the usual is their middle, up to half a minute. */
export const spanFromBounds = (least: number | null, most: number | null): Span | null => {
  if (least === null && most === null) return null
  if (least === null) return spanWithin(0, most ?? 0)
  if (most === null) return { ...spanFromUsual(least), least: durationOf(least) }
  if (least === most) return spanFromUsual(least)
  return {
    least: durationOf(least),
    likely: durationOf(Math.min(most, Math.ceil((least + most) / 60) * 30)),
    most: durationOf(most),
  }
}

/** "Up to 20 minutes": the most is given, the usual a little below it. */
const spanWithin = (least: number, most: number): Span => {
  const likely = Math.min(most, Math.max(least, onGrid(most / MOST, most, Math.round)))
  return {
    least: durationOf(Math.min(likely, onGrid(likely * LEAST, likely, Math.round))),
    likely: durationOf(likely),
    most: durationOf(Math.max(likely, most)),
  }
}
