import * as z from 'zod/mini'
import { At, Duration, Id, line, Zone } from './atoms.ts'
import { Ingredient, Rules } from './ingredient.ts'
import { Cook, Kitchen } from './kitchen.ts'
import { Course, Dish, Step } from './menu.ts'
import { House, Offer } from './offer.ts'
import { Claim, Drink, Guest, NightFact } from './people.ts'
import { ShoppingNote, Tick } from './shopping.ts'
import { isDate } from './time.ts'

export const EVENING_FORMAT = 'tableward/1'

/** One dinner, whole: the file format, the demo, the tests and the planner's input. */
export const Evening = z.strictObject({
  format: z.literal(EVENING_FORMAT),
  id: Id,
  name: line(120),
  /** yyyy-mm-dd in `zone`. */
  date: z.string().check(z.refine(isDate, 'must be a date, yyyy-mm-dd')),
  zone: Zone,
  guestsFrom: At,
  sitDown: At,
  covers: z.int().check(z.gte(1), z.lte(60)),
  /** How many of the covers drink alcohol, as a host said; who they are is never in the plan. */
  drinkers: z.optional(z.int().check(z.gte(0), z.lte(60))),
  /** So long before the guests come, the hosts would rather have nothing to do. */
  quietBefore: z.optional(Duration),
  rules: Rules,
  /** What the house has of chairs, plates and the like, as far as it was said. */
  house: z.optional(House),
  /** The kitchen beside the table. */
  host: Id,
  kitchens: z.array(Kitchen).check(z.maxLength(12)),
  cooks: z.array(Cook).check(z.maxLength(24)),
  courses: z.array(Course).check(z.maxLength(24)),
  dishes: z.array(Dish).check(z.maxLength(120)),
  steps: z.array(Step).check(z.maxLength(600)),
  ingredients: z.array(Ingredient).check(z.maxLength(2000)),
  drinks: z.array(Drink).check(z.maxLength(120)),
  /** What cooks bring, or would; absent when nobody does. */
  offers: z.optional(z.array(Offer).check(z.maxLength(120))),
  guests: z.array(Guest).check(z.maxLength(120)),
  claims: z.array(Claim).check(z.maxLength(1000)),
  night: z.array(NightFact).check(z.maxLength(5000)),
  /** Absent when empty, as all lists that came later are. */
  shopping: z.optional(z.array(ShoppingNote).check(z.maxLength(1000))),
  ticks: z.optional(z.array(Tick).check(z.maxLength(2000))),
})
export type Evening = z.infer<typeof Evening>

/** Sorts siblings as every screen and every plan sees them: by order key, ties by id. */
export const bySiblingOrder = (a: { order: string; id: string }, b: { order: string; id: string }): number =>
  a.order < b.order ? -1 : a.order > b.order ? 1 : a.id < b.id ? -1 : a.id > b.id ? 1 : 0
