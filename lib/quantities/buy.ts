import type { Source } from '#lib/domain/source.ts'
import { type Exact, exact } from './exact.ts'
import { foodKeys } from './food-name.ts'
import { sr28 } from './source.ts'
import { REFUSE } from './sr28-refuse.ts'

/** What to buy so that a weight remains to be eaten. */
export interface Bought {
  readonly grams: Exact
  /** Percent of the bought weight that is thrown away, and what that is. */
  readonly refuse: number
  readonly what: string
  readonly food: string
  readonly source: Source
}

/**
 * As-purchased weight = edible weight ÷ yield (USDA's refuse percentages). The weight is of what is ready to cook; null where no
 * refuse is known for the food, which is not the same as none.
 */
export const toBuy = (food: string, edibleGrams: Exact): Bought | null => {
  for (const key of foodKeys(food)) {
    const row = REFUSE.find((each) => each.names.includes(key))
    if (row)
      return {
        grams: edibleGrams.mul(100).div(exact(String(100 - row.refuse))),
        refuse: row.refuse,
        what: row.what,
        food: row.food,
        source: sr28(row.ndb),
      }
  }
  return null
}
