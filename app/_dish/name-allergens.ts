import { tableSourceText, traitWords } from '#app/_words/trait.ts'
import type { Ingredient, Rules } from '#lib/domain/ingredient.ts'
import { readFood } from '#lib/table/read-food.ts'
import { suggestAllergens } from '#lib/table/suggest-allergens.ts'
import type { Trait } from '#lib/table/trait.ts'
import { withParents } from '#lib/table/trait.ts'
import type { IngredientPatch } from './ingredient-sentences.ts'

/** What the name of an ingredient says of it and nobody has put down. */
export interface ByName {
  readonly ingredient: Ingredient
  /** "milk", "almond and eggs": without what follows from another one. */
  readonly has: readonly string[]
  /** What its label is read for. */
  readonly look: readonly string[]
  readonly sources: readonly string[]
  /** Puts it down. Whatever else may be in it stays open: it never makes anything known. */
  readonly patch: IngredientPatch
}

const words = (traits: readonly Trait[]): readonly string[] => {
  const follows = (trait: Trait) => traits.some((other) => other !== trait && withParents([other]).has(trait))
  return [...new Set(traits.filter((trait) => !follows(trait)).map((trait) => traitWords[trait]))]
}

/** What an ingredient's name suggests, with the change that puts it down; null where it suggests nothing. */
export const byName = (ingredient: Ingredient, rules: Rules): ByName | null => {
  const { allergens, contains, look } = suggestAllergens(ingredient, rules)
  const has = [...allergens.map(({ allergen }): Trait => allergen), ...contains.map(({ word }) => word)]
  const isAsked = ingredient.checked !== 'known' && look.length > 0
  if (has.length === 0 && !isAsked) return null
  const put = {
    allergens: [...ingredient.allergens, ...allergens.map(({ allergen }) => allergen)].slice(0, 15),
    contains: [...ingredient.contains, ...contains.map(({ word }) => word)].slice(0, 20),
  }
  const isLabelled = ingredient.checked === 'unknown' && !readFood(ingredient.food, rules).isPlain
  return {
    ingredient,
    has: words(has),
    look: ingredient.checked === 'known' ? [] : words(look.map(({ trait }) => trait)),
    sources: [...new Set([...allergens, ...contains, ...look].map(({ source }) => tableSourceText(source)))],
    patch: isLabelled ? { ...put, checked: 'check-label' } : put,
  }
}
