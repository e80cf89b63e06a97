import { type Measures, ownerIn } from '#lib/domain/unit-words.ts'
import { type Exact, exact, handy } from './exact.ts'
import { sizeOf, UNITS, type Unit } from './units.ts'

/** An amount as one weighs or measures it. `by`: how far it is from the exact amount, as a part of that. */
export interface Sensible {
  readonly value: Exact
  readonly unit: Unit | null
  readonly by: number
}

const unitNamed = (word: Unit['word'], owner: Unit['owner']): Unit => {
  const found = UNITS.find((each) => each.word === word && each.owner === owner)
  if (!found) throw new RangeError(`no such unit: ${owner} ${word}`)
  return found
}

// Kitchen scales and jugs show no more; no official source.
const STEPS: readonly (readonly [below: number, step: string])[] = [
  [20, '1/2'],
  [100, '1'],
  [1000, '5'],
  [10_000, '10'],
  [Number.POSITIVE_INFINITY, '100'],
]

const nearest = (value: Exact, step: Exact): Exact => {
  const rounded = value.div(step).round().mul(step)
  return rounded.compare(0) > 0 || value.compare(0) === 0 ? rounded : step
}

const isMetric = (unit: Unit): boolean => unit.owner === null && !/^(oz|lb|stone)$/.test(unit.word)

/**
 * Grams and millilitres to what a scale or a jug shows, in kilograms and litres above a thousand; spoons, cups, ounces and counted
 * things to a whole, half, third, quarter or eighth. Never nothing for something.
 */
export const sensible = (value: Exact, unit: Unit | null): Sensible => {
  if (!unit || !isMetric(unit)) return { ...handy(value), unit }
  const size = sizeOf(value, unit)
  const step = exact(STEPS.find(([below]) => size.valueOf() < below)?.[1] ?? '100')
  // Less than half a gram or millilitre is no matter for a kitchen scale: left as it is.
  const rounded = size.compare(exact('1/2')) < 0 ? size : nearest(size, step)
  const by = size.compare(0) === 0 ? 0 : rounded.sub(size).div(size).valueOf()
  const large = rounded.compare(1000) >= 0
  const shown = unit.kind === 'mass' ? unitNamed(large ? 'kg' : 'g', null) : unitNamed(large ? 'l' : 'ml', null)
  return { value: rounded.div(exact(shown.size)), unit: shown, by }
}

const SPOONS_US: readonly (readonly [word: Unit['word'], from: string])[] = [
  ['cup', '1/4'],
  ['tbsp', '1'],
  ['tsp', '0'],
]

/** The unit in which a reader of these measures would have an amount; null when it is in one of theirs already. */
export const readerUnit = (size: Exact, unit: Unit, reader: Measures): Unit | null => {
  if (unit.kind === 'mass') {
    const pounds = !isMetric(unit)
    if (reader === 'us') return pounds ? null : unitNamed(size.compare(exact('453.59237')) < 0 ? 'oz' : 'lb', null)
    return pounds ? unitNamed('g', null) : null
  }
  if (unit.owner !== null && unit.owner === ownerIn(reader, unit.word)) return null
  if (reader !== 'us') return isMetric(unit) ? null : unitNamed('ml', null)
  const fit = SPOONS_US.map(([word, from]) => ({ of: unitNamed(word, 'us'), from: exact(from) })).find(
    ({ of, from }) => size.div(exact(of.size)).compare(from) >= 0,
  )
  return fit?.of ?? null
}
