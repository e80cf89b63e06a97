import { Allergen, type Ingredient, type Rules } from '#lib/domain/ingredient.ts'

export const allergenWords: Readonly<Record<Allergen, string>> = {
  gluten: 'gluten',
  wheat: 'wheat',
  crustaceans: 'crustaceans',
  eggs: 'eggs',
  fish: 'fish',
  peanuts: 'peanuts',
  soya: 'soya',
  milk: 'milk',
  nuts: 'nuts',
  celery: 'celery',
  mustard: 'mustard',
  sesame: 'sesame',
  sulphites: 'sulphites',
  lupin: 'lupin',
  molluscs: 'molluscs',
}

/** How far one can trust the list of allergens; what is not known is never safe. */
export const checkedWords: Readonly<Record<Ingredient['checked'], string>> = {
  known: 'that is all: somebody has made sure',
  'check-label': 'the label has to be read before it is used',
  unknown: 'nobody has looked yet, so it is not safe for an allergy',
}

/** The same in a word or two, for a list. */
export const checkedTags: Readonly<Record<Ingredient['checked'], string>> = {
  known: '',
  'check-label': 'read the label',
  unknown: 'allergens not known',
}

export const rulesWords: Readonly<Record<Rules, string>> = {
  strictest: 'the strictest rules',
  uk: 'British rules',
  eu: 'European rules',
  us: 'American rules',
  au: 'Australian and New Zealand rules',
}

export const scalesWords: Readonly<Record<Ingredient['scales'], string>> = {
  yes: 'it grows with the portions',
  whole: 'it grows by whole ones',
  'by-taste': 'it is seasoned by taste',
  no: 'it stays the same for any number',
}

/** Words of what a food is or holds that are asked for most often. */
export const CONTAINED: readonly string[] = [
  'meat',
  'poultry',
  'pork',
  'fish',
  'shellfish',
  'egg',
  'milk',
  'honey',
  'alcohol',
  'gelatine',
]

/** "rennet", "shell fish": a word of the trade as people read it. */
export const foodWord = (word: string): string => word.replaceAll('-', ' ')

const WORD = /^[a-z0-9]+(-[a-z0-9]+)*$/

/** Reads "meat, Shell fish and no milk" as words of the trade; null when one of them is none. */
export const readWords = (text: string): readonly string[] | null => {
  const words = text
    .split(/,|;|\band\b|\n/i)
    .map((word) =>
      word
        .trim()
        .toLowerCase()
        .replace(/^no\s+/, '')
        .replace(/\s+/g, '-'),
    )
    .filter(Boolean)
  return words.length <= 20 && words.every((word) => WORD.test(word) && word.length <= 40) ? [...new Set(words)] : null
}

/** "vegan", "no milk": who a swap is for. */
export const swapForText = (word: string): string =>
  Allergen.options.some((each) => each === word) || CONTAINED.includes(word) ? `no ${foodWord(word)}` : foodWord(word)

/** A food and what is done to it, cut at the first comma or bracket: "potatoes" and "peeled". */
export const splitFood = (food: string): { readonly food: string; readonly note: string } => {
  const at = food.search(/,(?!\d)|[(;]/)
  if (at <= 0) return { food, note: '' }
  return {
    food: food.slice(0, at).trim(),
    note: food
      .slice(at)
      .replace(/^[,;\s]+/, '')
      .trim(),
  }
}

/** Both together again, as `splitFood` reads them. */
export const joinFood = (food: string, note: string): string =>
  note === '' ? food : note.startsWith('(') ? `${food} ${note}` : `${food}, ${note}`
