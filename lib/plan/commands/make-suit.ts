import type * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import { type Fork, variantOf } from '#lib/plan/copy-dish.ts'
import { type Brought, bringDish } from './bring.ts'
import type { EditFault } from './fault.ts'
import { remove } from './remove.ts'
import { type Edited, type Patch, setEach } from './set.ts'
import { presentEntry } from './siblings.ts'

/** Another food in place of an ingredient, for these needs; an empty food: it is left out. */
export interface Swap {
  readonly ingredient: string
  readonly food: string
  readonly needs: readonly string[]
}

/**
 * What is known of a food that takes another's place: that it was named for these needs, and no more. Its label is still to be read. An
 * amount of its own ("10 g of cornflour") stands in its words.
 */
const swapped = ({ food, needs }: Swap) =>
  ({
    food,
    ...(/^[\d½⅓⅔¼¾]/.test(food) ? { amount: null } : {}),
    allergens: [],
    contains: [],
    checked: 'check-label',
    labelRules: undefined,
    suits: [...needs],
    swap: undefined,
    abv: undefined,
  }) satisfies Patch<'ingredients'>

/** Changes ingredients of a dish for everybody who eats it, all or none. */
export const swapIn = (doc: Y.Doc, swaps: readonly Swap[]): Edited => {
  const [out, other] = [swaps.filter(({ food }) => food === ''), swaps.filter(({ food }) => food !== '')]
  const lost = out.find(({ ingredient }) => !presentEntry(doc, 'ingredients', ingredient))
  if (lost) return fail({ kind: 'unknown-entry', root: 'ingredients', id: lost.ingredient })
  return doc.transact(() => {
    const changed = setEach(
      doc,
      'ingredients',
      other.map((swap) => [swap.ingredient, swapped(swap)]),
    )
    if (changed.ok) for (const { ingredient } of out) remove(doc, 'ingredients', ingredient)
    return changed
  })
}

type Around = Pick<Evening, 'host' | 'dishes' | 'steps' | 'ingredients'>

/**
 * A dish of its own for some of the covers, with these ingredients changed: from the fork on, by copies. What goes in before the fork
 * cannot be changed for some alone, and is refused. Gives the new dish's id.
 */
export const swapForSome = (
  doc: Y.Doc,
  around: Around,
  dish: string,
  fork: Omit<Fork, 'without'>,
  swaps: readonly Swap[],
  newId: () => string,
): Result<string, EditFault> => {
  const made = variantOf(around, dish, { ...fork, without: '' }, newId)
  if (!made) return fail({ kind: 'unknown-entry', root: 'steps', id: fork.step })
  const changed = withSwaps(around, dish, made, fork.step, swaps)
  return changed.ok ? bringDish(doc, changed.value, { kind: 'after', id: dish }) : changed
}

/** The copies of a variant stand in the order of those behind the fork. */
const withSwaps = (
  around: Around,
  dish: string,
  made: Brought,
  fork: string,
  swaps: readonly Swap[],
): Result<Brought, EditFault> => {
  const own = around.steps.filter((step) => step.dish === dish).map(({ id }) => id)
  const later = new Set(own.slice(own.indexOf(fork) + 1))
  const copied = around.ingredients.filter((each) => each.dish === dish && later.has(each.step ?? ''))
  const lost = swaps.find(({ ingredient }) => !copied.some(({ id }) => id === ingredient))
  if (lost) return fail({ kind: 'unknown-entry', root: 'ingredients', id: lost.ingredient })
  const ingredients = made.ingredients.flatMap((each, at) => {
    const swap = swaps.find(({ ingredient }) => ingredient === copied[at]?.id)
    if (!swap) return [each]
    return swap.food === '' ? [] : [withoutAbsent({ ...each, ...swapped(swap) })]
  })
  return ok({ ...made, ingredients })
}

const withoutAbsent = <T extends object>(entry: T): T =>
  Object.fromEntries(Object.entries(entry).filter(([, value]) => value !== undefined)) as T
