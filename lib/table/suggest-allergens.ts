import { Allergen, type Ingredient, type Rules } from '#lib/domain/ingredient.ts'
import { readFood } from './read-food.ts'
import type { SourceKey } from './source.ts'
import type { Trait } from './trait.ts'

/** What a food's name says of it and nobody has said yet: offered, never taken for granted. */
export interface Suggested {
  /** Allergens that it has by being what it is. */
  readonly allergens: readonly { readonly allergen: Allergen; readonly source: SourceKey }[]
  /** What else it is: "meat", "alcohol", a nut by name. */
  readonly contains: readonly { readonly word: Trait; readonly source: SourceKey }[]
  /** What many of its kind have: read the label for these. */
  readonly look: readonly { readonly trait: Trait; readonly source: SourceKey }[]
}

const isAllergen = (trait: Trait): trait is Allergen => Allergen.options.some((allergen) => allergen === trait)

// What a cook asks for by its word; what is minded only raw is said by the method.
const WORDS: ReadonlySet<Trait> = new Set<Trait>([
  'meat',
  'poultry',
  'pork',
  'game',
  'lard',
  'gelatine',
  'rennet',
  'carmine',
  'honey',
  'alcohol',
  'liver',
  'pate',
  'unpasteurised',
  'mould-cheese',
  'cured-fish',
  'cured-meat',
  'almond',
  'brazil-nut',
  'cashew',
  'hazelnut',
  'macadamia',
  'pecan',
  'pistachio',
  'walnut',
  'pine-nut',
  'coconut',
  'chestnut',
  'buckwheat',
])

/** What an ingredient's name suggests beyond what is said of it. It never makes anything known. */
export const suggestAllergens = (ingredient: Pick<Ingredient, 'food' | 'allergens' | 'contains'>, rules: Rules): Suggested => {
  const read = readFood(ingredient.food, rules)
  const said = new Set<string>([...ingredient.allergens, ...ingredient.contains])
  return {
    allergens: [...read.has].flatMap(([trait, source]) =>
      isAllergen(trait) && !said.has(trait) ? [{ allergen: trait, source }] : [],
    ),
    contains: [...read.has].flatMap(([trait, source]) => (WORDS.has(trait) && !said.has(trait) ? [{ word: trait, source }] : [])),
    look: [...read.may, ...read.hidden].flatMap(([trait, source]) =>
      said.has(trait) || read.has.has(trait) ? [] : [{ trait, source }],
    ),
  }
}
