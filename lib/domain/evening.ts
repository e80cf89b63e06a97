import { z } from 'zod'
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
  date: z.string().refine(isDate, 'must be a date, yyyy-mm-dd'),
  zone: Zone,
  guestsFrom: At,
  sitDown: At,
  covers: z.int().min(1).max(60),
  /** How many of the covers drink alcohol, as a host said; who they are is never in the plan. */
  drinkers: z.int().min(0).max(60).optional(),
  /** So long before the guests come, the hosts would rather have nothing to do. */
  quietBefore: Duration.optional(),
  rules: Rules,
  /** What the house has of chairs, plates and the like, as far as it was said. */
  house: House.optional(),
  /** The kitchen beside the table. */
  host: Id,
  kitchens: z.array(Kitchen).max(12),
  cooks: z.array(Cook).max(24),
  courses: z.array(Course).max(24),
  dishes: z.array(Dish).max(120),
  steps: z.array(Step).max(600),
  ingredients: z.array(Ingredient).max(2000),
  drinks: z.array(Drink).max(120),
  /** What cooks bring, or would; absent when nobody does. */
  offers: z.array(Offer).max(120).optional(),
  guests: z.array(Guest).max(120),
  claims: z.array(Claim).max(1000),
  night: z.array(NightFact).max(5000),
  /** Absent when empty, as all lists that came later are. */
  shopping: z.array(ShoppingNote).max(1000).optional(),
  ticks: z.array(Tick).max(2000).optional(),
})
export type Evening = z.infer<typeof Evening>

/** Sorts siblings as every screen and every plan sees them: by order key, ties by id. */
export const bySiblingOrder = (a: { order: string; id: string }, b: { order: string; id: string }): number =>
  a.order < b.order ? -1 : a.order > b.order ? 1 : a.id < b.id ? -1 : a.id > b.id ? 1 : 0
