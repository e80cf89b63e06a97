import type { Evening } from '#lib/domain/evening.ts'
import { awayOf } from './need.ts'
import { readFood } from './read-food.ts'
import type { Trait } from './trait.ts'
import type { Need } from './verdict.ts'

// What is minded for how it is cooked or made stands on no label.
const ONLY_MINDED: ReadonlySet<Trait> = new Set<Trait>(['raw-egg', 'raw-meat', 'raw-fish', 'little-lactose', 'lead-shot'])

/** A label that somebody has to read before the food is used: a task for whoever shops. */
export interface LabelToCheck {
  readonly ingredient: string
  readonly dish: string
  readonly food: string
  readonly shop: string | null
  /** What to look for: what such a food often has, of what somebody keeps away from; all of it when needs are not known. */
  readonly look: readonly Trait[]
}

/**
 * Every label of the evening's dishes that is still to be read, in the order of the dishes: said to be read, or of a food that nobody has
 * looked at and that is more than one plain thing. `needs`: what guests keep away from, null for whoever may not know.
 */
export const labelsToCheck = (evening: Evening, needs: readonly Need[] | null = null): readonly LabelToCheck[] => {
  const served = new Set(evening.dishes.filter(({ state }) => state !== 'dropped').map(({ id }) => id))
  const each = needs?.map(({ need }) => awayOf(need, evening.rules)) ?? null
  // An allergen is looked for on every label, what a diet leaves out where such a food often has it.
  const looked = (trait: Trait) =>
    each === null || each.some((away) => away.traits.includes(trait) || away.hidden.includes(trait))
  const always = (each ?? []).flatMap((away) => (away.isAllergen ? away.traits.slice(0, 1) : []))
  return evening.ingredients
    .filter(({ dish, checked }) => served.has(dish) && checked !== 'known')
    .flatMap(({ id, dish, food, shop, checked, allergens }) => {
      const read = readFood(food, evening.rules)
      if (checked === 'unknown' && read.isPlain) return []
      const isSaid = (trait: Trait) => allergens.some((allergen) => allergen === trait)
      const likely = [...read.may.keys(), ...read.hidden.keys(), ...read.has.keys()].filter(looked)
      const look = [...new Set([...likely, ...always])].filter((trait) => !isSaid(trait) && !ONLY_MINDED.has(trait))
      return [{ ingredient: id, dish, food, shop: shop ?? null, look }]
    })
}
