import type { Source } from './source.ts'

export const NEWTON: Source = {
  publisher: 'OpenStax',
  title: 'College Algebra 2e, Exponential and Logarithmic Models',
  year: 2021,
  standing: 'read',
}

/** Newton's law: the rate at which something that was `from` is `at` after `time`, in a place of `around`; per unit of `time`. */
export const coolingRate = (from: number, at: number, time: number, around: number): number =>
  Math.log((from - around) / (at - around)) / time

/** How long until it is `to`; null when it never will be, because the place is not beyond that. Works for warming too. */
export const coolingTime = (from: number, to: number, around: number, rate: number): number | null => {
  const share = (from - around) / (to - around)
  return share >= 1 && Number.isFinite(share) && rate > 0 ? Math.log(share) / rate : null
}

/** Rates an hour in a refrigerator, slowest and fastest; no published source: to be calibrated in one's own. */
export const CHILL_RATES: Readonly<Record<ChillShape, readonly [slow: number, fast: number]>> = {
  'shallow box': [0.4, 0.7],
  pot: [0.1, 0.15],
}
/** A covered box of a litre, 5 cm deep; a pot of four litres. */
export type ChillShape = 'shallow box' | 'pot'
