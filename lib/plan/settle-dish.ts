import type { Evening } from '#lib/domain/evening.ts'
import type { Dish, Step } from '#lib/domain/menu.ts'
import type { Brought } from './commands/bring.ts'
import { copiedDish } from './copy-dish.ts'

/** A dish with all that is its own, as another evening has it. */
export interface Whole {
  readonly dish: Dish
  readonly steps: Evening['steps']
  readonly ingredients: Evening['ingredients']
  /** It was made away from its host's kitchen. */
  readonly away: boolean
}

/** What a copied dish does not have any more: its kitchen, its named oven, waits for other dishes, its stand-in, the dish it was a variant of. */
export type Cut = 'kitchen' | 'oven' | 'waits' | 'stand-in' | 'variant'

/**
 * A dish of another evening, for a course of this one: under fresh ids, in this host's kitchen and so carried nowhere, on the menu, for
 * this evening's covers, in whichever oven there is. `cuts`: what it lost by that.
 */
export const settledDish = (
  whole: Whole,
  into: { readonly course: string; readonly host: string },
  newId: () => string,
): { readonly brought: Brought; readonly cuts: readonly Cut[] } | null => {
  const here = whole.away ? withoutCarry(whole.steps) : whole.steps
  const copied = copiedDish({ dishes: [whole.dish], steps: here, ingredients: whole.ingredients }, whole.dish.id, newId)
  if (!copied) return null
  const own = new Set(here.map((step) => step.id))
  const { carry, portions, ...dish } = copied.dish
  const kept = { ...dish.keeps, uses: dish.keeps.uses.map(anyOven) }
  const cuts: readonly (Cut | false)[] = [
    whole.away && 'kitchen',
    (here.some((step) => step.ways.some((way) => way.uses.some(isNamed))) || dish.keeps.uses.some(isNamed)) && 'oven',
    here.some((step) => step.after.some((after) => !own.has(after.step))) && 'waits',
    whole.dish.standIn !== undefined && 'stand-in',
    whole.dish.variant !== undefined && 'variant',
  ]
  return {
    brought: {
      ...copied,
      dish: { ...dish, course: into.course, kitchen: into.host, state: 'on', keeps: kept },
      steps: copied.steps.map((step) => ({
        ...step,
        ways: step.ways.map((way) => ({ ...way, uses: way.uses.map(anyOven) })),
      })),
    },
    cuts: cuts.filter((cut): cut is Cut => cut !== false),
  }
}

type Use = Step['ways'][number]['uses'][number]

const isNamed = (use: Use): boolean => use.kind === 'oven' && use.oven !== undefined

const anyOven = (use: Use): Use => {
  if (use.kind !== 'oven') return use
  const { oven, ...any } = use
  return any
}

/** The steps without those that carry; what waited for one of them waits for what it waited for. */
const withoutCarry = (steps: readonly Step[]): Step[] => {
  const carries = new Map(steps.filter((step) => step.role === 'carry').map((step) => [step.id, step]))
  const waits = (after: Step['after'], seen: ReadonlySet<string>): Step['after'] =>
    after.flatMap((one) => {
      const carry = carries.get(one.step)
      if (!carry) return [one]
      return seen.has(carry.id) ? [] : waits(carry.after, new Set(seen).add(carry.id))
    })
  return steps
    .filter((step) => !carries.has(step.id))
    .map((step) => {
      const found = waits(step.after, new Set())
      return {
        ...step,
        after: found.filter((one, at) => found.findIndex((other) => other.step === one.step) === at).slice(0, 20),
      }
    })
}
