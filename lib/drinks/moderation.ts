import type { Rules } from '#lib/domain/ingredient.ts'
import type { Source } from '#lib/domain/source.ts'
import { ethanolGrams, measured } from './alcohol.ts'

/** Something gentle that is worth saying of how much is poured. */
export type Moderation =
  /** More than about a unit an hour, which is what a body is said to break down; it varies. */
  | { readonly kind: 'pace'; readonly unitsAnHour: number; readonly source: Source }
  /** More than guidance gives for a day. */
  | {
      readonly kind: 'day'
      readonly drinks: number
      readonly most: number
      readonly who: 'anybody' | 'men' | 'women'
      readonly source: Source
    }
  /** What share of the guidance for a week the evening is. */
  | { readonly kind: 'week'; readonly units: number; readonly most: number; readonly source: Source }

const ELIMINATION: Source = {
  publisher: 'health services',
  title: 'about one UK unit an hour; it varies',
  year: null,
  standing: 'quoted',
}
const UK_CMO: Source = {
  publisher: 'UK Chief Medical Officers',
  title: 'Low Risk Drinking Guidelines, August',
  year: 2016,
  standing: 'quoted',
}
const NHMRC: Source = {
  publisher: 'NHMRC',
  title: 'Australian Guidelines to Reduce Health Risks from Drinking Alcohol, December',
  year: 2020,
  standing: 'quoted',
}
const US_DGA: Source = {
  publisher: 'USDA and HHS',
  title: 'Dietary Guidelines for Americans 2020–2025',
  year: 2020,
  standing: 'memory',
}

const UNITS_AN_HOUR = 1
const UK_WEEK_UNITS = 14
const AU_DAY = { most: 4, grams: 10, who: 'anybody', source: NHMRC } as const
const US_DAYS = [
  { most: 1, grams: 14, who: 'women', source: US_DGA },
  { most: 2, grams: 14, who: 'men', source: US_DGA },
] as const

/** Which guidance speaks under which rules; under the strictest all of them. */
const days = (rules: Rules) => {
  switch (rules) {
    case 'us':
      return US_DAYS
    case 'au':
      return [AU_DAY]
    case 'uk':
    case 'eu':
      return []
    case 'strictest':
      return [...US_DAYS, AU_DAY]
  }
}

/**
 * What is worth saying of so much ethanol over an evening. An empty list says nothing of who may drive or of what is good for anybody.
 */
export const moderation = (rules: Rules, ethanol: number, perHourMl: number | null): readonly Moderation[] => {
  if (ethanol <= 0) return []
  const grams = ethanolGrams(ethanol)
  const units = measured(ethanol, 'uk-unit')
  const unitsAnHour = perHourMl === null ? 0 : measured(perHourMl, 'uk-unit')
  return [
    ...(unitsAnHour > UNITS_AN_HOUR ? [{ kind: 'pace' as const, unitsAnHour, source: ELIMINATION }] : []),
    ...days(rules)
      .filter((day) => grams / day.grams > day.most)
      .map(({ most, grams: each, who, source }) => ({ kind: 'day' as const, drinks: grams / each, most, who, source })),
    ...(rules === 'uk' || rules === 'strictest' ? [{ kind: 'week' as const, units, most: UK_WEEK_UNITS, source: UK_CMO }] : []),
  ]
}
