import { type FoodNature, foodNature } from '#lib/domain/food-nature.ts'
import type { Ingredient } from '#lib/domain/ingredient.ts'
import { amountText, type Exact, exact } from './exact.ts'

/** How many eat how large a portion of a dish; a portion of 1 is one of those that the dish's `yields` counts. */
export interface Eaters {
  readonly people: number
  readonly portion: number
}

const decimal = (value: number): Exact => {
  if (!(value > 0) || !Number.isFinite(value)) throw new RangeError(`not an amount of portions: ${value}`)
  return exact(value.toFixed(6))
}

/** New yield ÷ old yield, portions times their size. Throws when either is not above zero. */
export const scaleFactor = (yields: number, eaters: readonly Eaters[]): Exact =>
  eaters
    .filter((each) => each.people > 0)
    .map((each) => decimal(each.people).mul(decimal(each.portion)))
    .reduce((total, each) => total.add(each), exact('0'))
    .div(decimal(yields))

/** What a person should know about a scaled amount. */
export type ScaleNote =
  /**
   * A whole thing was rounded from `wanted` to `given`. `share` is given ÷ wanted: make the rest of the dish by that much instead
   * and its balance is kept.
   */
  | { readonly kind: 'rounded'; readonly wanted: string; readonly given: string; readonly share: string }
  /** Left as written; plain proportion would give `linear`. Taste, or ask a recipe of that size. `nature` null: the dish says so. */
  | { readonly kind: 'by-taste'; readonly nature: FoodNature | null; readonly linear: string }
  /** Scaled as the dish says, but this kind of thing seldom grows in proportion. */
  | { readonly kind: 'look-twice'; readonly nature: FoodNature }
  /** Not scaled, because the dish says so. */
  | { readonly kind: 'kept' }
  /** The exact amount does not fit the form in which an evening keeps it. */
  | { readonly kind: 'approximate'; readonly exactly: string }

export interface Scaled {
  readonly amount: Ingredient['amount']
  readonly notes: readonly ScaleNote[]
}

const UNEVEN: ReadonlySet<FoodNature | null> = new Set(['salt', 'spice', 'leavening', 'thickener'])

/** The nearest whole number, halves up, never none of something. */
const whole = (value: Exact): Exact => {
  const rounded = value.add(exact('1/2')).floor()
  return rounded.compare(1) < 0 && value.compare(0) > 0 ? exact('1') : rounded
}

/**
 * An ingredient's amount for `factor` times the dish, by what its `scales` says: yes = in proportion; whole = to whole things, the
 * rounding said; by-taste and no = as written. Nothing of all this is silent: see the notes. Throws when the factor is not above zero.
 */
export const scaleAmount = (ingredient: Pick<Ingredient, 'food' | 'amount' | 'scales'>, factor: Exact): Scaled => {
  if (factor.compare(0) <= 0) throw new RangeError('a factor is above zero')
  const { amount, scales } = ingredient
  const nature = foodNature(ingredient.food)
  if (amount === null || factor.compare(1) === 0) return { amount, notes: [] }
  const [n, upTo] = [exact(amount.n).mul(factor), amount.upTo === undefined ? null : exact(amount.upTo).mul(factor)]
  if (scales === 'no') return { amount, notes: [{ kind: 'kept' }] }
  if (scales === 'by-taste')
    return { amount, notes: [{ kind: 'by-taste', nature: UNEVEN.has(nature) ? nature : null, linear: amountText(n).n }] }
  const round = (value: Exact) => (scales === 'whole' ? whole(value) : value)
  const [given, most] = [round(n), upTo === null ? null : round(upTo)]
  const [text, mostText] = [amountText(given), most === null ? null : amountText(most)]
  const notes: ScaleNote[] = []
  if (given.compare(n) !== 0)
    notes.push({ kind: 'rounded', wanted: n.toFraction(), given: given.toFraction(), share: given.div(n).toFraction() })
  if (nature !== null && UNEVEN.has(nature)) notes.push({ kind: 'look-twice', nature })
  if (!text.kept) notes.push({ kind: 'approximate', exactly: given.toFraction() })
  return { amount: { n: text.n, ...(mostText ? { upTo: mostText.n } : {}), unit: amount.unit }, notes }
}

/** Baker's percentages: each weight as a percentage of the flour's. Throws without flour. */
export const bakersPercent = (flour: Exact, weights: readonly Exact[]): readonly Exact[] => {
  if (flour.compare(0) <= 0) throw new RangeError('no flour')
  return weights.map((weight) => weight.mul(100).div(flour))
}
