import type { Rules } from '#lib/domain/ingredient.ts'
import type { SourceKey } from './source.ts'
import type { Trait } from './trait.ts'

const EVERYWHERE: readonly Trait[] = ['wheat', 'crustaceans', 'eggs', 'fish', 'peanuts', 'soya', 'milk', 'sesame', 'sulphites']
const EU_NUTS: readonly Trait[] = ['almond', 'brazil-nut', 'cashew', 'hazelnut', 'macadamia', 'pecan', 'pistachio', 'walnut']

// Regulation (EU) No 1169/2011, Annex II: 14. FALCPA and FASTER Act: 9, with the twelve tree nuts of FDA's fifth edition; sulphites
// stand on US labels from 10 ppm by a rule of their own (from memory). Food Standards Code, Schedule 9: by name; gluten is named beside
// wheat, rye, barley and oats. FDA took coconut and chestnut away on 6 January 2025; pine nuts are American and Australian, not European.
const LISTED: Readonly<Record<Exclude<Rules, 'strictest'>, ReadonlySet<Trait>>> = {
  eu: new Set([...EVERYWHERE, 'gluten', 'rye', 'barley', 'oats', 'nuts', ...EU_NUTS, 'celery', 'mustard', 'lupin', 'molluscs']),
  uk: new Set([...EVERYWHERE, 'gluten', 'rye', 'barley', 'oats', 'nuts', ...EU_NUTS, 'celery', 'mustard', 'lupin', 'molluscs']),
  us: new Set([...EVERYWHERE, 'nuts', ...EU_NUTS, 'pine-nut']),
  au: new Set([...EVERYWHERE, 'gluten', 'rye', 'barley', 'oats', 'nuts', ...EU_NUTS, 'pine-nut', 'lupin', 'molluscs']),
}

/** Foods that no list, or not every list, counts as an allergen, and that people react to all the same: they are pointed out. */
export const ALSO_FLAGGED: readonly Trait[] = ['coconut', 'chestnut', 'pine-nut', 'buckwheat']

const STRICTEST: ReadonlySet<Trait> = new Set([...LISTED.eu, ...LISTED.us, ...LISTED.au, ...ALSO_FLAGGED])

/** Whether a label under these rules has to name it. The strictest name what any of them names, and what is pointed out besides. */
export const isListed = (trait: Trait, rules: Rules): boolean =>
  rules === 'strictest' ? STRICTEST.has(trait) : LISTED[rules].has(trait)

/** Whether it is an allergen of any list at all. */
export const isAllergenTrait = (trait: Trait): boolean => STRICTEST.has(trait)

/** Tree nuts as these rules have them. */
export const nutsOf = (rules: Rules): readonly Trait[] => (rules === 'eu' || rules === 'uk' ? EU_NUTS : [...EU_NUTS, 'pine-nut'])

export const RULES_SOURCE: Readonly<Record<Rules, SourceKey>> = {
  strictest: 'codex-1',
  eu: 'eu-1169',
  uk: 'eu-1169',
  us: 'us-falcpa',
  au: 'au-schedule-9',
}
