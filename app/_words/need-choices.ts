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
