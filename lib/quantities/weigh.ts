import type { Source } from '#lib/domain/source.ts'
import { type Exact, exact } from './exact.ts'
import { foodKeys } from './food-name.ts'
import { sr28 } from './source.ts'
import { WEIGHTS, type WeightMeasure, type WeightRow } from './sr28-weights.ts'
import { sizeOf, UNITS, type Unit } from './units.ts'

/** A weight that a table gives, with the food and measure it was given for. */
export interface Weighed {
  readonly value: Exact
  readonly food: string
  readonly how: string | null
  readonly source: Source
}

const rowOf = (food: string): WeightRow | null => {
  for (const key of foodKeys(food)) {
    const found = WEIGHTS.find((row) => row.names.includes(key))
    if (found) return found
  }
  return null
}

const usUnit = (word: string): Unit => {
  const found = UNITS.find((each) => each.word === word && each.owner === 'us')
  if (!found) throw new RangeError(`no US measure: ${word}`)
  return found
}

/**
 * The measures of a row by which a volume is weighed: those of the unit's own word, where it is a US one and the row has it, else the
 * largest the row has (a cup errs least). More than one when the food can lie packed or loose.
 */
const measuresFor = (row: WeightRow, unit: Unit): readonly WeightMeasure[] => {
  const volumes = row.measures.filter((each) => each.of !== 'piece')
  const own = unit.owner === 'us' ? volumes.filter((each) => each.of === unit.word) : []
  if (own.length > 0) return own
  const largest = ['cup', 'fl oz', 'tbsp', 'tsp'].find((word) => volumes.some((each) => each.of === word))
  return volumes.filter((each) => each.of === largest)
}

const weighed = (row: WeightRow, measure: WeightMeasure, value: Exact): Weighed => ({
  value,
  food: row.food,
  how: measure.how ?? null,
  source: sr28(row.ndb),
})

const gramsPerMl = (measure: WeightMeasure): Exact => exact(measure.grams).div(sizeOf(exact(measure.n), usUnit(measure.of)))

/** Grams of a volume of a food; empty where no sourced density is known, several where it depends on how the food lies. */
export const weigh = (food: string, amount: Exact, unit: Unit): readonly Weighed[] => {
  const row = rowOf(food)
  if (!row || unit.kind !== 'volume') return []
  return measuresFor(row, unit).map((measure) => weighed(row, measure, sizeOf(amount, unit).mul(gramsPerMl(measure))))
}

/** The volume, in `unit`, of a weight in grams of a food; as `weigh`. */
export const fill = (food: string, grams: Exact, unit: Unit): readonly Weighed[] => {
  const row = rowOf(food)
  if (!row || unit.kind !== 'volume') return []
  return measuresFor(row, unit).map((measure) => weighed(row, measure, grams.div(gramsPerMl(measure)).div(exact(unit.size))))
}

/** Grams of whole pieces (eggs, onions, cloves of garlic), one for each size that the table knows. */
export const weighPieces = (food: string, count: Exact): readonly Weighed[] => {
  const row = rowOf(food)
  if (!row) return []
  return row.measures
    .filter((each) => each.of === 'piece')
    .map((measure) => weighed(row, measure, count.mul(exact(measure.grams)).div(exact(measure.n))))
}
