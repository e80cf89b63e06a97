import { APART } from '#app/_words/calendar.ts'
import type { Evening } from '#lib/domain/evening.ts'

/**
 * The evening as it may stand in a calendar, which is read on other people's computers: no guests, nothing of what is kept from whom, and
 * what is made for some of them goes by the name of what all have.
 */
export const discreet = (evening: Evening): Evening => {
  const nameOf = (id: string, own: string) => evening.dishes.find((dish) => dish.id === id)?.name ?? own
  return {
    ...evening,
    guests: [],
    dishes: evening.dishes.map(({ confirmed: _, ...dish }) =>
      dish.variant ? { ...dish, name: nameOf(dish.variant.of, dish.name) } : dish,
    ),
    steps: evening.steps.map(({ guard, ...step }) => (guard ? { ...step, does: APART } : step)),
  }
}
