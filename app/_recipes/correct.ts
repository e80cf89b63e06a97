import { withCare } from '#app/_dish/way-words.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Use } from '#lib/domain/kitchen.ts'
import type { Care, Way } from '#lib/domain/menu.ts'
import { spanFromUsual } from '#lib/domain/usual-span.ts'
import { asIngredient, asSteps, type DishDraft, type IngredientDraft, type NewKey, type StepDraft } from '#lib/recipes/draft.ts'
import { type Assumed, finishDraft } from '#lib/recipes/make-dish.ts'
import type { Doubt } from '#lib/recipes/preview.ts'

/** How many things of a draft somebody should look at: lines that were not all understood, and steps with something assumed. */
export const openThings = (draft: DishDraft): number =>
  draft.ingredients.filter(({ line }) => line.doubts.length > 0).length +
  draft.steps.filter((step) => step.doubts.length > 0 || step.assumed.length > 0).length +
  (draft.asksMeasures && draft.measures === null ? 1 : 0)

export const changeIngredient = (draft: DishDraft, key: string, patch: Partial<IngredientDraft['line']>): DishDraft => ({
  ...draft,
  ingredients: draft.ingredients.map((each) => (each.key === key ? { ...each, line: { ...each.line, ...patch } } : each)),
})

export const changeStep = (draft: DishDraft, key: string, change: (step: StepDraft) => StepDraft): DishDraft => ({
  ...draft,
  steps: draft.steps.map((step) => (step.key === key ? change(step) : step)),
})

/** What is assumed of the dish as a whole, as it stands: its plating, how it goes on while it is hot, how long it keeps. */
export const assumedOfDish = (draft: DishDraft): readonly Assumed['kind'][] => {
  const { assumed } = finishDraft(draft, {
    course: 'course',
    kitchen: 'kitchen',
    order: '0',
    covers: 1,
    measures: null,
    newId: () => 'id',
    keys: (count) => Array.from({ length: count }, () => '0'),
  })
  return assumed
    .map((each) => each.kind)
    .filter((kind) => kind === 'plate-added' || kind === 'hot' || kind === 'into-cold' || kind === 'keeps')
}

const ABOUT_AMOUNT: ReadonlySet<Doubt['kind']> = new Set(['number', 'decimal', 'no-amount', 'sum', 'alternative'])
/** The doubts that an amount written by a person settles. */
export const withoutAmountDoubts = (doubts: readonly Doubt[]): readonly Doubt[] =>
  doubts.filter((doubt) => !ABOUT_AMOUNT.has(doubt.kind))

/** A person looked at the line and it is right as it stands. */
export const settleIngredient = (draft: DishDraft, key: string): DishDraft => changeIngredient(draft, key, { doubts: [] })
export const settleStep = (draft: DishDraft, key: string): DishDraft =>
  changeStep(draft, key, (step) => ({ ...step, doubts: [], assumed: [] }))

const without = (step: StepDraft, ...kinds: readonly StepDraft['assumed'][number][]): StepDraft => ({
  ...step,
  assumed: step.assumed.filter((kind) => !kinds.includes(kind)),
})

/** The usual minutes; least and most are suggested from them, a wait is exactly so long at the least. */
export const withMinutes = (step: StepDraft, likely: string): StepDraft => {
  const { way } = step
  const isWait = way.upTo !== undefined
  const takes = isWait ? { least: likely, likely, most: likely } : spanFromUsual(secondsOf(likely))
  const upTo = way.upTo === undefined || secondsOf(way.upTo) >= secondsOf(takes.most) ? way.upTo : takes.most
  const next: Way = upTo === undefined ? { ...way, takes } : { ...way, takes, upTo }
  return without({ ...step, way: next }, 'no-minutes', 'by-weight', 'vague', 'no-recipe')
}

/** How long it may stay at most; null: no longer than it takes. */
export const withUpTo = (step: StepDraft, upTo: string | null): StepDraft => {
  const { upTo: _before, ...way } = step.way
  const most = way.takes.most
  const longest = upTo === null ? null : secondsOf(upTo) < secondsOf(most) ? most : upTo
  return without({ ...step, way: longest === null ? way : { ...way, upTo: longest } }, 'no-end')
}

export const withItsCare = (step: StepDraft, care: Care): StepDraft =>
  without({ ...step, way: withCare(step.way, care) }, 'no-recipe')

/** Where a step is done, tools aside. */
const PLACES = ['none', 'worktop', 'small', 'medium', 'large', 'oven', 'cold', 'frozen'] as const
export type PlaceWord = (typeof PLACES)[number]

export const placeOf = (way: Way): PlaceWord => {
  const use = way.uses.find((each) => each.kind !== 'tool')
  if (!use) return 'none'
  if (use.kind === 'ring') return use.size
  return use.kind === 'cold' ? use.keep : use.kind
}

const useFor = (place: PlaceWord, before: Use | undefined): Use | null => {
  switch (place) {
    case 'none':
      return null
    case 'worktop':
      return { kind: 'worktop', places: 1 }
    case 'small':
    case 'medium':
    case 'large':
      return { kind: 'ring', size: place }
    case 'oven':
      return before?.kind === 'oven' ? before : { kind: 'oven', shelves: 1, lowC: 180, highC: 190, preheated: true }
    case 'cold':
    case 'frozen':
      return { kind: 'cold', keep: place, places: 1 }
  }
}

export const withPlace = (step: StepDraft, place: PlaceWord): StepDraft => {
  const before = step.way.uses.find((use) => use.kind !== 'tool')
  const use = useFor(place, before)
  const tools = step.way.uses.filter((each) => each.kind === 'tool')
  return without({ ...step, way: { ...step.way, uses: use ? [use, ...tools] : tools } }, 'no-heat', 'no-recipe')
}

export const withHeat = (step: StepDraft, lowC: number, highC: number): StepDraft => {
  const uses = step.way.uses.map((use) => (use.kind === 'oven' ? { ...use, lowC, highC } : use))
  return without({ ...step, way: { ...step.way, uses } }, 'no-heat')
}

export const toolsOf = (way: Way): readonly string[] => way.uses.flatMap((use) => (use.kind === 'tool' ? [use.tool] : []))

/** At most five, so that the place fits beside them. */
export const withTools = (step: StepDraft, tools: readonly string[]): StepDraft => {
  const others = step.way.uses.filter((use) => use.kind !== 'tool').slice(0, 1)
  const named = tools.slice(0, 5).map((tool): Use => ({ kind: 'tool', tool, count: 1 }))
  return { ...step, way: { ...step.way, uses: [...others, ...named] } }
}

/** Takes a line out of the lists, and keeps it. */
export const setAside = (draft: DishDraft, key: string): DishDraft => {
  const line = draft.ingredients.find((each) => each.key === key)
  const step = draft.steps.find((each) => each.key === key)
  const text = line?.line.text ?? step?.text
  if (text === undefined) return draft
  return {
    ...draft,
    ingredients: draft.ingredients.filter((each) => each.key !== key),
    steps: draft.steps.filter((each) => each.key !== key),
    unused: [...draft.unused, { key, text, why: 'set-aside' }],
  }
}

/** Makes a step of a line that stood elsewhere; of more than one length, more than one. */
export const makeStep = (draft: DishDraft, key: string, newKey: NewKey): DishDraft => {
  const aside = setAside(draft, key)
  const line = aside.unused.find((each) => each.key === key)
  if (!line) return draft
  return {
    ...aside,
    unused: aside.unused.filter((each) => each.key !== key),
    steps: [...aside.steps, ...asSteps(line.text, draft, newKey)],
  }
}

/** Makes an ingredient of a line that stood elsewhere. */
export const makeIngredient = (draft: DishDraft, key: string, newKey: NewKey): DishDraft => {
  const aside = setAside(draft, key)
  const line = aside.unused.find((each) => each.key === key)
  if (!line) return draft
  return {
    ...aside,
    unused: aside.unused.filter((each) => each.key !== key),
    ingredients: [...aside.ingredients, asIngredient(line.text, draft.decimal, newKey)],
  }
}
