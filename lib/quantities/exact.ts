import Fraction from 'fraction.js'

/** An exact rational number. */
export type Exact = Fraction

/** Reads a whole number, a decimal or a fraction as it stands: "3", "0.25", "9/4". Throws on anything else: parse first. */
export const exact = (text: string): Exact => {
  if (!/^-?\d{1,15}(\.\d{1,15}|\/\d{1,15})?$/.test(text)) throw new RangeError(`not an exact number: ${text}`)
  return new Fraction(text)
}

const MOST = 9_999_999n

/**
 * The form in which an evening keeps an amount ("9/4"). What that cannot hold is rounded to a thousandth, or to a whole number
 * above ten thousand, and `kept` is false. Throws below zero and above 9,999,999.
 */
export const amountText = (value: Exact): { readonly n: string; readonly kept: boolean } => {
  if (value.s < 0n || value.compare(Number(MOST)) > 0) throw new RangeError(`not an amount: ${value.toFraction()}`)
  if (value.d <= 999_999n && value.n <= MOST) return { n: value.toFraction(), kept: true }
  const places = value.compare(9999) > 0 ? 1 : 1000
  return { n: new Fraction(Math.round(value.valueOf() * places), places).toFraction(), kept: false }
}

/** "2 1/3", "1/2", "4". */
export const mixedText = (value: Exact): string => value.toFraction(true)

const PARTS = [1, 2, 3, 4, 8]

/**
 * The nearest amount that a spoon or a cup can measure: a whole, half, third, quarter or eighth, never nothing for something.
 * `by` is how far that is from the exact amount, as a part of it.
 */
export const handy = (value: Exact): { readonly value: Exact; readonly by: number } => {
  if (value.compare(0) === 0) return { value, by: 0 }
  const near = PARTS.map((part) => value.mul(part).round().div(part)).filter((each) => each.compare(0) > 0)
  const best = near.reduce(
    (least, each) => (each.sub(value).abs().compare(least.sub(value).abs()) < 0 ? each : least),
    near[0] ?? new Fraction(1, 8),
  )
  return { value: best, by: best.sub(value).div(value).valueOf() }
}
