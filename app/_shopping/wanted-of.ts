import { dayOf } from '#app/_words/clock.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Ingredient } from '#lib/domain/ingredient.ts'
import type { Dish } from '#lib/domain/menu.ts'
import type { KnownNeed } from '#lib/domain/people.ts'
import { portionsAt } from '#lib/domain/portions.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { toBuy } from '#lib/quantities/buy.ts'
import { type Exact, exact } from '#lib/quantities/exact.ts'
import { scaleAmount, scaleFactor } from '#lib/quantities/scale.ts'
import { readUnit, sizeOf, type Unit } from '#lib/quantities/units.ts'
import { weigh } from '#lib/quantities/weigh.ts'
import { countUnit } from '#lib/recipes/count-units.ts'
import { foodKey } from '#lib/shopping/food-key.ts'
import type { Measure, Refuse, Wanted } from '#lib/shopping/wanted.ts'
import { labelsToCheck } from '#lib/table/labels-to-check.ts'

/**
 * What every dish wants, for those who eat it. `needs`: what guests keep away from; null where that is not known here, and then every label
 * is read for all that its food often has.
 */
export const wantedOf = (evening: Evening, order: RunningOrder | null, needs: readonly KnownNeed[] | null): readonly Wanted[] => {
  const dishes = new Map(evening.dishes.filter(({ state }) => state !== 'dropped').map((dish) => [dish.id, dish]))
  const days = daysOf(evening, order)
  const labels = new Map(labelsToCheck(evening, needs).map(({ ingredient, look }) => [ingredient, look]))
  return evening.ingredients.flatMap((ingredient): Wanted[] => {
    const dish = dishes.get(ingredient.dish)
    if (!dish) return []
    const look = labels.get(ingredient.id)
    const { measure, unit } = measureOf(evening, dish, ingredient)
    return [
      {
        ingredient: ingredient.id,
        dish: dish.id,
        food: ingredient.food,
        measure,
        gramsPerMl: unit ? densityOf(ingredient.food, unit) : null,
        refuse: measure.kind === 'mass' || unit !== null ? refuseOf(ingredient.food) : null,
        home: dish.kitchen === evening.host ? null : dish.kitchen,
        day: days.get(ingredient.step ?? '') ?? days.get(dish.id) ?? null,
        shop: ingredient.shop,
        aisle: ingredient.aisle,
        // Where everybody's needs are known, a label that nobody minds is not read.
        label: look && (needs === null || look.length > 0) ? look : null,
      },
    ]
  })
}

/** The day on which each step begins in the running order, and each dish with its first; none without an order. */
const daysOf = (evening: Evening, order: RunningOrder | null): ReadonlyMap<string, number> => {
  const days = new Map<string, number>()
  const dishOf = new Map(evening.steps.map(({ id, dish }) => [id, dish]))
  const put = (id: string, day: number) => days.set(id, Math.min(day, days.get(id) ?? day))
  for (const { step, start } of order?.cues ?? []) {
    const day = dayOf(evening, start)
    put(step, day)
    const dish = dishOf.get(step)
    if (dish) put(dish, day)
  }
  return days
}

/** For the portions of its step, the most of a range; `unit` of a volume, for its density. */
const measureOf = (
  evening: Evening,
  dish: Dish,
  ingredient: Ingredient,
): { readonly measure: Measure; readonly unit: Unit | null } => {
  const portions = portionsAt(evening, dish, ingredient.step)
  const { amount } = scaleAmount(ingredient, scaleFactor(dish.yields, [{ people: portions, portion: 1 }]))
  if (amount === null) return { measure: { kind: 'taste' }, unit: null }
  const n = exact(amount.upTo ?? amount.n)
  const reading = readUnit(amount.unit, null)
  if (reading.kind !== 'unit') return { measure: { kind: 'count', n, unit: countedIn(amount.unit) }, unit: null }
  const size = sizeOf(n, reading.unit)
  return reading.unit.kind === 'mass'
    ? { measure: { kind: 'mass', grams: size }, unit: null }
    : { measure: { kind: 'volume', ml: size }, unit: reading.unit }
}

/** "" for whole ones of any size, "tin" for tins; other words as they are. */
const countedIn = (unit: string): string => {
  const word = unit.trim()
  if (/^(|pieces?|small|medium|large)$/i.test(word)) return ''
  return countUnit(word) ?? word
}

const densityOf = (food: string, unit: Unit): Wanted['gramsPerMl'] => {
  const [only, ...others] = weigh(food, exact('1'), unit)
  return only && others.length === 0 ? { value: only.value.div(exact(unit.size)), source: only.source } : null
}

const HUNDRED: Exact = exact('100')
const refuseOf = (food: string): Refuse | null => {
  const bought = toBuy(food, HUNDRED) ?? toBuy(foodKey(food), HUNDRED)
  return bought ? { percent: bought.refuse, what: bought.what, source: bought.source } : null
}
