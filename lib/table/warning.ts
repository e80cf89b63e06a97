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
   * Two dishes want heats that do not meet from one oven within an hour. `seconds`: from the end of the first in it to the start of the
   * second, negative when they are in it together; null without a running order: it is then by their methods alone.
   */
  | {
      readonly kind: 'oven-heat'
      readonly oven: string
      readonly first: Heat
      readonly next: Heat
      readonly seconds: number | null
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
