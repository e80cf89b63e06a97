import { type Estimate, estimate } from './estimate.ts'
import { PRACTICE, type Source } from './source.ts'

const NEWTON: Source = {
  publisher: 'OpenStax',
  title: 'College Algebra 2e, Exponential and Logarithmic Models',
  year: 2021,
  standing: 'read',
}

/** Newton's law: the rate at which something that was `from` is `at` after `time`, in a place of `around`; per unit of `time`. */
export const coolingRate = (from: number, at: number, time: number, around: number): number =>
  Math.log((from - around) / (at - around)) / time

/** The temperature after `time`: around + (from − around) e^(−rate × time). */
export const cooledTo = (from: number, around: number, rate: number, time: number): number =>
  around + (from - around) * Math.exp(-rate * time)

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

/** Minutes to chill to `toC` in a refrigerator (4 °C unless told); null when it never gets there. Says nothing about safety. */
export const chillMinutes = (shape: ChillShape, fromC: number, toC: number, fridgeC = 4): Estimate | null => {
  const [slow, fast] = CHILL_RATES[shape]
  const usual = (slow + fast) / 2
  const minutes = [fast, usual, slow].map((rate) => coolingTime(fromC, toC, fridgeC, rate / 60))
  const [least, likely, most] = minutes
  if (least == null || likely == null || most == null) return null
  return estimate({ least, likely, most }, { shape, fromC, toC, fridgeC, ratePerHour: usual }, [NEWTON, PRACTICE])
}
