import { z } from 'zod'
import { Fraction, Id, line, OrderKey, Word } from './atoms.ts'

export const Rules = z.enum(['strictest', 'uk', 'eu', 'us', 'au'])
export type Rules = z.infer<typeof Rules>

/** Regulation (EU) No 1169/2011, Annex II, with wheat apart, as the US and AU/NZ lists name it on its own. */
export const Allergen = z.enum([
  'gluten',
  'wheat',
  'crustaceans',
  'eggs',
  'fish',
  'peanuts',
  'soya',
  'milk',
  'nuts',
  'celery',
  'mustard',
  'sesame',
  'sulphites',
  'lupin',
  'molluscs',
])
export type Allergen = z.infer<typeof Allergen>

export const Ingredient = z.strictObject({
  id: Id,
  dish: Id,
  order: OrderKey,
  step: Id.optional(),
  food: line(200).min(1),
  /** null: to taste. */
  amount: z.strictObject({ n: Fraction, upTo: Fraction.optional(), unit: line(40) }).nullable(),
  scales: z.enum(['yes', 'whole', 'by-taste', 'no']),
  allergens: z.array(Allergen).max(15),
  /** Whether the allergens are all known; a label to check is never safe until checked. */
  checked: z.enum(['known', 'check-label', 'unknown']),
  /** The rules under which the label was read: it may be silent about what they do not list. */
  labelRules: Rules.optional(),
  contains: z.array(Word).max(20),
  /** Needs that its label or maker names as met: "vegan", "gluten-free"; for pregnancy also pasteurised, or eggs that may be eaten runny. */
  suits: z.array(Word).max(20).optional(),
  swap: z.strictObject({ for: z.array(Word).max(20), food: line(200) }).optional(),
  shop: line(80).optional(),
  aisle: line(80).optional(),
  abv: z.number().min(0).max(96).optional(),
})
export type Ingredient = z.infer<typeof Ingredient>
