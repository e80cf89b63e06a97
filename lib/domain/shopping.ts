import * as z from 'zod/mini'
import { Fraction, Id, Instant, line, OrderKey } from './atoms.ts'

/** What a line of the shopping list is known by on every device: food, how it is counted, and the home or day where it is parted by them. */
export const LineKey = line(120).check(z.minLength(1))

/** An amount in the line's own unit: grams, millilitres, or what is counted. */
export const LineAmount = z.strictObject({ n: Fraction, unit: line(40) })
export type LineAmount = z.infer<typeof LineAmount>

/**
 * What people say of a line, or (with `text`) a line of their own. Two notes of one line are read as one, the first that says a thing
 * being right: two phones without a network may both have begun one.
 */
export const ShoppingNote = z.strictObject({
  id: Id,
  order: OrderKey,
  /** Absent where the note is a line of its own. */
  line: z.optional(LineKey),
  text: z.optional(line(120).check(z.minLength(1))),
  /** How much of it is in the house; "all" needs no figure. */
  have: z.optional(z.union([z.literal('all'), LineAmount])),
  /** The pack it comes in here. */
  pack: z.optional(LineAmount),
  /** So many packs or pieces, whatever the plan comes to. */
  buy: z.optional(z.int().check(z.gte(0), z.lte(999))),
  /** Whether the recipe's weight is as bought or ready to cook: the second wants more. */
  weighed: z.optional(z.enum(['bought', 'ready'])),
  /** In hundredths of whatever one pays with. */
  price: z.optional(z.int().check(z.gte(0), z.lte(9_999_999))),
  shop: z.optional(line(80)),
  aisle: z.optional(line(80)),
  /** Day on which it is bought, counted from the evening's. */
  day: z.optional(z.int().check(z.gte(-7), z.lte(1))),
  /** The cook who gets it. */
  by: z.optional(Id),
  /** Somebody read its label for the guests' allergies. */
  read: z.optional(z.strictObject({ by: z.optional(Id), at: Instant })),
})
export type ShoppingNote = z.infer<typeof ShoppingNote>

/**
 * Somebody has put the line into the basket. Each tick is an entry of its own: taking one back takes back those that one saw and no
 * other, so none is lost between two phones.
 */
export const Tick = z.strictObject({
  id: Id,
  line: LineKey,
  at: Instant,
  by: z.optional(Id),
  /** What the list asked for then; absent where it named no amount. */
  of: z.optional(LineAmount),
})
export type Tick = z.infer<typeof Tick>
