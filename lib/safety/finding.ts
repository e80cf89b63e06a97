import type { SafeFix } from '#lib/domain/safe-fix.ts'
import type { Source } from '#lib/domain/source.ts'

/** beyond: past a rule. do: nothing is wrong, and this is to be done. Neither of them, nor no finding, means that food is safe. */
export type Weight = 'beyond' | 'do'

/** Whether what is put in the fridge cools in time: surely not, surely, or as its shape and fridge will have it. */
export type InTime = 'yes' | 'perhaps' | 'no'

/** Where food stands between the temperatures: before it is heated, before it is cold, or on its way to the table. */
export type Stage = 'before-heat' | 'before-fridge' | 'to-table'

interface Base {
  readonly weight: Weight
  readonly dish: string
  readonly step: string | null
  /** Milliseconds since 1970; null where it is about no time. */
  readonly from: number | null
  readonly to: number | null
  readonly source: Source
}

/** What is to be known of a dish's safety: what, when, by which rule, and what to do is said by its kind. */
export type Finding = Base &
  (
    | {
        readonly kind: 'out'
        readonly stage: Stage
        readonly minutes: number
        readonly most: number
        /** Nothing of its ingredients is known: counted as if it were perishable. */
        readonly unsure: boolean
        readonly fixes: readonly SafeFix[]
      }
    | { readonly kind: 'out-in-all'; readonly minutes: number; readonly most: number }
    | {
        readonly kind: 'cool'
        readonly minutes: number
        readonly most: number
        readonly box: InTime
        readonly pot: InTime
      }
    | { readonly kind: 'kept-long'; readonly minutes: number; readonly most: number; readonly rice: boolean }
    | { readonly kind: 'reheat'; readonly coreC: number; readonly within: number }
    | { readonly kind: 'reheat-again' }
    | { readonly kind: 'keep-hot'; readonly hotC: number }
    | { readonly kind: 'keep-too-cool'; readonly ovenC: number; readonly hotC: number }
    | { readonly kind: 'core-low'; readonly coreC: number; readonly leastC: number; readonly food: string }
    | { readonly kind: 'raw-egg'; readonly by: 'lion' | 'pasteurised' }
    | { readonly kind: 'shellfish'; readonly food: string }
    | { readonly kind: 'thaw'; readonly inFridge: boolean }
  )

/** How long a dish stands between the temperatures before it is on the table, and until when what is left may go in the fridge. */
export interface DishTime {
  readonly dish: string
  /** Since when it is out of the heat or the fridge, and when it reaches the table. */
  readonly since: number
  readonly toTable: number
  readonly minutes: number
  readonly most: number
  readonly leftoversBy: number
  readonly unsure: boolean
}
