import { Allergen, type Rules } from '#lib/domain/ingredient.ts'
import type { NeedGrade } from '#lib/domain/people.ts'
import { ALSO_FLAGGED, isListed, nutsOf, RULES_SOURCE } from './allergen-rules.ts'
import type { SourceKey } from './source.ts'
import { type Trait, traitsOfWord } from './trait.ts'

/** What a need keeps away from, and what is asked about it. */
export interface Away {
  readonly need: string
  readonly traits: readonly Trait[]
  /** Whether somebody minds it differs from guest to guest, or from list to list. */
  readonly ask: readonly Trait[]
  /** What a label need not tell; its maker or seller does. */
  readonly hidden: readonly Trait[]
  /** Kept away from unless it is cooked through. */
  readonly raw: readonly Trait[]
  /** Said of an ingredient without its kind: "nuts", where one nut is meant. */
  readonly vague: Trait | null
  /** A label that names the need outweighs what else is said: lactose-free milk. */
  readonly labelDecides: boolean
  /** Ingredients alone do not tell whether it is kept. */
  readonly beyond: boolean
  /** An allergen: what a label does not have to name may be in it. */
  readonly isAllergen: boolean
  readonly source: SourceKey
}

const ALIASES: ReadonlyMap<string, string> = new Map([
  ...['coeliac', 'gluten-free', 'no-gluten', 'celiac'].map((word) => [word, 'gluten'] as const),
  ...['lactose-free', 'no-lactose'].map((word) => [word, 'lactose'] as const),
  ...['dairy', 'dairy-free', 'no-milk'].map((word) => [word, 'milk'] as const),
  ...['egg', 'egg-free', 'no-egg'].map((word) => [word, 'eggs'] as const),
  ...['nut', 'nut-free', 'tree-nuts'].map((word) => [word, 'nuts'] as const),
  ...['no-alcohol', 'alcohol-free'].map((word) => [word, 'alcohol'] as const),
  ...['peanut', 'no-peanuts'].map((word) => [word, 'peanuts'] as const),
  ...['soy', 'soybeans'].map((word) => [word, 'soya'] as const),
  ['no-pork', 'pork'],
  ['no-meat', 'meat'],
  ['pregnant', 'pregnancy'],
  ['weak-immunity', 'low-immunity'],
  ['immunity', 'low-immunity'],
  ['crustacean', 'crustaceans'],
  ['mollusc', 'molluscs'],
  ['celeriac', 'celery'],
  ['sulphite', 'sulphites'],
  ['sulfites', 'sulphites'],
])

/** One word for needs that are the same: "gluten-free" and "coeliac" are both "gluten". */
export const sameNeed = (need: string): string => ALIASES.get(need) ?? need

/** Whether these grades leave no room for what is only likely. */
export const isAllergyGrade = (grade: NeedGrade): boolean => grade === 'allergy' || grade === 'severe'

// Who eats so much less needs no more than who eats less: what is right for a vegan is right for a vegetarian.
const WIDER: Readonly<Record<string, readonly string[]>> = {
  vegetarian: ['vegan'],
  pescatarian: ['vegan', 'vegetarian'],
  meat: ['vegan', 'vegetarian'],
}

/** Whether one of these words, of a swap or a label, is said for this need. */
export const isFor = (words: readonly string[], need: string): boolean => {
  const same = sameNeed(need)
  return words.some((word) => sameNeed(word) === same || (WIDER[same] ?? []).includes(sameNeed(word)))
}

const MEAT: readonly Trait[] = ['meat', 'poultry', 'gelatine', 'lard', 'rennet', 'carmine']
const FISH: readonly Trait[] = ['fish', 'crustaceans', 'molluscs']
const AT_RISK: readonly Trait[] = ['raw-egg', 'raw-meat', 'raw-fish', 'cured-fish', 'cured-meat', 'mould-cheese', 'sprouts']

const plain = { ask: [], hidden: [], raw: [], vague: null, labelDecides: false, beyond: false, isAllergen: false } as const

const DIETS: Readonly<Record<string, Omit<Away, 'need'>>> = {
  vegetarian: {
    ...plain,
    traits: [...MEAT, ...FISH, 'isinglass'],
    hidden: ['rennet', 'isinglass', 'gelatine', 'carmine'],
    source: 'iso-23662',
  },
  vegan: {
    ...plain,
    traits: [...MEAT, ...FISH, 'isinglass', 'milk', 'eggs', 'honey'],
    hidden: ['rennet', 'isinglass', 'gelatine', 'carmine'],
    source: 'iso-23662',
  },
  pescatarian: { ...plain, traits: MEAT, hidden: ['rennet', 'gelatine', 'carmine'], source: 'practice' },
  meat: { ...plain, traits: MEAT, hidden: ['rennet', 'gelatine'], source: 'practice' },
  pork: { ...plain, traits: ['pork', 'lard'], hidden: ['gelatine'], labelDecides: true, source: 'practice' },
  alcohol: { ...plain, traits: ['alcohol'], source: 'usda-retention' },
  honey: { ...plain, traits: ['honey'], source: 'practice' },
  lactose: { ...plain, traits: ['milk'], ask: ['little-lactose'], labelDecides: true, source: 'efsa-lactose' },
  halal: {
    ...plain,
    traits: ['pork', 'lard', 'alcohol'],
    hidden: ['meat', 'poultry', 'game', 'gelatine', 'rennet', 'isinglass'],
    labelDecides: true,
    source: 'codex-24',
  },
  kosher: {
    ...plain,
    traits: ['pork', 'lard', 'crustaceans', 'molluscs'],
    hidden: ['meat', 'poultry', 'game', 'gelatine', 'rennet', 'isinglass', 'alcohol'],
    beyond: true,
    source: 'kosher-basics',
  },
  pregnancy: {
    ...plain,
    traits: ['alcohol', 'unpasteurised', 'liver', 'pate', 'predator-fish', 'lead-shot'],
    raw: AT_RISK,
    labelDecides: true,
    source: 'nhs-pregnancy',
  },
  'low-immunity': { ...plain, traits: ['unpasteurised', 'pate'], raw: AT_RISK, labelDecides: true, source: 'at-risk' },
}

const isAllergenWord = (word: string): word is Allergen => Allergen.options.some((allergen) => allergen === word)

const NUT_KINDS: ReadonlySet<Trait> = new Set(nutsOf('strictest'))

/**
 * What a need keeps away from under these rules. Nuts are those that the rules name; others that people take for nuts are asked about.
 * A need of its own word ("chicory") is never confirmed from ingredients: a food may be in another one that does not name it.
 */
export const awayOf = (word: string, rules: Rules): Away => {
  const need = sameNeed(word)
  const diet = Object.hasOwn(DIETS, need) ? DIETS[need] : undefined
  if (diet) return { need, ...diet }
  const allergen = { ...plain, need, isAllergen: true, source: RULES_SOURCE[rules] }
  if (need === 'nuts') {
    const kinds = nutsOf(rules)
    const ask = ALSO_FLAGGED.filter((trait) => trait !== 'buckwheat' && !kinds.includes(trait))
    return { ...allergen, traits: ['nuts', ...kinds], ask, source: rules === 'us' ? 'us-tree-nuts' : allergen.source }
  }
  if (need === 'gluten')
    return {
      ...allergen,
      traits: ['gluten', 'wheat', 'rye', 'barley', 'oats'],
      source: isListed('gluten', rules) ? allergen.source : 'codex-118',
    }
  if (need === 'wheat') return { ...allergen, traits: ['wheat'], vague: 'gluten' }
  if (isAllergenWord(need)) return { ...allergen, traits: [need] }
  const traits = traitsOfWord(need)
  if (traits.length === 0) return { ...plain, need, traits: [], beyond: true, source: 'practice' }
  return { ...allergen, traits, vague: traits.some((trait) => NUT_KINDS.has(trait)) ? 'nuts' : null, source: 'codex-1' }
}
