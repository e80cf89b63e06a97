import type { Ingredient } from '#lib/domain/ingredient.ts'
import type { Measures } from '#lib/domain/unit-words.ts'
import { type Bought, toBuy } from './buy.ts'
import { type Exact, exact } from './exact.ts'
import { type ScaleNote, scaleAmount } from './scale.ts'
import { readerUnit, type Sensible, sensible } from './sensible.ts'
import { readUnit, sizeOf, type Unit } from './units.ts'
import { fill, type Weighed, weigh, weighPieces } from './weigh.ts'

/** What a cook reads beside an ingredient: its amount for those who eat, and what is to be known of it. */
export interface ForCovers {
  /** As one measures it, in `unit`; null: to taste. `upTo` for a range. */
  readonly amount: { readonly least: Sensible; readonly most: Sensible | null; readonly unit: string } | null
  /** Before it was rounded to what one can measure: "800/3". */
  readonly exactly: { readonly n: string; readonly upTo: string | null; readonly unit: string } | null
  readonly notes: readonly ScaleNote[]
  /** The measures that a bare word may be: the person is to say which. */
  readonly whose: readonly Unit[]
  /** The same in the reader's measures. */
  readonly asRead: Sensible | null
  /** In grams, for foods of a sourced density or size; several where it depends on how it lies or how large it is. */
  readonly weighs: readonly Weighed[]
  /** A weight as a volume in the reader's cups or spoons. */
  readonly fills: readonly { readonly weighed: Weighed; readonly unit: Unit }[]
  /** If the amount is of what is ready to cook. */
  readonly buys: Bought | null
}

const NOTHING: ForCovers = {
  amount: null,
  exactly: null,
  notes: [],
  whose: [],
  asRead: null,
  weighs: [],
  fills: [],
  buys: null,
}

const isPiece = (unit: string): boolean => /^(|pieces?|small|medium|large|cloves?)$/.test(unit.trim().toLowerCase())

const cupsOf = (food: string, grams: Exact, reader: Measures | null) => {
  const cup = reader === null || reader === 'uk' ? null : readUnit('cup', reader)
  if (cup?.kind !== 'unit') return []
  return fill(food, grams, cup.unit).map((weighed) => ({ weighed, unit: cup.unit }))
}

/**
 * An ingredient of a dish, `factor` times (Q6, Q7), rounded to what one can measure (as written once the dish), in the reader's
 * measures, by weight and volume where a source gives a density, and as bought. `reader` null: in the recipe's own measures.
 */
export const forCovers = (
  ingredient: Pick<Ingredient, 'food' | 'amount' | 'scales'>,
  factor: Exact,
  reader: Measures | null,
): ForCovers => {
  const { amount, notes } = scaleAmount(ingredient, factor)
  if (amount === null) return { ...NOTHING, notes }
  const reading = readUnit(amount.unit, null)
  const unit = reading.kind === 'unit' ? reading.unit : null
  const written = amount.n === ingredient.amount?.n && amount.upTo === ingredient.amount?.upTo
  const [n, upTo] = [exact(amount.n), amount.upTo === undefined ? null : exact(amount.upTo)]
  const shown = (value: Exact): Sensible => (written ? { value, unit, by: 0 } : sensible(value, unit))
  const size = unit && sizeOf(n, unit)
  const wanted = unit && size && reader ? readerUnit(size, unit, reader) : null
  const weighs =
    unit?.kind === 'volume'
      ? weigh(ingredient.food, n, unit)
      : reading.kind === 'none' && isPiece(amount.unit)
        ? weighPieces(ingredient.food, n)
        : []
  const [grams] =
    unit?.kind === 'mass' && size ? [size] : unit?.kind === 'volume' && weighs.length === 1 ? [weighs[0]?.value] : []
  return {
    amount: { least: shown(n), most: upTo === null ? null : shown(upTo), unit: amount.unit },
    exactly: { n: amount.n, upTo: amount.upTo ?? null, unit: amount.unit },
    notes,
    whose: reading.kind === 'which' ? reading.units : [],
    asRead: wanted && size ? sensible(size.div(exact(wanted.size)), wanted) : null,
    weighs,
    fills: unit?.kind === 'mass' && size ? cupsOf(ingredient.food, size, reader) : [],
    buys: grams ? toBuy(ingredient.food, grams) : null,
  }
}
