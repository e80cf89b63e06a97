import type { Rules } from '#lib/domain/ingredient.ts'
import type { NeedGrade } from '#lib/domain/people.ts'
import type { SourceKey } from './source.ts'
import type { Trait } from './trait.ts'

/** What somebody cannot or will not eat, and how serious that is; its word is of an open list. */
export interface Need {
  readonly need: string
  readonly grade: NeedGrade
}

/** Whether a plate is right for somebody. Unknown is never safe. */
export type Standing = 'fits' | 'with-change' | 'not-confirmed' | 'does-not'

/** Why a plate stands as it does. `ingredient` is its id, `need` the word of the need. */
export type Because =
  /** It has what the need keeps away from: somebody said so, or its name does. */
  | {
      readonly kind: 'has'
      readonly ingredient: string
      readonly need: string
      readonly trait: Trait | null
      readonly by: 'said' | 'name'
      readonly source: SourceKey
    }
  /** It has what the guest would rather not have: it fits all the same. */
  | { readonly kind: 'dislikes'; readonly ingredient: string; readonly need: string; readonly trait: Trait | null }
  /** Alcohol in food: what part of it is still there, percent, by the row of the table; never none. */
  | {
      readonly kind: 'alcohol-kept'
      readonly ingredient: string
      readonly need: string
      readonly percent: number
      readonly row: string
      readonly minutes: number
      readonly source: SourceKey
    }
  /** Nobody has looked at what is in it, or its label is still to be read. `look`: what such a food often has. */
  | {
      readonly kind: 'unknown' | 'label'
      readonly ingredient: string
      readonly need: string
      readonly look: readonly Trait[]
      readonly source: SourceKey
    }
  /** The rules under which its label was read do not name it. */
  | {
      readonly kind: 'silent'
      readonly ingredient: string
      readonly need: string
      readonly trait: Trait
      readonly rules: Rules
      readonly source: SourceKey
    }
  /** It may have it, and a label need not say so: rennet, fining, gelatine's animal. The maker knows. */
  | {
      readonly kind: 'hidden'
      readonly ingredient: string
      readonly need: string
      readonly trait: Trait
      readonly source: SourceKey
    }
  /** It is said to be without, but its name says otherwise. */
  | {
      readonly kind: 'name-says'
      readonly ingredient: string
      readonly need: string
      readonly trait: Trait | null
      readonly source: SourceKey
    }
  /** Nuts, or gluten, are in it, but nobody said of which kind. */
  | { readonly kind: 'which'; readonly ingredient: string; readonly need: string; readonly trait: Trait }
  /** Whether this guest minds it is not a matter of lists: the guest is to be asked. */
  | {
      readonly kind: 'ask-guest'
      readonly ingredient: string
      readonly need: string
      readonly trait: Trait
      readonly source: SourceKey
    }
  /** It is fine when it is cooked through, and the method does not say that it is. */
  | {
      readonly kind: 'cooked-through'
      readonly ingredient: string
      readonly need: string
      readonly trait: Trait
      readonly source: SourceKey
    }
  /** Ingredients do not tell whether this is kept: its cook has to say so. */
  | { readonly kind: 'beyond'; readonly need: string; readonly source: SourceKey }
  /** Meat and milk at one meal. */
  | { readonly kind: 'together'; readonly need: string; readonly source: SourceKey }
  | { readonly kind: 'no-ingredients'; readonly need: string }
  /** It is made in another kitchen, whose cook has not said how. */
  | { readonly kind: 'other-kitchen'; readonly need: string; readonly kitchen: string }
  /** It was confirmed, and then made of something else. */
  | { readonly kind: 'changed-since'; readonly need: string }
  /** The guest has not said what they eat. */
  | { readonly kind: 'not-asked' }

/** What makes the plate right for the need. */
export type Change =
  /** Another food in place of this ingredient; an empty food: it is left out. */
  | { readonly kind: 'swap'; readonly ingredient: string; readonly food: string; readonly need: string }
  /** The guards of a severe allergy are to be put into the plan. */
  | { readonly kind: 'guard'; readonly need: string }

/**
 * A plate for somebody: the reasons of its standing, the gravest first. `change`: what makes it fit; where it does not fit, or is not
 * confirmed, what would be changed besides.
 */
export interface Verdict {
  readonly kind: Standing
  readonly because: readonly Because[]
  readonly change?: readonly Change[]
}

const WORST: readonly Standing[] = ['fits', 'with-change', 'not-confirmed', 'does-not']

/** Orders standings from the best to the worst. */
export const byStanding = (a: Standing, b: Standing): number => WORST.indexOf(a) - WORST.indexOf(b)

/** Something to eat: it fits, or does with its change. */
export const isSomething = ({ kind }: Pick<Verdict, 'kind'>): boolean => kind === 'fits' || kind === 'with-change'
