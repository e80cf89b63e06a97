import type { Rules } from '#lib/domain/ingredient.ts'
import { FOOD_ROWS, type FoodRow, PLAIN_FOODS } from './food-rows.ts'
import type { SourceKey } from './source.ts'
import { type Trait, traitsOfWord, withParents } from './trait.ts'

/** What a food's own words tell of it. */
export interface FoodReading {
  readonly has: ReadonlyMap<Trait, SourceKey>
  readonly may: ReadonlyMap<Trait, SourceKey>
  /** What a label need not say. */
  readonly hidden: ReadonlyMap<Trait, SourceKey>
  /** Traits of `may` that the asked rules exempt. */
  readonly exempt: ReadonlySet<Trait>
  /** What the name claims to be without: "vegan butter", "gluten-free flour". */
  readonly claims: ReadonlySet<Trait>
  /** One thing and nothing else, by its name. */
  readonly isPlain: boolean
}

const singular = (word: string): string => {
  if (/ies?$/.test(word) && word.length > 4) return word.replace(/ies?$/, 'y')
  if (/(ch|sh|x|ss|o)es$/.test(word)) return word.slice(0, -2)
  return /[^sui]s$/.test(word) ? word.slice(0, -1) : word
}

/** Lower case, without accents, letters only, each word in its singular. */
export const plainWords = (text: string): string[] =>
  text
    .toLowerCase()
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .split(/[^a-z]+/)
    .filter(Boolean)
    .map(singular)

interface Phrase {
  readonly words: readonly string[]
  readonly row: FoodRow
}

/** The phrases that begin with a word, the longest first. */
const PHRASES: ReadonlyMap<string, readonly Phrase[]> = (() => {
  const found = new Map<string, Phrase[]>()
  for (const row of FOOD_ROWS)
    for (const name of row.names) {
      const words = plainWords(name)
      const [first] = words
      if (first !== undefined) found.set(first, [...(found.get(first) ?? []), { words, row }])
    }
  for (const [first, phrases] of found)
    found.set(
      first,
      phrases.toSorted((a, b) => b.words.length - a.words.length),
    )
  return found
})()

const PLAIN: ReadonlySet<string> = new Set(PLAIN_FOODS.map((name) => plainWords(name).join(' ')))
// Words that change nothing of what is in a food.
const IDLE = new Set(
  'fresh freshly organic good quality cold ice warm raw large medium small big ripe firm young old fine coarse flaky extra virgin pressed unwaxed whole flat leaf leave sprig bunch handful head stalk with of a the and chopped sliced thin thinly finely roughly peeled washed'
    .split(' ')
    .map(singular),
)

const isPlainHead = (text: string): boolean => {
  const head = plainWords(text.split(/[,(;]/)[0] ?? '')
  if (PLAIN.has(head.join(' '))) return true
  const words = head.filter((word) => !IDLE.has(word))
  // "chicory and radicchio": each of them is.
  return words.length > 0 && (PLAIN.has(words.join(' ')) || words.every((word) => PLAIN.has(word)))
}

const ANIMAL: readonly Trait[] = [
  'meat',
  'poultry',
  'pork',
  'game',
  'lard',
  'gelatine',
  'rennet',
  'carmine',
  'isinglass',
  'liver',
  'raw-meat',
  'cured-meat',
]
const SEA: readonly Trait[] = ['fish', 'crustaceans', 'molluscs', 'raw-fish', 'cured-fish']
const FREE_OF: ReadonlyMap<string, readonly Trait[]> = new Map<string, readonly Trait[]>([
  ['gluten', ['gluten', 'wheat', 'rye', 'barley', 'oats']],
  ['dairy', ['milk', 'little-lactose']],
  ['milk', ['milk', 'little-lactose']],
  ['egg', ['eggs', 'raw-egg']],
  ['meat', ANIMAL],
  ['alcohol', ['alcohol']],
])

/** "vegan", "dairy-free", "non-alcoholic": what a name says is not in it. */
const claimsIn = (words: readonly string[]): ReadonlySet<Trait> => {
  const claims = new Set<Trait>()
  const claim = (traits: readonly Trait[]) => {
    for (const trait of traits) claims.add(trait)
  }
  for (const [at, word] of words.entries()) {
    const next = words[at + 1]
    if (word === 'vegan' || (word === 'plant' && next === 'based'))
      claim([...ANIMAL, ...SEA, 'milk', 'little-lactose', 'eggs', 'raw-egg', 'honey', 'mould-cheese'])
    if (word === 'vegetarian') claim([...ANIMAL, ...SEA])
    if (word === 'pasteurised') claim(['unpasteurised', 'raw-egg'])
    if (word === 'free') claim(FREE_OF.get(words[at - 1] ?? '') ?? traitsOfWord(words[at - 1] ?? ''))
    if (word === 'non' && next === 'alcoholic') claim(['alcohol'])
  }
  return claims
}

// The same foods are read again at every change of the plan.
const known = new Map<string, FoodReading>()
const MOST_KNOWN = 4000

/** What a food's own words tell of it under these rules. */
export const readFood = (food: string, rules: Rules): FoodReading => {
  const key = `${rules} ${food}`
  const before = known.get(key)
  if (before) return before
  if (known.size >= MOST_KNOWN) known.clear()
  const reading = readWords(food, rules)
  known.set(key, reading)
  return reading
}

/** Reads a food's words: the longest name of the map at each place counts, what is claimed to be missing is not counted as there. */
const readWords = (food: string, rules: Rules): FoodReading => {
  const words = plainWords(food)
  const claims = claimsIn(words)
  const [has, may, hidden] = [new Map<Trait, SourceKey>(), new Map<Trait, SourceKey>(), new Map<Trait, SourceKey>()]
  const exempt = new Set<Trait>()
  const put = (into: Map<Trait, SourceKey>, traits: readonly Trait[], source: SourceKey) => {
    for (const trait of withParents(traits)) if (!into.has(trait) && !claims.has(trait)) into.set(trait, source)
  }
  for (let at = 0; at < words.length; ) {
    const phrase = PHRASES.get(words[at] ?? '')?.find((one) => one.words.every((word, index) => words[at + index] === word))
    // "gluten-free": the word before "free" names what is not there.
    if (phrase && words[at + phrase.words.length] !== 'free') {
      put(has, phrase.row.has, phrase.row.source)
      put(may, phrase.row.may, phrase.row.source)
      put(hidden, phrase.row.hidden, phrase.row.source)
      if (phrase.row.exempt?.includes(rules)) for (const trait of withParents(phrase.row.may)) exempt.add(trait)
    }
    at += phrase ? phrase.words.length : 1
  }
  return { has, may, hidden, exempt, claims, isPlain: isPlainHead(food) && may.size + hidden.size === 0 }
}
