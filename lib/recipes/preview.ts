import type { Ingredient } from '#lib/domain/ingredient.ts'
import type { Measures } from '#lib/domain/unit-words.ts'

/** What stands between whole and part in the text's numbers: 1.5 or 1,5. */
export type DecimalMark = '.' | ','

/** What a heat that names no scale is taken to be. */
export type BareScale = 'C' | 'F'

/** A stretch of text, by offsets: text.slice(from, to). */
export interface Stretch {
  readonly from: number
  readonly to: number
}

/** A value with the stretch of text it came from. Not certain: read with a guess, to be shown as such. */
export interface Found<T> extends Stretch {
  readonly value: T
  readonly certain: boolean
}

/** What could not be read, or only with a guess: shown beside the text, never dropped. */
export interface Doubt extends Stretch {
  readonly kind: /** A number that nothing explains. */
    | 'number'
    /** "1,5" where numbers have a point, or the other way round. */
    | 'decimal'
    /** No amount where one would be expected. */
    | 'no-amount'
    /** "1 onion or 2 shallots". */
    | 'alternative'
    /** Amounts that cannot be added: "1 cup plus 20 g". */
    | 'sum'
    /** A line of ingredients that reads like a step. */
    | 'sentence'
    /** Longer than is read. */
    | 'too-long'
    /** A word that means a time or heat, but not how much: "a few minutes", "overnight", "a hot oven". */
    | 'vague'
}

/** As an evening keeps it: exact fractions. */
export type Amount = NonNullable<Ingredient['amount']>

export interface IngredientLine {
  readonly text: string
  readonly section: string | null
  /** What to have, without what is done to it; that is the note. */
  readonly food: string
  readonly note: string
  /** null: to taste, or not read (then there is a doubt). */
  readonly amount: Amount | null
  /** The size of each, where the amount counts packs or pieces: "1 tin" of 400 g. */
  readonly pack: Amount | null
  /** The same amount as the text gives it in other measures. */
  readonly also: readonly Amount[]
  readonly scales: Ingredient['scales']
  /** Where its numbers stand that are understood: the amount, the pack, sizes of pieces. Every other one has a doubt. */
  readonly told: readonly Stretch[]
  readonly doubts: readonly Doubt[]
}

/** Minutes; null where the text gives no such bound ("at least 2 hours", "up to a day"). */
export interface Minutes {
  readonly least: number | null
  readonly most: number | null
}

export type WaitHow = 'rest' | 'chill' | 'freeze' | 'cool' | 'marinate' | 'soak' | 'rise'

/** What a time in a step is about. */
export type TimeKind =
  /** The work or the cooking takes so long. */
  | 'takes'
  /** It stands by itself meanwhile. */
  | WaitHow
  /** Something is done again and again: "basting every 20 minutes". */
  | 'every'
  /** A moment inside, or before something else: "after 10 minutes", "30 minutes before cooking". */
  | 'mark'
  /** How long before it may be made, or how long it keeps. */
  | 'ahead'
  /** For each pound or kilogram: no length before it is weighed. */
  | 'by-weight'

export type StepTime = Found<Minutes & { readonly kind: TimeKind }>

/** °C, without fan. `kind` says of what: the oven, the inside of the food, the fat in a pan, or something else. */
export interface Heat {
  readonly kind: 'oven' | 'core' | 'fat' | 'other'
  readonly lowC: number
  readonly highC: number
}

export type KitWord =
  | 'oven'
  | 'grill'
  | 'ring'
  | 'fridge'
  | 'freezer'
  | 'blender'
  | 'food processor'
  | 'mixer'
  | 'sink'
  | 'kettle'

export interface StepPreview {
  readonly text: string
  readonly section: string | null
  readonly times: readonly StepTime[]
  readonly heats: readonly Found<Heat>[]
  readonly kit: readonly Found<KitWord>[]
  readonly care: Found<'hands-on' | 'eye' | 'leave'> | null
  /** "until the juices run clear". */
  readonly signs: readonly Found<string>[]
  /** "the day before": words that it can be done ahead, without a number. */
  readonly ahead: readonly Found<string>[]
  readonly bare: BareScale
  /** Numbers that are neither times nor heats and need not be: amounts, sizes, counts of things. Every other one has a doubt. */
  readonly told: readonly Stretch[]
  readonly doubts: readonly Doubt[]
}

export interface Yields {
  readonly least: number
  readonly most: number
  /** What is counted, as the text says: "servings", "muffins"; empty when people are. */
  readonly of: string
}

/** Which measures the text seems to be written in, and the words that say so; never certain. */
export interface MeasuresGuess {
  readonly measures: Measures
  readonly because: string
}

/** A recipe as it was understood, to be corrected by a person before anything is made of it. */
export interface RecipePreview {
  readonly title: string | null
  readonly yields: Yields | null
  readonly ingredients: readonly IngredientLine[]
  readonly steps: readonly StepPreview[]
  /** Minutes that the head of the text gives for all of it. */
  readonly total: { readonly prep: number | null; readonly cook: number | null; readonly total: number | null }
  /** schema.org's RestrictedDiet members that the page claims, as kebab-case words: claims, not checks. */
  readonly diets: readonly string[]
  readonly measures: MeasuresGuess | null
  /** Whether a word in it is another measure in other countries (cup, spoon, pint): the person should say whose. */
  readonly asksMeasures: boolean
  /** Lines that are neither title, amount nor step; nothing is thrown away. */
  readonly leftOver: readonly string[]
}
