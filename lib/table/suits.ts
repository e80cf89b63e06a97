import { Allergen, type Ingredient } from '#lib/domain/ingredient.ts'

/** Whether a dish is right for somebody with a need: unknown is never safe. */
export type Suits = 'fits' | 'with-change' | 'does-not' | 'not-confirmed'

/** What a need keeps away from: allergens as the labels name them, and words of what an ingredient contains. */
interface Away {
  readonly allergens: readonly Allergen[]
  readonly contains: readonly string[]
  /** Words in a food's own name that make it doubtful, whatever is written of it. */
  readonly names?: readonly string[]
  /** Ingredients do not tell whether it is kept: it is never confirmed from them. */
  readonly beyond?: true
}

const MEAT = ['meat', 'poultry', 'pork', 'beef', 'lamb', 'veal', 'game', 'gelatine', 'lard', 'rennet', 'carmine']
const MEAT_NAMES =
  'chicken duck goose turkey beef steak veal lamb mutton pork ham bacon gammon pancetta chorizo salami prosciutto sausage sausages venison rabbit mince liver marrow gelatine gelatin lard suet dripping tallow'.split(
    ' ',
  )
const FISH_NAMES =
  'fish anchovy anchovies salmon trout cod haddock mackerel tuna sardine sardines bass prawn prawns shrimp shrimps crab lobster mussel mussels clam clams oyster oysters scallop scallops squid dashi'.split(
    ' ',
  )
const MILK_NAMES = 'milk butter ghee cream cheese yogurt yoghurt whey casein parmesan cheddar feta'.split(' ')
const EGG_NAMES = 'egg eggs mayonnaise aioli meringue'.split(' ')
const ALCOHOL_NAMES = 'wine beer cider sherry port brandy rum vodka gin whisky whiskey liqueur marsala vermouth mirin'.split(' ')
const FISH: readonly Allergen[] = ['fish', 'crustaceans', 'molluscs']
const FISH_WORDS = ['fish', 'shellfish', 'seafood', 'crustaceans', 'molluscs']
const CEREALS: Away = { allergens: ['gluten', 'wheat'], contains: ['gluten', 'wheat', 'rye', 'barley', 'oats'] }
const MILK: Away = { allergens: ['milk'], contains: ['milk', 'dairy', 'lactose'], names: MILK_NAMES }

// What the patterns leave out: ISO 23662:2021, clause 4 (vegan, ovo-lacto-vegetarian); Codex CAC/GL 24-1997, 2.1 and 3.1 (halal);
// Codex STAN 118-1979, rev. 2008, 2.1 (gluten). Pescatarian: common practice, no source.
const PATTERNS: Readonly<Record<string, Away>> = {
  vegetarian: { allergens: FISH, contains: [...MEAT, ...FISH_WORDS], names: [...MEAT_NAMES, ...FISH_NAMES] },
  vegan: {
    allergens: [...FISH, 'milk', 'eggs'],
    contains: [...MEAT, ...FISH_WORDS, 'milk', 'dairy', 'egg', 'eggs', 'honey'],
    names: [...MEAT_NAMES, ...FISH_NAMES, ...MILK_NAMES, ...EGG_NAMES, 'honey'],
  },
  pescatarian: { allergens: [], contains: MEAT, names: MEAT_NAMES },
  coeliac: CEREALS,
  'gluten-free': CEREALS,
  lactose: MILK,
  'lactose-free': MILK,
  dairy: MILK,
  'dairy-free': MILK,
  egg: { allergens: ['eggs'], contains: ['egg', 'eggs'], names: EGG_NAMES },
  shellfish: { allergens: ['crustaceans', 'molluscs'], contains: ['shellfish', 'crustaceans', 'molluscs'] },
  meat: { allergens: [], contains: MEAT, names: MEAT_NAMES },
  pork: {
    allergens: [],
    contains: ['pork', 'lard'],
    names: 'pork ham bacon gammon pancetta chorizo salami prosciutto sausage sausages lard gelatine gelatin'.split(' '),
  },
  alcohol: { allergens: [], contains: ['alcohol'], names: ALCOHOL_NAMES },
  honey: { allergens: [], contains: ['honey'], names: ['honey'] },
  halal: { allergens: [], contains: ['pork', 'lard', 'alcohol'], beyond: true },
  kosher: { allergens: ['crustaceans', 'molluscs'], contains: ['pork', 'lard', 'shellfish'], beyond: true },
  pregnancy: { allergens: [], contains: ['alcohol'], beyond: true },
}

const AWAY: ReadonlyMap<string, Away> = new Map(Object.entries(PATTERNS))
const isAllergen = (word: string): word is Allergen => Allergen.options.some((allergen) => allergen === word)

/** A need of its own word ("chicory") is never confirmed: a food may be in another one that does not name it. */
const awayOf = (need: string): Away =>
  AWAY.get(need) ??
  (isAllergen(need) ? { allergens: [need], contains: [need] } : { allergens: [], contains: [need], beyond: true })

/**
 * Whether a dish of these ingredients suits the need. It does not, when one of them is known to have what is kept away from; it does with
 * a change when each such one names its swap; and it is not confirmed as long as an ingredient is not known or its name makes it doubtful, a label is unread or was
 * read under other rules than the strictest, the need asks more than ingredients tell, or there are no ingredients.
 */
export const suits = (ingredients: readonly Ingredient[], need: string): Suits => {
  const away = awayOf(need)
  const wrong = ingredients.filter((ingredient) => hasSome(ingredient, away, need))
  if (wrong.some((ingredient) => !ingredient.swap?.for.includes(need))) return 'does-not'
  const rest = ingredients.filter((ingredient) => !wrong.includes(ingredient))
  const isKnown = ({ food, checked, labelRules }: Ingredient) =>
    checked === 'known' &&
    !away.names?.some((name) => named(food, name)) &&
    (labelRules === undefined || labelRules === 'strictest' || labelRules === 'eu' || labelRules === 'uk')
  if (ingredients.length === 0 || away.beyond || !rest.every(isKnown)) return 'not-confirmed'
  return wrong.length > 0 ? 'with-change' : 'fits'
}

const hasSome = (ingredient: Ingredient, away: Away, need: string): boolean =>
  ingredient.allergens.some((allergen) => away.allergens.includes(allergen)) ||
  ingredient.contains.some((word) => away.contains.includes(word)) ||
  (away.contains.includes('alcohol') && (ingredient.abv ?? 0) > 0) ||
  (!AWAY.has(need) && !isAllergen(need) && named(ingredient.food, need))

const named = (food: string, need: string): boolean =>
  ` ${food
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .join(' ')} `.includes(` ${need.replaceAll('-', ' ')} `)
