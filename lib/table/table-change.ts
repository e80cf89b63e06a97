import type { Trait } from './trait.ts'

/** Something that gives guests something to eat, or tells whether they have it. */
export type TableChange =
  /** Another food in place of an ingredient: in the dish, or from behind `fork` on for `portions` of it. */
  | {
      readonly kind: 'swap'
      readonly dish: string
      readonly ingredient: string
      readonly food: string
      readonly needs: readonly string[]
      readonly guests: readonly string[]
      /** The step before the one where it goes in: a variant can part from the dish after it; null when there is none. */
      readonly fork: string | null
      readonly portions: number
    }
  /** A variant of the dish without an ingredient that has no swap: its cook judges whether it is still a dish. */
  | {
      readonly kind: 'leave-out'
      readonly dish: string
      readonly ingredient: string
      readonly needs: readonly string[]
      readonly guests: readonly string[]
      readonly fork: string
      readonly portions: number
    }
  /** Somebody reads the label of an ingredient, or says what is in it. */
  | {
      readonly kind: 'check'
      readonly dish: string
      readonly ingredient: string
      readonly look: readonly Trait[]
      readonly guests: readonly string[]
    }
  /** The maker or seller is asked what a label does not tell. */
  | {
      readonly kind: 'ask-maker'
      readonly dish: string
      readonly ingredient: string
      readonly trait: Trait
      readonly guests: readonly string[]
    }
  /** The guest is asked whether they mind it. */
  | { readonly kind: 'ask-guest'; readonly guest: string; readonly trait: Trait; readonly guests: readonly string[] }
  /** The guest has not said what they eat. */
  | { readonly kind: 'ask-needs'; readonly guest: string; readonly guests: readonly string[] }
  /** The cook of the dish says how it is made. */
  | { readonly kind: 'ask-cook'; readonly dish: string; readonly needs: readonly string[]; readonly guests: readonly string[] }
  /** It is cooked through: a step gets its core temperature. */
  | { readonly kind: 'cook-through'; readonly dish: string; readonly ingredient: string; readonly guests: readonly string[] }
  | { readonly kind: 'write-ingredients'; readonly dish: string; readonly guests: readonly string[] }
  /** The guards of a severe allergy are put into the plan. */
  | {
      readonly kind: 'guard'
      readonly dish: string
      readonly need: string
      readonly guests: readonly string[]
      readonly portions: number
    }
  /** Nothing of the course can be made right for them. */
  | { readonly kind: 'add-dish'; readonly course: string; readonly guests: readonly string[] }

/** Changes that cost the evening more come first; the smallest set has the fewest of the dearest, then of the next. */
export const PRICES: Readonly<Record<TableChange['kind'], number>> = {
  'add-dish': 1_000_000_000,
  'leave-out': 1_000_000,
  swap: 1000,
  'cook-through': 1000,
  guard: 1000,
  check: 1,
  'ask-maker': 1,
  'ask-guest': 1,
  'ask-needs': 1,
  'ask-cook': 1,
  'write-ingredients': 1,
}
