import type { Evening } from '#lib/domain/evening.ts'
import type { Dish } from '#lib/domain/menu.ts'

/** FNV-1a, 32 bits, from a seed (Fowler, Noll, Vo). Tells changes apart, and keeps no secret. */
const fnv = (text: string, seed: number): number => {
  let hash = seed
  for (let at = 0; at < text.length; at += 1) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193)
  return hash >>> 0
}

/**
 * A short mark of what a dish is made of and in which kitchen: it changes when an ingredient, what is said of it, the dish it is a
 * variant of or the kitchen does. Amounts and places in the list do not count.
 */
export const madeOf = (evening: Pick<Evening, 'ingredients'>, dish: Dish): string => {
  const of = new Set([dish.id, ...(dish.variant ? [dish.variant.of] : [])])
  const lines = evening.ingredients
    .filter((one) => of.has(one.dish))
    .map(({ food, allergens, checked, labelRules, contains, suits, swap, abv }) =>
      JSON.stringify([food, allergens, checked, labelRules ?? null, contains, suits ?? [], swap ?? null, abv ?? 0]),
    )
    .toSorted()
  const text = JSON.stringify([dish.kitchen, dish.variant ?? null, lines])
  return `${fnv(text, 0x811c9dc5).toString(36)}${fnv(text, 0x9747b28c).toString(36)}`
}
