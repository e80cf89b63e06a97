import type { Evening } from '#lib/domain/evening.ts'
import type { Drink } from '#lib/domain/people.ts'

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
 * What is bought for the covers, of whom so many drink alcohol: each has a glass of what is for them with each course. Where a course has two of
 * a sort, they share it. Null: how many is not known, and there is enough of either for all.
 */
export const amountsOf = (evening: Pick<Evening, 'covers' | 'drinks'>, alcohol: number | null): readonly Amount[] =>
  evening.drinks.map((drink): Amount => {
    const isStrong = drink.abv > 0
    const alike = evening.drinks.filter((other) => other.course === drink.course && other.abv > 0 === isStrong)
    const all =
      alcohol === null ? evening.covers : isStrong ? Math.min(alcohol, evening.covers) : Math.max(0, evening.covers - alcohol)
    const people = Math.ceil(all / alike.length)
    const ml = people * drink.mlEach
    const size = bottleMl(drink.abv)
    return { drink: drink.id, people, ml, bottleMl: size, bottles: Math.ceil(ml / size) }
  })

export const waterMl = (covers: number): number => covers * WATER_ML_EACH

/** Grams of ice to have; none where nothing is served ice-cold. */
export const iceGrams = (covers: number, drinks: readonly Pick<Drink, 'servedC'>[]): number =>
  drinks.some(({ servedC }) => servedC !== undefined && servedC <= ICED_BELOW_C) ? covers * ICE_GRAMS_EACH : 0
