import { exact } from '#lib/quantities/exact.ts'
import { readAmount } from '#lib/recipes/make-ingredient.ts'

/** A number of portions as people write it: "8", "2½", "eight people"; null when it is none between 0 and 1000. */
export const readPortions = (text: string): number | null => {
  const amount = readAmount(text.trim().toLowerCase(), '.')
  const value = amount && amount.upTo === undefined ? exact(amount.n).valueOf() : 0
  return value > 0 && value <= 1000 ? Math.round(value * 1000) / 1000 : null
}
