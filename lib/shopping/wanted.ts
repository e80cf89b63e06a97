import type Fraction from 'fraction.js'
import type { Source } from '#lib/domain/source.ts'

/** An exact number, as lib/quantities gives it. */
export type Exact = Fraction

/** How an amount is counted: what is not of one measure is never added up. */
export type Measure =
  | { readonly kind: 'mass'; readonly grams: Exact }
  | { readonly kind: 'volume'; readonly ml: Exact }
  /** Tins, bunches, whole ones (the unit is empty then), or a spoon that may be of several countries. */
  | { readonly kind: 'count'; readonly n: Exact; readonly unit: string }
  | { readonly kind: 'taste' }

/** What part of a bought weight is thrown away, by a table. */
export interface Refuse {
  readonly percent: number
  readonly what: string
  readonly source: Source
}

/** One ingredient of one dish, for those who eat it. */
export interface Wanted {
  readonly ingredient: string
  readonly dish: string
  /** As it is written, with what is done to it. */
  readonly food: string
  readonly measure: Measure
  /** Where a table gives exactly one: where it gives several, or none, a volume stays a volume. */
  readonly gramsPerMl: { readonly value: Exact; readonly source: Source } | null
  readonly refuse: Refuse | null
  /** The kitchen that shops for it; null: the host's. */
  readonly home: string | null
  /** Day on which it is first used, counted from the evening's; null where nothing says so. */
  readonly day: number | null
  readonly shop?: string | undefined
  readonly aisle?: string | undefined
  /** Somebody has to read its label, and what is looked for. */
  readonly label: readonly string[] | null
}

/** What the house buys besides: bottles, ice, water. */
export interface Extra {
  readonly kind: 'drink' | 'ice' | 'water'
  /** The drinks that it is, where it is one. */
  readonly drinks: readonly string[]
  readonly name: string
  readonly measure: Exclude<Measure, { readonly kind: 'taste' }>
  /** What it mostly comes in, in the measure's own unit. */
  readonly pack: Exact | null
}
