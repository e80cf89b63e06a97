import type { Evening } from '#lib/domain/evening.ts'
import type { Ingredient } from '#lib/domain/ingredient.ts'
import type { Dish } from '#lib/domain/menu.ts'
import { type MainFood, mainFoodOf, mainFoodsIn } from './main-foods.ts'
import type { MainRule, Warning } from './warning.ts'

/** What a dish is mainly of, and how that was decided. */
export interface Main {
  readonly food: MainFood
  readonly by: MainRule
}

/**
 * What a dish is mainly made of, among the foods of our list: the only one of them ("only"); the one with at least half of their weight,
 * when all of them are weighed ("weight"); the first line's, when the dish's name has it too ("first"); without ingredients, the only one
 * that the name has ("name"). Null when none of these decides.
 */
export const mainOf = (dish: Pick<Dish, 'name'>, ingredients: readonly Pick<Ingredient, 'food' | 'amount'>[]): Main | null => {
  if (ingredients.length === 0) {
    const [food, ...others] = mainFoodsIn(dish.name)
    return food !== undefined && others.length === 0 ? { food, by: 'name' } : null
  }
  const lines = ingredients.flatMap((ingredient) => {
    const food = mainFoodOf(ingredient.food)
    return food === null ? [] : [{ food, grams: gramsOf(ingredient.amount) }]
  })
  const foods = new Set(lines.map(({ food }) => food))
  const [only] = foods
  if (only === undefined) return null
  if (foods.size === 1) return { food: only, by: 'only' }
  const sums = new Map<MainFood, number>()
  for (const { food, grams } of lines) sums.set(food, (sums.get(food) ?? 0) + (grams ?? Number.NaN))
  const all = [...sums.values()].reduce((total, each) => total + each, 0)
  for (const [food, grams] of sums) if (grams * 2 > all) return { food, by: 'weight' }
  const first = mainFoodOf(ingredients[0]?.food ?? '')
  return Number.isNaN(all) && first !== null && mainFoodsIn(dish.name).includes(first) ? { food: first, by: 'first' } : null
}

// Exact legal sizes (CLDR 48.2, supplemental units).
const GRAMS: Readonly<Record<string, number>> = { g: 1, kg: 1000, oz: 28.349523125, lb: 453.59237 }

/** Grams of an amount by weight, its lower end; null for all others. */
const gramsOf = (amount: Ingredient['amount']): number | null => {
  const unit = amount === null ? undefined : GRAMS[amount.unit]
  if (amount === null || unit === undefined) return null
  const [over = 0, under = 1] = amount.n.split('/').map(Number)
  return (over / under) * unit
}

/** Dishes on the menu that are mainly of one and the same food; a variant and the dish it is of are one. */
export const sameMain = ({ dishes, ingredients }: Evening): Warning[] => {
  const found = new Map<MainFood, { readonly dish: string; readonly by: MainRule }[]>()
  for (const dish of dishes) {
    if (dish.state !== 'on' || dish.variant) continue
    const main = mainOf(
      dish,
      ingredients.filter((ingredient) => ingredient.dish === dish.id),
    )
    if (main) found.set(main.food, [...(found.get(main.food) ?? []), { dish: dish.id, by: main.by }])
  }
  return [...found].flatMap(([food, mains]) => (mains.length > 1 ? [{ kind: 'same-main' as const, food, dishes: mains }] : []))
}
