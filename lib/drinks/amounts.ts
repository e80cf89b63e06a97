import type { Evening } from '#lib/domain/evening.ts'
import type { Drink } from '#lib/domain/people.ts'
import { coversOf } from '#lib/domain/portions.ts'

/** Common practice, no source: half a litre of water for each, half a kilo of ice for each where drinks are mixed or stand in ice. */
const WATER_ML_EACH = 500
const ICE_GRAMS_EACH = 500
const ICED_BELOW_C = 10

/** What is bought of one drink. */
export interface Amount {
  readonly drink: string
  readonly people: number
  readonly ml: number
  readonly bottleMl: number
  readonly bottles: number
}

/** The bottle that a drink of that strength mostly comes in: wine and what is stronger 75 cl, beer and cider 50 cl, others a litre; common practice. */
export const bottleMl = (abv: number): number => (abv >= 8 ? 750 : abv > 1 ? 500 : 1000)

/**
 * What is bought for who eats each course: a glass of what is for them. Of the covers `drinkers` drink alcohol; children whose own course it is
 * have none. Where a course has two of a sort, they share it. Where `drinkers` is absent there is enough of either for all the covers.
 */
export const amountsOf = (evening: Pick<Evening, 'covers' | 'courses' | 'drinkers' | 'drinks'>): readonly Amount[] =>
  evening.drinks.map((drink): Amount => {
    const isStrong = drink.abv > 0
    const alike = evening.drinks.filter((other) => other.course === drink.course && other.abv > 0 === isStrong)
    const people = Math.ceil(pouredTo(evening, drink.course, isStrong) / alike.length)
    const ml = people * drink.mlEach
    const size = bottleMl(drink.abv)
    return { drink: drink.id, people, ml, bottleMl: size, bottles: Math.ceil(ml / size) }
  })

/** How many are poured what has alcohol with a course, or what has none. */
const pouredTo = (evening: Pick<Evening, 'covers' | 'courses' | 'drinkers'>, course: string, strong: boolean): number => {
  const eaters = coversOf(evening, course)
  const isChildrens = evening.courses.some(({ id, children }) => id === course && children !== undefined)
  const alcohol = isChildrens ? 0 : evening.drinkers
  if (alcohol === undefined) return eaters
  return strong ? Math.min(alcohol, eaters) : Math.max(0, eaters - alcohol)
}

/** Millilitres of water for so many at the table. */
export const waterMl = (people: number): number => people * WATER_ML_EACH

/** Grams of ice to have for so many; none where nothing is served ice-cold. */
export const iceGrams = (people: number, drinks: readonly Pick<Drink, 'servedC'>[]): number =>
  drinks.some(({ servedC }) => servedC !== undefined && servedC <= ICED_BELOW_C) ? people * ICE_GRAMS_EACH : 0
