import type { Step, Way } from '#lib/domain/menu.ts'
import type { Measures } from '#lib/domain/unit-words.ts'
import { readIngredient } from './ingredient.ts'
import { type Part, partsOf } from './parts.ts'
import type { DecimalMark, Doubt, Heat, IngredientLine, MeasuresGuess, RecipePreview, StepPreview, Yields } from './preview.ts'
import { readStep } from './step.ts'
import { tokensOf } from './tokens.ts'
import { verbAt } from './verbs.ts'
import { type Assumption, wayOf } from './way.ts'

/** A step as it was understood, one length to a step; way and sign are there to be corrected. */
export interface StepDraft {
  readonly key: string
  /** The recipe's own words. */
  readonly text: string
  readonly section: string | null
  readonly way: Way
  readonly until: NonNullable<Step['until']>
  /** What the words did not say and the way says nevertheless. */
  readonly assumed: readonly Assumption[]
  /** Places in `text`. */
  readonly doubts: readonly Doubt[]
  /** What was read and has no place in a step: "the day before", "after 10 minutes". */
  readonly aside: readonly string[]
}

/** A line of ingredients as it was understood, there to be corrected. */
export interface IngredientDraft {
  readonly key: string
  readonly line: IngredientLine
}

/** A line that nothing is made of. `heating`: "heat the oven", which the oven's own line shows. */
export interface UnusedLine {
  readonly key: string
  readonly text: string
  readonly why: 'left-over' | 'heating' | 'set-aside'
}

/** A recipe between its preview and its dish: what a person corrects before anything is made of it. Plain JSON. */
export interface DishDraft {
  readonly name: string
  readonly yields: Yields | null
  readonly ingredients: readonly IngredientDraft[]
  readonly steps: readonly StepDraft[]
  readonly unused: readonly UnusedLine[]
  readonly guess: MeasuresGuess | null
  readonly asksMeasures: boolean
  /** Whose cups and spoons, once the person said so. */
  readonly measures: Measures | null
  readonly decimal: DecimalMark
  /** What a heat without a scale is taken to be. */
  readonly bare: StepPreview['bare']
  readonly source: string | null
  readonly cutShort: boolean
}

/** Gives a key that no part of the draft has. */
export type NewKey = () => string

const MOST_STEPS = 60
const MOST_INGREDIENTS = 200

const HEATING = /^\s*(?:pre-?)?heat\b/iu

/** "Heat oven, gas mark 3." says nothing else to do; "Heat the oven and butter a dish" does. */
const saysOnlyHeat = (text: string): boolean => {
  const tokens = tokensOf(text.replace(HEATING, ''))
  return HEATING.test(text) && tokens.every((_, at) => verbAt(tokens, at) === null)
}

/** "Preheat the oven" is no step of an evening: the oven's line shows it. Its heat goes on to what is baked. */
const isOnlyHeating = (part: Part): boolean =>
  part.time === null &&
  part.step.heats.some((each) => each.value.kind === 'oven') &&
  (part.step.care === null || saysOnlyHeat(part.step.text))

const untilOf = ({ step }: Part): StepDraft['until'] => {
  const core = step.heats.find((each) => each.value.kind === 'core')?.value
  const sign = step.signs[0]?.value
  return {
    ...(core ? { coreC: Math.round(core.lowC * 10) / 10 } : {}),
    // "Ready when the juices run clear".
    ...(sign
      ? {
          sign: sign
            .replace(/^(?:until|till)\s+/iu, '')
            .replace(/\s+/gu, ' ')
            .slice(0, 200),
        }
      : {}),
  }
}

/** A moment inside the step, how long it keeps, the heat of fat or of a fridge: words that no field of a step takes. */
const asideOf = ({ step }: Part): readonly string[] => [
  ...step.ahead.map((each) => each.value),
  ...step.times
    .filter((time) => time.value.kind === 'mark' || time.value.kind === 'ahead')
    .map((time) => step.text.slice(time.from, time.to)),
  ...step.heats
    .filter((heat) => heat.value.kind === 'fat' || heat.value.kind === 'other')
    .map((heat) => step.text.slice(heat.from, heat.to)),
]

const stepOf = (part: Part, heat: Heat | null, newKey: NewKey): StepDraft => {
  const { way, assumed } = wayOf(part, heat)
  return {
    key: newKey(),
    text: part.step.text,
    section: part.step.section,
    way,
    until: untilOf(part),
    assumed,
    doubts: part.step.doubts,
    aside: asideOf(part),
  }
}

interface Stepped {
  readonly steps: readonly StepDraft[]
  readonly heatings: readonly UnusedLine[]
  /** The oven's last named heat. */
  readonly heat: Heat | null
}

const stepped = (parts: readonly Part[], heatBefore: Heat | null, newKey: NewKey): Stepped => {
  const steps: StepDraft[] = []
  const heatings: UnusedLine[] = []
  let heat = heatBefore
  for (const part of parts) {
    const step = stepOf(part, heat, newKey)
    heat = part.step.heats.findLast((each) => each.value.kind === 'oven')?.value ?? heat
    if (isOnlyHeating(part)) heatings.push({ key: step.key, text: step.text, why: 'heating' })
    else steps.push(step)
  }
  return { steps, heatings, heat }
}

/** What a preview would become, with everything that is open about it. Lists longer than a dish's are cut, and that is said. */
export const draftOf = (preview: RecipePreview, decimal: DecimalMark, newKey: NewKey): DishDraft => {
  const parts = preview.steps.flatMap((step) => partsOf(step, decimal))
  const { steps, heatings } = stepped(parts.slice(0, MOST_STEPS), null, newKey)
  const beyond = [
    ...parts.slice(MOST_STEPS).map((part) => part.step.text),
    ...preview.ingredients.slice(MOST_INGREDIENTS).map((line) => line.text),
  ]
  return {
    name: preview.title ?? '',
    yields: preview.yields,
    ingredients: preview.ingredients.slice(0, MOST_INGREDIENTS).map((line) => ({ key: newKey(), line })),
    steps,
    unused: [
      ...heatings,
      ...[...preview.leftOver, ...beyond].map((text): UnusedLine => ({ key: newKey(), text, why: 'left-over' })),
    ],
    guess: preview.measures,
    asksMeasures: preview.asksMeasures,
    measures: null,
    decimal,
    bare: preview.steps[0]?.bare ?? 'C',
    source: null,
    cutShort: beyond.length > 0,
  }
}

/** A line that is a step after all: as many steps as it has lengths. */
export const asSteps = (text: string, { decimal, bare }: DishDraft, newKey: NewKey): readonly StepDraft[] =>
  partsOf(readStep(text, null, decimal, bare), decimal).map((part) => stepOf(part, null, newKey))

/** A line that is one of ingredients after all. */
export const asIngredient = (text: string, decimal: DecimalMark, newKey: NewKey): IngredientDraft => ({
  key: newKey(),
  line: readIngredient(text, null, decimal),
})
