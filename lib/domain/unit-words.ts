/** The measures of volume and mass that recipes name, one word for each; a cup is not yet said to be anybody's. */
export type UnitWord =
  | 'ml'
  | 'cl'
  | 'dl'
  | 'l'
  | 'tsp'
  | 'tbsp'
  | 'cup'
  | 'fl oz'
  | 'pint'
  | 'quart'
  | 'gallon'
  | 'mg'
  | 'g'
  | 'kg'
  | 'oz'
  | 'lb'
  | 'stone'

/** Whose measure it is, where the text says so: "US cup", "imperial pint". */
export type UnitOwner = 'us' | 'imperial' | 'metric' | 'au'

export interface NamedUnit {
  readonly word: UnitWord
  readonly owner: UnitOwner | null
}

const SPELLINGS: Readonly<Record<UnitWord, readonly string[]>> = {
  ml: ['ml', 'mls', 'millilitre', 'millilitres', 'milliliter', 'milliliters', 'cc'],
  cl: ['cl', 'centilitre', 'centilitres', 'centiliter', 'centiliters'],
  dl: ['dl', 'decilitre', 'decilitres', 'deciliter', 'deciliters'],
  l: ['l', 'litre', 'litres', 'liter', 'liters', 'ltr', 'ltrs'],
  tsp: ['tsp', 'tsps', 'teaspoon', 'teaspoons', 'teaspoonful', 'teaspoonfuls'],
  tbsp: ['tbsp', 'tbsps', 'tbs', 'tbl', 'tablespoon', 'tablespoons', 'tablespoonful', 'tablespoonfuls'],
  cup: ['cup', 'cups', 'cupful', 'cupfuls'],
  'fl oz': ['fl oz', 'floz', 'fluid ounce', 'fluid ounces', 'fl ounce', 'fl ounces'],
  pint: ['pint', 'pints', 'pt', 'pts'],
  quart: ['quart', 'quarts', 'qt', 'qts'],
  gallon: ['gallon', 'gallons', 'gal'],
  mg: ['mg', 'milligram', 'milligrams', 'milligramme', 'milligrammes'],
  g: ['g', 'gr', 'gm', 'gms', 'gram', 'grams', 'gramme', 'grammes'],
  kg: ['kg', 'kgs', 'kilo', 'kilos', 'kilogram', 'kilograms', 'kilogramme', 'kilogrammes'],
  oz: ['oz', 'ounce', 'ounces'],
  lb: ['lb', 'lbs', 'pound', 'pounds'],
  stone: ['stone'],
}

const OWNERS: Readonly<Record<string, UnitOwner>> = {
  us: 'us',
  american: 'us',
  imperial: 'imperial',
  imp: 'imperial',
  metric: 'metric',
  au: 'au',
  australian: 'au',
}

const WORD_OF = new Map(
  Object.entries(SPELLINGS).flatMap(([word, spellings]) => spellings.map((spelling) => [spelling, word as UnitWord] as const)),
)

/** Reads "tbsp.", "T", "Fluid ounces", "US cup"; null when it is no measure of volume or mass ("tin", "clove"). */
export const nameUnit = (text: string): NamedUnit | null => {
  const bare = text.trim().replaceAll('.', '')
  // The one pair of spellings that case tells apart.
  if (bare === 'T') return { word: 'tbsp', owner: null }
  if (bare === 't') return { word: 'tsp', owner: null }
  const words = bare.toLowerCase().split(/[ -]/).filter(Boolean)
  const owner = OWNERS[words[0] ?? ''] ?? null
  const word = WORD_OF.get((owner ? words.slice(1) : words).join(' '))
  return word ? { word, owner } : null
}

const SAID: Readonly<Record<UnitOwner, string>> = { us: 'US', imperial: 'imperial', metric: 'metric', au: 'AU' }

/** The text that `nameUnit` reads back: "AU tbsp". */
export const unitText = ({ word, owner }: NamedUnit): string => (owner ? `${SAID[owner]} ${word}` : word)

/** Which measures a text is written in, where it does not say so itself: a cup is another thing in each. */
export type Measures = 'us' | 'uk' | 'au' | 'metric'

const SPOONS_AND_CUPS: ReadonlySet<UnitWord> = new Set(['tsp', 'tbsp', 'cup'])
const OPEN: ReadonlySet<UnitWord> = new Set(['tsp', 'tbsp', 'cup', 'fl oz', 'pint', 'quart', 'gallon'])

/** Whether a word is another measure in other countries. */
export const isOpen = (word: UnitWord): boolean => OPEN.has(word)

/**
 * Whose measure a word is in a text of these measures: in Britain spoons and cups are metric while pints are imperial. Null where
 * that does not say: grams, or the pint of an Australian text.
 */
export const ownerIn = (measures: Measures, word: UnitWord): UnitOwner | null => {
  if (!isOpen(word)) return null
  if (measures === 'us') return 'us'
  if (measures === 'uk') return SPOONS_AND_CUPS.has(word) ? 'metric' : 'imperial'
  if (!SPOONS_AND_CUPS.has(word)) return null
  return measures === 'au' ? 'au' : 'metric'
}
