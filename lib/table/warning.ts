import type { KnownNeed } from '#lib/domain/people.ts'
import type { MainFood } from './main-foods.ts'

/** How it was decided what a dish is about: see `mainOf`. */
export type MainRule = 'only' | 'weight' | 'first' | 'name'

/** One dish in an oven, with the heat it wants. */
export interface Heat {
  readonly dish: string
  readonly step: string
  readonly lowC: number
  readonly highC: number
}

/**
 * An oven's change from one dish's heat to another's. `seconds`: from the end of the first in it to the start of the second, negative
 * when they are in it together; without a running order by their methods.
 */
export interface HeatChange {
  readonly first: Heat
  readonly next: Heat
  readonly seconds: number
}

/** Something about a menu that its cooks will want to know before they cook it. */
export type Warning =
  /** The cooks are at a course's dishes for more than ten minutes in its last quarter of an hour; dishes from the longest. */
  | {
      readonly kind: 'last-minute'
      readonly course: string
      readonly minutes: number
      readonly dishes: readonly { readonly dish: string; readonly minutes: number }[]
    }
  /**
   * Dishes of a course go into an oven within an hour of others whose heats do not meet theirs: everything of one oven in one warning.
   * `inTime`: the running order leaves the oven the minutes for every change; null without one: it is then by their methods alone.
   */
  | {
      readonly kind: 'oven-heat'
      readonly course: string
      readonly oven: string
      readonly changes: readonly HeatChange[]
      readonly inTime: boolean | null
    }
  | {
      readonly kind: 'same-main'
      readonly food: MainFood
      readonly dishes: readonly { readonly dish: string; readonly by: MainRule }[]
    }
  /** A course has no dish that is known to be right for these needs; `open`: its dishes that might be. None of them is, when it is empty. */
  | {
      readonly kind: 'nothing-for'
      readonly course: string
      readonly needs: readonly KnownNeed[]
      readonly open: readonly string[]
    }
