import type { Asked, NoEstimate } from '#app/_quantities/estimate.ts'
import type { ChillShape } from '#lib/domain/newton.ts'
import type { Hob } from '#lib/quantities/boil.ts'
import { type Estimate, estimateSpan } from '#lib/quantities/estimate.ts'
import type { OvenSort } from '#lib/quantities/preheat.ts'
import { durationText, spanText } from './duration.ts'

export const askedWords: Readonly<Record<Asked['kind'], string>> = {
  boil: 'water coming to the boil',
  preheat: 'an oven getting hot',
  roast: 'roasting by weight',
  chill: 'chilling in the fridge',
}

export const hobWords: Readonly<Record<Hob, string>> = {
  induction: 'an induction hob',
  ceramic: 'an electric hob',
  gas: 'a gas hob',
}

export const ovenWords: Readonly<Record<OvenSort, string>> = {
  electric: 'an electric oven',
  fan: 'a fan oven',
  gas: 'a gas oven',
  grill: 'a grill',
}

export const shapeWords: Readonly<Record<ChillShape, string>> = {
  'shallow box': 'a covered box of a litre, 5 cm deep',
  pot: 'a pot of four litres',
}

/** "usually 14 min, 13 to 15½ min": in half minutes, as they are taken over. */
export const estimateText = (estimate: Pick<Estimate, 'least' | 'likely' | 'most'>): string => {
  const { least, likely, most } = estimateSpan(estimate)
  return `usually ${durationText(likely)}${least === most ? '' : `, ${spanText(least, most)}`}`
}

const percent = (part: number | string): string => `${Math.round(Number(part) * 100)} %`

const ASSUMED: Readonly<Record<string, (value: number | string) => string>> = {
  litres: (value) => `${value} l of water, covered`,
  fromC: (value) => `from ${value}°`,
  boilsAtC: (value) => `boiling at ${value}° (1° less for each 300 m of height)`,
  powerKW: (value) => `a ring of ${value} kW`,
  reaches: (value) => `${percent(value)} of its heat in the water`,
  toC: (value) => `to ${value}°`,
  upPerMin: (value) => `${value}° a minute, as this oven is said to heat`,
  oven: (value) => `${ovenWords[value as OvenSort] ?? value}`,
  joint: (value) => String(value),
  kg: (value) => `${value} kg, thawed`,
  ovenC: (value) => `an oven of ${value}°`,
  shape: (value) => shapeWords[value as ChillShape] ?? String(value),
  fridgeC: (value) => `a fridge of ${value}°`,
  ratePerHour: (value) => `losing ${percent(1 - Math.exp(-Number(value)))} of the difference in the first hour`,
}

/** What an estimate takes for granted, each in words. */
export const assumesText = (estimate: Pick<Estimate, 'assumes'>): readonly string[] =>
  Object.entries(estimate.assumes).map(([name, value]) => ASSUMED[name]?.(value) ?? `${name} ${value}`)

const kgText = (kg: number): string => String(Math.round(kg * 10) / 10)

/** Why there is no estimate, and what to do instead. */
export const noEstimateText = (why: NoEstimate): string => {
  switch (why.kind) {
    case 'unknown-joint':
      return 'No published chart has this joint. Write the minutes of your recipe.'
    case 'weight-outside':
      return why.rows.length === 0
        ? 'This rule is for joints up to 12 kg. Write the minutes of your recipe.'
        : `The published chart has this joint from ${why.rows.map(([from, to]) => `${kgText(from)} to ${kgText(to)} kg`).join(' and from ')} only, and is not stretched. Write the minutes of your recipe, and let a thermometer decide.`
    case 'no-water':
      return 'Write up to 20 litres, a ring of up to 10 kW, and water below 100°.'
    case 'no-heat':
      return 'Write a heat between 50 and 300°.'
    case 'never-so-cold':
      return 'It never gets as cold as that: nothing gets colder than the fridge around it.'
    case 'not-warmer':
      return 'It is as cold as that already.'
    case 'too-long':
      return 'That would take more than two days: too long for these figures to mean anything.'
  }
}
