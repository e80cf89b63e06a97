import type { Source } from '#lib/domain/source.ts'
import { aisleOf } from './aisles.ts'

/** FSIS: about 24 hours in the fridge for every 4 to 5 lb (a turkey); that also small pieces want a whole day is theirs too, from memory. */
export const THAW: Source = { publisher: 'USDA FSIS', title: 'safe thawing in the refrigerator', year: null, standing: 'quoted' }
const DAY_HOURS = 24
const SLOW_GRAMS = 1814.36948
const FAST_GRAMS = 2267.96185

export interface ThawHours {
  readonly least: number
  readonly likely: number
  readonly most: number
}

/** Whole hours in the fridge until so much is thawed: never less than a day. */
export const thawHours = (grams: number): ThawHours => {
  const hours = (aDay: number) => Math.max(DAY_HOURS, Math.ceil((grams / aDay) * DAY_HOURS))
  const [least, most] = [hours(FAST_GRAMS), hours(SLOW_GRAMS)]
  return { least, likely: Math.ceil((least + most) / 2), most }
}

const THAWED =
  /\b(chicken|turkey|duck|goose|beef|veal|lamb|pork|mince|steaks?|fish|salmon|trout|cod|hake|haddock|prawns?|shrimps?|squid|scallops?|mussels?|lobster|venison|pastry|joint|shoulder|fillets?)\b/i

/** Frozen, and thawed before it is cooked: peas and ice cream are not. */
export const isThawed = (food: string): boolean => aisleOf(food) === 'frozen' && THAWED.test(food)
