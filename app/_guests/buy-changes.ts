import { amountText, sensibleText } from '#app/_words/amount.ts'
import { splitFood } from '#app/_words/food.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { portionsAt } from '#lib/domain/portions.ts'
import { type Exact, exact } from '#lib/quantities/exact.ts'
import { scaleAmount, scaleFactor } from '#lib/quantities/scale.ts'
import { sensible } from '#lib/quantities/sensible.ts'
import { readUnit, type Unit } from '#lib/quantities/units.ts'

/** A food whose amount another plan changes; null: not wanted at all. */
export interface BuyChange {
  readonly food: string
  readonly before: string | null
  readonly after: string | null
}

interface Wanted {
  readonly food: string
  readonly unit: string
  readonly of: Unit | null
  readonly amount: Exact
}

/** What runs from the tap is not bought. */
const isTapWater = (food: string): boolean => /^((ice-)?cold |hot |boiling |warm )?water$/.test(food)

/** Everything that the dishes on the menu take, the same food in the same measure once. Ranges count as their most; "to taste" not at all. */
const wantedOf = (evening: Evening): ReadonlyMap<string, Wanted> => {
  const found = new Map<string, Wanted>()
  for (const dish of evening.dishes)
    if (dish.state === 'on')
      for (const ingredient of evening.ingredients.filter((each) => each.dish === dish.id)) {
        const portions = portionsAt(evening, dish, ingredient.step)
        const { amount } = scaleAmount(ingredient, scaleFactor(dish.yields, [{ people: portions, portion: 1 }]))
        const food = splitFood(ingredient.food).food
        if (amount === null || isTapWater(food.toLowerCase())) continue
        const reading = readUnit(amount.unit, null)
        const of = reading.kind === 'unit' ? reading.unit : null
        const key = `${food.toLowerCase()} ${of ? of.kind : amount.unit}`
        const size = exact(amount.upTo ?? amount.n).mul(exact(of?.size ?? '1'))
        const known = found.get(key)
        found.set(key, { food: known?.food ?? food, unit: amount.unit, of, amount: size.add(known?.amount ?? 0) })
      }
  return found
}

const text = (wanted: Wanted | undefined): string | null => {
  if (!wanted) return null
  const { of, unit } = wanted
  if (!of) return amountText({ n: wanted.amount.toFraction(), unit })
  return sensibleText(sensible(wanted.amount.div(exact(of.size)), of), null, unit)
}

/** The foods that one would buy more or less of, in the order of the menu; what is new stands last. */
export const buyChanges = (before: Evening, after: Evening): readonly BuyChange[] => {
  const [old, now] = [wantedOf(before), wantedOf(after)]
  return [...new Set([...old.keys(), ...now.keys()])].flatMap((key) => {
    const [was, is] = [old.get(key), now.get(key)]
    const change = { food: (is ?? was)?.food ?? key, before: text(was), after: text(is) }
    return change.before === change.after ? [] : [change]
  })
}
