import { Allergen } from '#lib/domain/ingredient.ts'
import type { NeedGrade } from '#lib/domain/people.ts'
import { allergenWords } from './food.ts'

/** The needs that one can choose from, in groups; any other one is written in its own word. */
export const NEED_CHOICES: readonly (readonly [need: string, words: string, group: string])[] = [
  ['vegetarian', 'vegetarian', 'A way of eating'],
  ['vegan', 'vegan', 'A way of eating'],
  ['pescatarian', 'fish but no meat', 'A way of eating'],
  ['halal', 'halal', 'A way of eating'],
  ['kosher', 'kosher', 'A way of eating'],
  ['coeliac', 'coeliac', 'A condition'],
  ['lactose', 'lactose', 'A condition'],
  ['pregnancy', 'pregnant', 'A condition'],
  ['low-immunity', 'low immunity', 'A condition'],
  ...Allergen.options.map((each) => [each, allergenWords[each], 'On the lists of allergens'] as const),
  ['shellfish', 'shellfish', 'Something else'],
  ['meat', 'meat', 'Something else'],
  ['pork', 'pork', 'Something else'],
  ['alcohol', 'alcohol', 'Something else'],
  ['honey', 'honey', 'Something else'],
]

const KEPT_OFF: Readonly<Record<string, string>> = {
  vegetarian: 'meat and fish (vegetarian)',
  vegan: 'anything from animals (vegan)',
  pescatarian: 'meat (fish is fine)',
  halal: 'what is not halal',
  kosher: 'what is not kosher',
  coeliac: 'gluten (coeliac)',
  pregnancy: 'what to avoid when pregnant',
  'low-immunity': 'what to avoid with low immunity',
}

/** The same after "I eat everything but": what a way of eating or a condition keeps off the plate. */
export const NOT_EATEN_CHOICES = NEED_CHOICES.map(([need, words, group]) => [need, KEPT_OFF[need] ?? words, group] as const)

/** How serious it is, after the need: "sesame, a severe allergy". */
export const gradeWords: Readonly<Record<NeedGrade, string>> = {
  dislikes: 'would rather not',
  avoids: 'not at all',
  allergy: 'an allergy',
  severe: 'a severe allergy',
}

/** How serious a need is until somebody says otherwise: an allergen is taken for an allergy. */
export const usualGrade = (need: string): NeedGrade =>
  Allergen.options.some((each) => each === need) || need === 'shellfish' ? 'allergy' : 'avoids'
