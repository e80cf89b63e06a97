import { Allergen } from '#lib/domain/ingredient.ts'

const CEREALS = ['rye', 'barley', 'oats', 'buckwheat'] as const
const NUTS = ['almond', 'brazil-nut', 'cashew', 'hazelnut', 'macadamia', 'pecan', 'pistachio', 'walnut', 'pine-nut'] as const
const LOOKS_LIKE_A_NUT = ['coconut', 'chestnut'] as const
const OF_ANIMALS = ['meat', 'poultry', 'pork', 'game', 'lard', 'gelatine', 'rennet', 'carmine', 'isinglass', 'honey'] as const
const OTHER = ['alcohol', 'little-lactose'] as const
// For pregnancy and low immunity: what matters is how it was made and whether it is cooked through.
const RISKS = [
  'raw-egg',
  'raw-meat',
  'raw-fish',
  'cured-meat',
  'cured-fish',
  'unpasteurised',
  'mould-cheese',
  'liver',
  'pate',
  'sprouts',
  'predator-fish',
  'lead-shot',
] as const

/** What a food is, or has in it, or what is to be minded of it: the words that a need keeps away from. */
export type Trait =
  | Allergen
  | (typeof CEREALS)[number]
  | (typeof NUTS)[number]
  | (typeof LOOKS_LIKE_A_NUT)[number]
  | (typeof OF_ANIMALS)[number]
  | (typeof OTHER)[number]
  | (typeof RISKS)[number]

/** Every trait, each once. */
const TRAITS: readonly Trait[] = [
  ...Allergen.options,
  ...CEREALS,
  ...NUTS,
  ...LOOKS_LIKE_A_NUT,
  ...OF_ANIMALS,
  ...OTHER,
  ...RISKS,
]

// What something is besides, whichever rules are asked. Pine nuts are a nut by some rules only: see `listed`.
const ALSO: Readonly<Partial<Record<Trait, readonly Trait[]>>> = {
  wheat: ['gluten'],
  rye: ['gluten'],
  barley: ['gluten'],
  oats: ['gluten'],
  almond: ['nuts'],
  'brazil-nut': ['nuts'],
  cashew: ['nuts'],
  hazelnut: ['nuts'],
  macadamia: ['nuts'],
  pecan: ['nuts'],
  pistachio: ['nuts'],
  walnut: ['nuts'],
  pork: ['meat'],
  poultry: ['meat'],
  game: ['meat'],
  liver: ['meat'],
  lard: ['pork', 'meat'],
  'cured-fish': ['fish'],
  'predator-fish': ['fish'],
}

/** These and what they are besides: pork is meat, rye has gluten. */
export const withParents = (traits: Iterable<Trait>): ReadonlySet<Trait> => {
  const found = new Set<Trait>()
  const add = (trait: Trait) => {
    found.add(trait)
    for (const parent of ALSO[trait] ?? []) add(parent)
  }
  for (const trait of traits) add(trait)
  return found
}

/** Words of the evening's file that mean one or several traits. */
const WORDS: ReadonlyMap<string, readonly Trait[]> = new Map<string, readonly Trait[]>([
  ...TRAITS.map((trait) => [trait, [trait]] as const),
  ['egg', ['eggs']],
  ['dairy', ['milk']],
  ['lactose', ['milk']],
  ['soy', ['soya']],
  ['soybeans', ['soya']],
  ['peanut', ['peanuts']],
  ['nut', ['nuts']],
  ['tree-nuts', ['nuts']],
  ['almonds', ['almond']],
  ['brazil-nuts', ['brazil-nut']],
  ['cashews', ['cashew']],
  ['hazelnuts', ['hazelnut']],
  ['macadamias', ['macadamia']],
  ['pecans', ['pecan']],
  ['pistachios', ['pistachio']],
  ['walnuts', ['walnut']],
  ['pine-nuts', ['pine-nut']],
  ['chestnuts', ['chestnut']],
  ['shellfish', ['crustaceans', 'molluscs']],
  ['seafood', ['fish', 'crustaceans', 'molluscs']],
  ['crustacean', ['crustaceans']],
  ['mollusc', ['molluscs']],
  ['beef', ['meat']],
  ['lamb', ['meat']],
  ['veal', ['meat']],
  ['chicken', ['poultry']],
  ['gelatin', ['gelatine']],
  ['sulphite', ['sulphites']],
  ['sulfites', ['sulphites']],
  ['celeriac', ['celery']],
  ['oat', ['oats']],
])

/** What a word of an ingredient's list or of a need means as traits; empty for a word of its own. */
export const traitsOfWord = (word: string): readonly Trait[] => WORDS.get(word) ?? []
