import type { Ingredient, Rules } from '#lib/domain/ingredient.ts'
import { judgePlate } from '#lib/table/judge-plate.ts'
import type { Need, Verdict } from '#lib/table/verdict.ts'

/** A plate of these ingredients alone, of which nothing else is known, for somebody with these needs. */
export const verdictOf = (ingredients: readonly Ingredient[], needs: readonly Need[] | null, rules: Rules): Verdict =>
  judgePlate(
    {
      items: ingredients.map((ingredient) => ({ ingredient, cooked: 'not-said', heatMinutes: null })),
      rules,
      confirmed: [],
      changedSince: [],
      otherKitchen: null,
      guarded: null,
    },
    needs,
  )
