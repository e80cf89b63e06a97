import type { Ingredient } from '#lib/domain/ingredient.ts'
import type { Step } from '#lib/domain/menu.ts'
import { isIngredientsHeading, readSection } from '#lib/recipes/head-lines.ts'
import { readIngredient } from '#lib/recipes/ingredient.ts'
import { ingredientOf } from '#lib/recipes/make-ingredient.ts'
import type { Doubt } from '#lib/recipes/preview.ts'

/** A written line as it is understood. */
export type ReadLine =
  | { readonly kind: 'heading'; readonly key: string; readonly text: string }
  | {
      readonly kind: 'ingredient'
      readonly key: string
      readonly text: string
      readonly ingredient: Omit<Ingredient, 'id' | 'dish' | 'order'>
      readonly doubts: readonly Doubt[]
    }

const MOST_LINES = 200

/** Lines of ingredients, typed or pasted; headings are told and left out, empty lines are nothing. */
export const readLines = (text: string, steps: readonly Step[]): readonly ReadLine[] =>
  text
    .split(/\r?\n/)
    .slice(0, MOST_LINES)
    .flatMap((written, at): ReadLine[] => {
      const line = written.trim()
      const key = `${at} ${line}`
      if (line === '') return []
      if (isIngredientsHeading(line) || readSection(line) !== null) return [{ kind: 'heading', key, text: line }]
      const read = readIngredient(line, null, '.')
      return [{ kind: 'ingredient', key, text: read.text, ingredient: ingredientOf(read, steps, null), doubts: read.doubts }]
    })
