import { bySiblingOrder, type Evening } from './evening.ts'
import type { Dish } from './menu.ts'

type Of = Pick<Evening, 'covers' | 'courses' | 'dishes' | 'steps'>

/** How many eat a course: the covers, or the children whose own it is. */
export const coversOf = ({ covers, courses }: Pick<Of, 'covers' | 'courses'>, course: string): number =>
  courses.find(({ id }) => id === course)?.children?.covers ?? covers

/** How many there are in all: the covers, and beside them the children who eat before; who has two courses of their own is there once. */
export const headsOf = ({ covers, courses }: Pick<Of, 'covers' | 'courses'>): number =>
  covers + Math.max(0, ...courses.map(({ children }) => children?.covers ?? 0))

/** How many are to be fed from a dish, those with a variant of it included; a variant feeds its own. */
export const portionsOf = (of: Pick<Of, 'covers' | 'courses'>, dish: Dish): number =>
  dish.variant?.portions ?? dish.portions ?? coversOf(of, dish.course)

/**
 * For how many of a dish's portions a step of it is made: behind the fork of a variant that is on, only for the others. When
 * nobody would be left, or when it is no step of the dish, for all.
 */
export const portionsAt = (of: Of, dish: Dish, step: string | undefined): number => {
  const whole = portionsOf(of, dish)
  const variants = of.dishes.filter(({ state, variant }) => state === 'on' && variant?.of === dish.id)
  if (variants.length === 0) return whole
  const own = of.steps.filter((each) => each.dish === dish.id).sort(bySiblingOrder)
  const at = own.findIndex(({ id }) => id === step)
  const before = new Set(own.slice(0, Math.max(0, at)).map(({ id }) => id))
  const left = variants
    .filter(({ variant }) => variant !== undefined && before.has(variant.fork))
    .reduce((sum, { variant }) => sum + (variant?.portions ?? 0), 0)
  return left < whole ? whole - left : whole
}
