import type * as Y from 'yjs'
import { foodWord, splitFood } from '#app/_words/food.ts'
import { guardWords } from '#app/_words/verdict.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { ok, type Result } from '#lib/domain/result.ts'
import type { EditFault } from '#lib/plan/commands/fault.ts'
import { guardPlate } from '#lib/plan/commands/guard-plate.ts'
import { type Swap, swapForSome, swapIn } from '#lib/plan/commands/make-suit.ts'
import { setEvening, setFields } from '#lib/plan/commands/set.ts'
import { readPlan } from '#lib/plan/read.ts'
import { stepsBehind } from '#lib/table/guards.ts'
import type { TableChange } from '#lib/table/table-change.ts'
import type { TooFew } from '#lib/table/too-few.ts'

/** Something of the plan that would follow the guests. A host takes it or not. */
export type Proposal =
  | { readonly kind: 'covers'; readonly covers: number }
  | ({ readonly kind: 'portions' } & TooFew)
  /** The dish with other ingredients, for everybody who eats it. */
  | { readonly kind: 'for-all'; readonly dish: string; readonly swaps: readonly Swap[] }
  /** A variant of the dish for some, from the fork on. */
  | {
      readonly kind: 'for-some'
      readonly dish: string
      readonly fork: string
      readonly portions: number
      readonly swaps: readonly Swap[]
    }
  | { readonly kind: 'guard'; readonly dish: string; readonly need: string }

type Altering = Extract<TableChange, { kind: 'swap' | 'leave-out' }>

const isAltering = (change: TableChange): change is Altering => change.kind === 'swap' || change.kind === 'leave-out'

const swapOf = (change: Altering): Swap => ({
  ingredient: change.ingredient,
  food: change.kind === 'swap' ? change.food : '',
  needs: change.needs,
})

const sameGuests = (a: Altering, b: Altering): boolean => [...a.guests].sort().join() === [...b.guests].sort().join()

const byFork = (evening: Evening) => (a: string, b: string) =>
  evening.steps.findIndex(({ id }) => id === a) - evening.steps.findIndex(({ id }) => id === b)

/** What a change means for the plan: the first way is the one to propose; none where only people can settle it. */
export const waysOf = (evening: Evening, all: readonly TableChange[], change: TableChange): readonly Proposal[] => {
  if (change.kind === 'guard') return [{ kind: 'guard', dish: change.dish, need: change.need }]
  if (!isAltering(change)) return []
  const { dish } = change
  // What is changed in one dish for the same guests is one plate.
  const together = all.filter(isAltering).filter((other) => other.dish === dish && sameGuests(other, change))
  const forks = together.flatMap(({ fork }) => (fork === null ? [] : [fork])).sort(byFork(evening))
  const [fork] = forks
  const portions = Math.max(...together.map((each) => each.portions))
  const some: readonly Proposal[] =
    fork !== undefined && forks.length === together.length && portions < evening.covers
      ? [{ kind: 'for-some', dish, fork, portions, swaps: together.map(swapOf) }]
      : []
  return change.kind === 'swap' ? [{ kind: 'for-all', dish, swaps: [swapOf(change)] }, ...some] : some
}

const keyOf = (proposal: Proposal): string => JSON.stringify(proposal)

/** The first way of every change that has one, each once. */
export const firstWays = (evening: Evening, changes: readonly TableChange[]): readonly Proposal[] => {
  const found = new Map<string, Proposal>()
  for (const change of changes) for (const way of waysOf(evening, changes, change).slice(0, 1)) found.set(keyOf(way), way)
  return [...found.values()]
}

/** "Soup without cream", "Soup with oat cream". */
const variantName = (evening: Evening, dish: string, swaps: readonly Swap[]): string => {
  const name = evening.dishes.find(({ id }) => id === dish)?.name ?? ''
  const food = (id: string) => splitFood(evening.ingredients.find((each) => each.id === id)?.food ?? '').food
  const [first] = swaps
  const how = first === undefined ? '' : first.food === '' ? ` without ${food(first.ingredient)}` : ` with ${first.food}`
  return `${name}${how}`.slice(0, 120)
}

/** Puts one proposal into the plan as it is now. Gives the step of a guarded plate's way to the table, for one cook to have. */
export const takeProposal = (doc: Y.Doc, proposal: Proposal, newId: () => string): Result<string | null, EditFault> => {
  const { evening } = readPlan(doc)
  switch (proposal.kind) {
    case 'covers':
      return setEvening(doc, { covers: proposal.covers })
    case 'portions':
      return setFields(doc, 'dishes', proposal.dish, { portions: proposal.wanted })
    case 'for-all':
      return swapIn(doc, proposal.swaps)
    case 'for-some': {
      const { dish, fork, portions, swaps } = proposal
      const made = swapForSome(
        doc,
        evening,
        dish,
        { step: fork, portions, name: variantName(evening, dish, swaps) },
        swaps,
        newId,
      )
      return made.ok ? ok(null) : made
    }
    case 'guard': {
      const { dish, need } = proposal
      const name = evening.dishes.find(({ id }) => id === dish)?.name ?? foodWord(need)
      return guardPlate(
        doc,
        evening,
        { dish, need, words: guardWords(name, need), behind: stepsBehind(evening, dish, need) },
        newId,
      )
    }
  }
}

/** All of them in one edit; the first that is refused ends it. */
export const takeAll = (doc: Y.Doc, proposals: readonly Proposal[], newId: () => string): Result<null, EditFault> => {
  for (const proposal of proposals) {
    const taken = takeProposal(doc, proposal, newId)
    if (!taken.ok) return taken
  }
  return ok(null)
}
