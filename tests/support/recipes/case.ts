import type { DecimalMark } from '#lib/recipes/preview.ts'

/**
 * A recipe of our own invention with what a careful reader finds in it, written down before any program read it.
 * Ingredients: "n unit | food", "2..3 tbsp | oil", "- | salt" when there is no amount; a pack after a slash: "1 tin / 400 g | tomatoes".
 * Steps, one for each numbered line or paragraph: minutes as "takes 10", "takes 2..3", "chill 120.." (at least), "rest ..30" (at most),
 * "every 10", "ahead ..2880", "mark 20" (a moment inside the step); heats as "oven 200", "core 63", "fat 180", in °C.
 */
export interface RecipeCase {
  readonly name: string
  readonly text: string
  readonly decimal?: DecimalMark
  readonly title: string
  readonly yields: string | null
  readonly ingredients: readonly string[]
  readonly steps: readonly (readonly string[])[]
}
