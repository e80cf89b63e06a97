import Fraction from 'fraction.js'
import type { Source } from '#lib/domain/source.ts'
import type { AisleKind } from './aisles.ts'
import type { Exact, Refuse } from './wanted.ts'

/** What one ingredient adds to a line. */
export interface Part {
  readonly ingredient: string
  readonly dish: string
  readonly food: string
  /** In the line's unit; null: to taste. */
  readonly n: Exact | null
  /** A volume that was weighed by a table's density to be added to weights. */
  readonly weighed: { readonly ml: Exact; readonly source: Source } | null
  readonly ready: boolean
}

export interface LabelTask {
  readonly ingredient: string
  readonly dish: string
  readonly food: string
  readonly look: readonly string[]
}

/** When it is bought. `by`: used on a day before the evening's, so not later. */
export type When =
  | { readonly kind: 'any'; readonly by: number | null }
  /** Fresh, or said by somebody. */
  | { readonly kind: 'on'; readonly day: number; readonly said: boolean }
  | { readonly kind: 'from'; readonly day: number; readonly by: number | null }

/** How far a line is: `more`: it was ticked when less of it was wanted. */
export type Standing =
  | { readonly kind: 'open' }
  | { readonly kind: 'have' }
  | { readonly kind: 'got'; readonly by: readonly string[]; readonly at: string }
  | { readonly kind: 'more'; readonly by: readonly string[]; readonly n: Exact }

export type Aisle = { readonly kind: 'named'; readonly name: string } | { readonly kind: AisleKind }

/** One line of the list. */
export interface Line {
  readonly key: string
  readonly kind: 'food' | 'drink' | 'ice' | 'water' | 'own'
  /** The note that says things of it, where there is one; of an own line the line itself. */
  readonly note: string | null
  readonly food: string
  /** 'g', 'ml' or what is counted ('' for whole ones); null: to taste, or one's own words. */
  readonly unit: string | null
  /** What the recipes come to. */
  readonly needs: Exact | null
  /** What is to be bought: with what is thrown away, without what is in the house; null where no amount is known. */
  readonly amount: Exact | null
  readonly parts: readonly Part[]
  readonly refuse: Refuse | null
  /** Whether any of the recipes' weights is taken as ready to cook. */
  readonly ready: boolean
  readonly toTaste: boolean
  readonly have: 'all' | Exact | null
  readonly pack: { readonly n: Exact; readonly unit: string; readonly said: boolean } | null
  /** Packs, or whole ones; `buy` is what somebody decided. */
  readonly packs: number | null
  readonly buy: number | null
  readonly shop: string | null
  readonly aisle: Aisle
  readonly when: When
  readonly home: string | null
  readonly by: string | null
  readonly price: number | null
  readonly labels: readonly LabelTask[]
  readonly read: { readonly by?: string | undefined; readonly at: string } | null
  readonly standing: Standing
}

/** Whether something of it is still to be bought. */
export const isOpen = ({ standing }: Line): boolean => standing.kind === 'open' || standing.kind === 'more'

/** The whole list, and what was ticked that nothing asks for any more. */
export interface ShoppingList {
  readonly lines: readonly Line[]
  readonly strays: readonly { readonly key: string; readonly food: string; readonly by: readonly string[] }[]
}

/** What is really carried home of a line, in its unit: whole packs where it comes in packs. */
export const boughtOf = (line: Line): Exact | null => {
  const { amount, pack, packs, buy } = line
  const count = buy ?? packs
  if (count === null) return amount
  return pack ? pack.n.mul(count) : new Fraction(count)
}
