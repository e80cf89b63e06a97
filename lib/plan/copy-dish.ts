import type { Evening } from '#lib/domain/evening.ts'
import type { Step } from '#lib/domain/menu.ts'
import type { Brought } from './commands/bring.ts'

type Parts = Pick<Evening, 'dishes' | 'steps' | 'ingredients'>

const without = <T extends object, K extends keyof T>(value: T, ...keys: readonly K[]): Omit<T, K> => {
  const rest = { ...value }
  for (const key of keys) delete rest[key]
  return rest
}

/** Steps under fresh ids; what they wait for among themselves follows, other waits stay when `keeps` says so. */
const copiedSteps = (
  steps: readonly Step[],
  dish: string,
  newId: () => string,
  keeps: (step: string) => boolean,
): { readonly steps: Brought['steps']; readonly ids: ReadonlyMap<string, string> } => {
  const ids = new Map(steps.map((step) => [step.id, newId()]))
  const vessels = new Map<string, string>()
  const vesselOf = (vessel: string) => {
    const known = vessels.get(vessel) ?? newId()
    vessels.set(vessel, known)
    return known
  }
  return {
    ids,
    steps: steps.map((step) => ({
      ...without(step, 'order'),
      id: ids.get(step.id) ?? '',
      dish,
      after: step.after.flatMap((after) => {
        const own = ids.get(after.step)
        return own !== undefined || keeps(after.step) ? [{ ...after, step: own ?? after.step }] : []
      }),
      ...(step.vessel === undefined ? {} : { vessel: vesselOf(step.vessel) }),
    })),
  }
}

const copiedIngredients = (
  ingredients: Evening['ingredients'],
  dish: string,
  ids: ReadonlyMap<string, string>,
  newId: () => string,
): Brought['ingredients'] =>
  ingredients.map((ingredient) => {
    const step = ids.get(ingredient.step ?? '')
    return { ...without(ingredient, 'order', 'step'), id: newId(), dish, ...(step === undefined ? {} : { step }) }
  })

/**
 * The whole dish once more under fresh ids: pans, waits and ingredients keep to the copied steps; stand-in, variant and what its cook confirmed are left out,
 * and so are waits for steps of other dishes unless `keeps` says that they are there too.
 */
export const copiedDish = (
  of: Parts,
  id: string,
  newId: () => string,
  keeps: (step: string) => boolean = () => false,
): Brought | null => {
  const dish = of.dishes.find((each) => each.id === id)
  if (!dish) return null
  const fresh = newId()
  const own = of.steps.filter((step) => step.dish === id)
  const { steps, ids } = copiedSteps(own, fresh, newId, keeps)
  const ingredients = of.ingredients.filter((ingredient) => ingredient.dish === id)
  return {
    dish: { ...without(dish, 'order', 'standIn', 'variant', 'confirmed'), id: fresh },
    steps,
    ingredients: copiedIngredients(ingredients, fresh, ids, newId),
  }
}

/** Where a variant leaves its dish, for how many, what it is called and what it is without. */
export interface Fork {
  readonly step: string
  readonly portions: number
  readonly name: string
  /** Lower-case words: an ingredient of the later steps that has all of them is left out. */
  readonly without: string
}

/** Whether a food is what a variant is made without: all the words stand in its name. */
export const isWithout = (food: string, without: string): boolean => {
  const words = (text: string) =>
    text
      .toLowerCase()
      .split(/[^\p{L}]+/u)
      .filter(Boolean)
  const has = new Set(words(food))
  const wanted = words(without)
  return wanted.length > 0 && wanted.every((word) => has.has(word))
}

/**
 * A dish of its own for some of the covers: everything of the dish behind the fork once more, in pans of its own, its first steps
 * waiting for the common ones. What goes in up to the fork is shared and stays with the first dish. It is made where the dish is,
 * or in the host's kitchen when the common part has been carried there. Null when the dish has no such step.
 */
export const variantOf = (of: Parts & Pick<Evening, 'host'>, id: string, fork: Fork, newId: () => string): Brought | null => {
  const dish = of.dishes.find((each) => each.id === id)
  const own = of.steps.filter((step) => step.dish === id)
  const at = own.findIndex((step) => step.id === fork.step)
  if (!dish || at < 0) return null
  const fresh = newId()
  const [common, later] = [own.slice(0, at + 1), own.slice(at + 1)]
  const { steps, ids } = copiedSteps(later, fresh, newId, () => true)
  const isCarried = (some: readonly Step[]) => some.some((step) => step.role === 'carry')
  const left = of.ingredients.filter(
    (each) => each.dish === id && ids.has(each.step ?? '') && !isWithout(each.food, fork.without),
  )
  return {
    dish: {
      ...without(dish, 'order', 'standIn', 'variant', 'confirmed'),
      id: fresh,
      name: fork.name,
      kitchen: isCarried(common) && !isCarried(later) ? of.host : dish.kitchen,
      portions: fork.portions,
      variant: { of: id, fork: fork.step, portions: fork.portions },
      notes: '',
    },
    steps: steps.map((step) => (step.after.length > 0 ? step : { ...step, after: [forkLag(fork.step)] })),
    ingredients: copiedIngredients(left, fresh, ids, newId),
  }
}

const forkLag = (step: string): Step['after'][number] => ({ step, from: 'end', least: 'PT0S', kind: 'quality' })
