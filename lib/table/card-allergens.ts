import type { Evening } from '#lib/domain/evening.ts'
import { Allergen } from '#lib/domain/ingredient.ts'
import type { Dish } from '#lib/domain/menu.ts'
import { isAllergenTrait, isListed } from './allergen-rules.ts'
import { readFood } from './read-food.ts'
import { type Trait, traitsOfWord, withParents } from './trait.ts'

/** What a card may say of a dish: what is known to be in it, and whether that is all. */
export interface CardAllergens {
  readonly has: readonly Trait[]
  /** Every ingredient is known, under rules that name all that the evening's do; otherwise there may be more, and nobody is to be told that there is not. */
  readonly isAll: boolean
}

/** The allergens of a dish by what its cooks wrote and by what its foods are. A dish of which nothing is written is not known. */
export const cardAllergens = (evening: Pick<Evening, 'ingredients' | 'rules'>, dish: Dish): CardAllergens => {
  const of = new Set([dish.id, ...(dish.variant ? [dish.variant.of] : [])])
  const own = evening.ingredients.filter((ingredient) => of.has(ingredient.dish))
  const found = own.flatMap(({ food, allergens, contains }): Trait[] => [
    ...allergens,
    ...contains.flatMap(traitsOfWord),
    ...readFood(food, evening.rules).has.keys(),
  ])
  const has = [...withParents(found)].filter((trait) => isAllergenTrait(trait) && isListed(trait, evening.rules))
  const isRead = own.every(
    ({ checked, labelRules }) => checked === 'known' && (labelRules === undefined || labelRules === evening.rules),
  )
  return { has: has.toSorted((a, b) => rank(a) - rank(b)), isAll: own.length > 0 && isRead }
}

/** The kind before what is of it: nuts, then walnut. */
const rank = (trait: Trait): number => {
  const at = Allergen.options.findIndex((each) => each === trait)
  return at === -1 ? Allergen.options.length : at
}
