import { fail, ok, type Result } from '#lib/domain/result.ts'
import type { Source } from '#lib/domain/source.ts'
import { type Measures, nameUnit, ownerIn, type UnitOwner, type UnitWord } from '#lib/domain/unit-words.ts'
import { type Exact, exact } from './exact.ts'
import { CLDR } from './source.ts'

/** One unit with its exact size in millilitres or grams. `owner` null: the same everywhere (SI, and the pound since 1959). */
export interface Unit {
  readonly word: UnitWord
  readonly owner: UnitOwner | null
  readonly kind: 'volume' | 'mass'
  readonly size: string
  readonly source: Source
}

const HEALTH: Source = { publisher: 'NSW Health', title: 'Conversion chart', year: null, standing: 'read' }
const SPOONS: Source = { publisher: 'common practice', title: 'metric spoons of 5 and 15 ml', year: null, standing: 'practice' }

const unit = (word: UnitWord, owner: UnitOwner | null, kind: Unit['kind'], size: string, source = CLDR): Unit => ({
  word,
  owner,
  kind,
  size,
  source,
})

/** Every unit known, those of one word side by side. */
export const UNITS: readonly Unit[] = [
  unit('ml', null, 'volume', '1'),
  unit('cl', null, 'volume', '10'),
  unit('dl', null, 'volume', '100'),
  unit('l', null, 'volume', '1000'),
  unit('tsp', 'us', 'volume', '4.92892159375'),
  unit('tsp', 'metric', 'volume', '5', SPOONS),
  unit('tsp', 'au', 'volume', '5', HEALTH),
  unit('tbsp', 'us', 'volume', '14.78676478125'),
  unit('tbsp', 'metric', 'volume', '15', SPOONS),
  unit('tbsp', 'au', 'volume', '20', HEALTH),
  unit('cup', 'us', 'volume', '236.5882365'),
  unit('cup', 'metric', 'volume', '250'),
  unit('cup', 'au', 'volume', '250', HEALTH),
  unit('cup', 'imperial', 'volume', '284.130625'),
  unit('fl oz', 'us', 'volume', '29.5735295625'),
  unit('fl oz', 'imperial', 'volume', '28.4130625'),
  unit('fl oz', 'metric', 'volume', '30'),
  unit('pint', 'us', 'volume', '473.176473'),
  unit('pint', 'imperial', 'volume', '568.26125'),
  unit('quart', 'us', 'volume', '946.352946'),
  unit('quart', 'imperial', 'volume', '1136.5225'),
  unit('gallon', 'us', 'volume', '3785.411784'),
  unit('gallon', 'imperial', 'volume', '4546.09'),
  unit('mg', null, 'mass', '0.001'),
  unit('g', null, 'mass', '1'),
  unit('kg', null, 'mass', '1000'),
  unit('oz', null, 'mass', '28.349523125'),
  unit('lb', null, 'mass', '453.59237'),
  unit('stone', null, 'mass', '6350.29318'),
]

export type UnitReading =
  | { readonly kind: 'unit'; readonly unit: Unit }
  /** A word that is several units; the text must be asked which. */
  | { readonly kind: 'which'; readonly units: readonly Unit[] }
  /** Not a measure of volume or mass: a tin, a clove, nothing. */
  | { readonly kind: 'none' }

/** The unit that a text names. An owner in the text ("US cup") decides, then `measures`; where neither does, nothing is assumed. */
export const readUnit = (text: string, measures: Measures | null): UnitReading => {
  const named = nameUnit(text)
  if (!named) return { kind: 'none' }
  const units = UNITS.filter((each) => each.word === named.word)
  const [only] = units
  if (units.length === 1 && only) return { kind: 'unit', unit: only }
  const owner = named.owner ?? (measures ? ownerIn(measures, named.word) : null)
  const found = units.find((each) => each.owner === owner)
  return found ? { kind: 'unit', unit: found } : { kind: 'which', units }
}

/** In millilitres or grams. */
export const sizeOf = (amount: Exact, of: Unit): Exact => amount.mul(exact(of.size))

/** The same amount in another unit of its kind, exactly. Between volume and mass a density is needed: `weigh`. */
export const convert = (amount: Exact, from: Unit, to: Unit): Result<Exact, 'needs-density'> =>
  from.kind === to.kind ? ok(sizeOf(amount, from).div(exact(to.size))) : fail('needs-density')

/** The sum of amounts of one kind in the first one's unit ("1 lb 2 oz"); of both kinds it is refused. Throws on an empty list. */
export const sum = (amounts: readonly { readonly n: Exact; readonly unit: Unit }[]): Result<Exact, 'needs-density'> => {
  const first = amounts[0]
  if (!first) throw new RangeError('a sum of nothing')
  return amounts.slice(1).reduce<Result<Exact, 'needs-density'>>((total, each) => {
    const more = convert(each.n, each.unit, first.unit)
    if (!total.ok || !more.ok) return fail('needs-density')
    return ok(total.value.add(more.value))
  }, ok(first.n))
}
