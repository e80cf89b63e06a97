import { bySiblingOrder, type Evening } from '#lib/domain/evening.ts'
import type { Dish } from '#lib/domain/menu.ts'
import { type Claim, type NightFact, nightKey } from '#lib/domain/people.ts'

interface Sibling {
  readonly id: string
  readonly order: string
}

/** Children in the order of their parents, then their own; those without a parent in the list come last. */
export const byParent = <T extends Sibling>(
  items: readonly T[],
  parents: readonly { id: string }[],
  parentOf: (item: T) => string | null,
): T[] => {
  const place = new Map(parents.map((parent, index) => [parent.id, index]))
  const placed = items.map((item) => {
    const parent = parentOf(item)
    return { item, at: (parent === null ? undefined : place.get(parent)) ?? parents.length }
  })
  return placed.sort((a, b) => a.at - b.at || bySiblingOrder(a.item, b.item)).map(({ item }) => item)
}

/** Dishes by their courses, then by their own order. */
export const dishesInOrder = (dishes: readonly Dish[], courses: readonly { id: string }[]): Dish[] =>
  byParent(dishes, courses, (dish) => dish.course)

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

/** One claim a target: the first; by target. */
export const claimsInOrder = (claims: readonly Claim[]): Claim[] => {
  const first = new Map<string, Claim>()
  for (const claim of claims) if (!first.has(claim.target)) first.set(claim.target, claim)
  return [...first.values()].toSorted((a, b) => byText(a.target, b.target))
}

/** One fact a subject, a later one adding to and overruling an earlier one; by subject. */
export const nightInOrder = (night: readonly NightFact[]): NightFact[] => {
  const facts = new Map<string, NightFact>()
  for (const fact of night) facts.set(nightKey(fact), { ...facts.get(nightKey(fact)), ...fact } as NightFact)
  return [...facts.values()].toSorted((a, b) => byText(nightKey(a), nightKey(b)))
}

/**
 * The evening as the plan gives it back: every list in its one order, kitchens and cooks as they stand, no guests. What
 * is written and read again is exactly this.
 */
export const inReadingOrder = (evening: Evening): Evening => {
  const courses = evening.courses.toSorted(bySiblingOrder)
  const dishes = dishesInOrder(evening.dishes, courses)
  return {
    ...evening,
    courses,
    dishes,
    steps: byParent(evening.steps, dishes, (step) => step.dish),
    ingredients: byParent(evening.ingredients, dishes, (ingredient) => ingredient.dish),
    drinks: byParent(evening.drinks, courses, (drink) => drink.course),
    ...(evening.offers && evening.offers.length > 0 ? { offers: evening.offers.toSorted(bySiblingOrder) } : {}),
    guests: [],
    claims: claimsInOrder(evening.claims),
    night: nightInOrder(evening.night),
  }
}
