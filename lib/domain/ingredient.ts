import * as z from 'zod/mini'
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
  step: z.optional(Id),
  food: line(200).check(z.minLength(1)),
  /** null: to taste. */
  amount: z.nullable(z.strictObject({ n: Fraction, upTo: z.optional(Fraction), unit: line(40) })),
  scales: z.enum(['yes', 'whole', 'by-taste', 'no']),
  allergens: z.array(Allergen).check(z.maxLength(15)),
  /** Whether the allergens are all known; a label to check is never safe until checked. */
  checked: z.enum(['known', 'check-label', 'unknown']),
  /** The rules under which the label was read: it may be silent about what they do not list. */
  labelRules: z.optional(Rules),
  contains: z.array(Word).check(z.maxLength(20)),
  /** Needs that its label or maker names as met: "vegan", "gluten-free"; for pregnancy also pasteurised, or eggs that may be eaten runny. */
  suits: z.optional(z.array(Word).check(z.maxLength(20))),
  swap: z.optional(z.strictObject({ for: z.array(Word).check(z.maxLength(20)), food: line(200) })),
  shop: z.optional(line(80)),
  aisle: z.optional(line(80)),
  abv: z.optional(z.number().check(z.gte(0), z.lte(96))),
})
export type Ingredient = z.infer<typeof Ingredient>
