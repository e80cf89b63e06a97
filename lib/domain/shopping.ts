import { z } from 'zod'
import { Fraction, Id, Instant, line, OrderKey } from './atoms.ts'

/** What a line of the shopping list is known by on every device: food, how it is counted, and the home or day where it is parted by them. */
export const LineKey = line(120).min(1)

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
  line: LineKey.optional(),
  text: line(120).min(1).optional(),
  /** How much of it is in the house; "all" needs no figure. */
  have: z.union([z.literal('all'), LineAmount]).optional(),
  /** The pack it comes in here. */
  pack: LineAmount.optional(),
  /** So many packs or pieces, whatever the plan comes to. */
  buy: z.int().min(0).max(999).optional(),
  /** Whether the recipe's weight is as bought or ready to cook: the second wants more. */
  weighed: z.enum(['bought', 'ready']).optional(),
  /** In hundredths of whatever one pays with. */
  price: z.int().min(0).max(9_999_999).optional(),
  shop: line(80).optional(),
  aisle: line(80).optional(),
  /** Day on which it is bought, counted from the evening's. */
  day: z.int().min(-7).max(1).optional(),
  /** The cook who gets it. */
  by: Id.optional(),
  /** Somebody read its label for the guests' allergies. */
  read: z.strictObject({ by: Id.optional(), at: Instant }).optional(),
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
  by: Id.optional(),
  /** What the list asked for then; absent where it named no amount. */
  of: LineAmount.optional(),
})
export type Tick = z.infer<typeof Tick>
