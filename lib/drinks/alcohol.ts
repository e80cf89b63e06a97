import type { Rules } from '#lib/domain/ingredient.ts'
import type { Source } from '#lib/domain/source.ts'

/** Grams in a millilitre of ethanol at 20 °C; FAO/INFOODS Density Database v2.0, "ethyl alcohol". */
const ETHANOL_DENSITY = 0.789

/** In what alcohol is counted: a UK unit, a standard drink of the US or of Australia and New Zealand. */
export type Measure = 'uk-unit' | 'us-drink' | 'au-drink'

const MEASURES: Readonly<Record<Measure, { readonly ethanolMl: number; readonly source: Source }>> = {
  'uk-unit': {
    ethanolMl: 10,
    source: { publisher: 'NHS', title: 'Alcohol units', year: null, standing: 'read' },
  },
  'us-drink': {
    ethanolMl: 14 / ETHANOL_DENSITY,
    source: { publisher: 'NIAAA', title: 'What Is A Standard Drink?', year: null, standing: 'quoted' },
  },
  'au-drink': {
    ethanolMl: 10 / ETHANOL_DENSITY,
    source: {
      publisher: 'Australian Department of Health, NHMRC',
      title: 'Standard drinks',
      year: null,
      standing: 'quoted',
    },
  },
}

/**
 * What is counted under each rules. Where none is named the UK unit, the smallest of the three: it never counts less. The EU has no
 * measure of its own.
 */
const OF_RULES: Readonly<Record<Rules, Measure>> = {
  strictest: 'uk-unit',
  uk: 'uk-unit',
  eu: 'uk-unit',
  us: 'us-drink',
  au: 'au-drink',
}

export const measureOf = (rules: Rules): Measure => OF_RULES[rules]
export const measureSource = (measure: Measure): Source => MEASURES[measure].source

/** Millilitres of ethanol in so much of a drink of that strength, in percent by volume. */
export const ethanolMl = (ml: number, abv: number): number => (ml * abv) / 100

export const ethanolGrams = (ethanol: number): number => ethanol * ETHANOL_DENSITY

/** So much ethanol in units or standard drinks, not rounded: round for display alone. */
export const measured = (ethanol: number, measure: Measure): number => ethanol / MEASURES[measure].ethanolMl
