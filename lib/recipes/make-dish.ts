import { durationOf, secondsOf } from '#lib/domain/duration.ts'
import type { Ingredient } from '#lib/domain/ingredient.ts'
import type { Dish, Step, Way } from '#lib/domain/menu.ts'
import type { Measures } from '#lib/domain/unit-words.ts'
import { type DishDraft, draftOf } from './draft.ts'
import { ingredientOf, lineOf } from './make-ingredient.ts'
import type { DecimalMark, RecipePreview } from './preview.ts'
import type { Assumption } from './way.ts'

/** Where the dish is to stand, and what the caller must give because nothing pure can: ids and order keys. */
export interface DishPlace {
  readonly course: string
  readonly kitchen: string
  /** The dish's place among its course's. */
  readonly order: string
  /** Portions, when the recipe does not say for how many it is. */
  readonly covers: number
  /** Whose cups and spoons these are, as the person said; null leaves the words bare, and quantities will ask. */
  readonly measures: Measures | null
  readonly decimal?: DecimalMark
  readonly source?: string
  readonly newId: () => string
  /** So many order keys, in order. */
  readonly keys: (count: number) => readonly string[]
}

/** Something that the recipe did not say and the dish has nevertheless. */
export interface Assumed {
  readonly kind: Assumption | 'no-yield' | 'yield-range' | 'plate-added' | 'cut-short' | 'keeps' | 'hot' | 'into-cold'
  /** The step it is about; null: the dish. */
  readonly step: string | null
}

/** A dish with all that belongs to it, and what was assumed on the way. */
export interface MadeDish {
  readonly dish: Dish
  readonly steps: readonly Step[]
  readonly ingredients: readonly Ingredient[]
  /** Everything that the recipe did not say and an evening needs: to be shown and corrected. */
  readonly assumed: readonly Assumed[]
}

const PLATING = /\b(?:serve|plate|ladle|carve|divide)\b/iu

/** How it waits for the table: as its last step leaves it; a rest after the oven leaves it hot. */
const keepsOf = (steps: readonly Step[]): Dish['keeps'] => {
  const isRest = (step: Step) => step.ways[0]?.care === 'leave' && step.ways[0].uses.length === 0 && !/\bcool/iu.test(step.does)
  const last = steps.findLast((step) => !isRest(step))
  const kinds = new Set(last?.ways[0]?.uses.map((use) => use.kind))
  if (kinds.has('oven') || kinds.has('ring')) return { how: 'hot', most: 'PT10M', kind: 'quality', uses: [] }
  if (kinds.has('cold')) return { how: 'cold', most: 'PT2H', kind: 'quality', uses: [] }
  return { how: 'room', most: 'PT30M', kind: 'quality', uses: [] }
}

const plateStep = (dish: string, name: string, order: string, after: Step | undefined, newId: () => string): Step => ({
  id: newId(),
  dish,
  order,
  does: lineOf(`Plate: ${name}`, 400),
  role: 'plate',
  where: 'kitchen',
  ways: [
    {
      care: 'hands-on',
      cooks: 1,
      takes: { least: 'PT3M', likely: 'PT4M', most: 'PT6M' },
      touches: [],
      uses: [{ kind: 'worktop', places: 1 }],
    },
  ],
  after: after ? [{ step: after.id, from: 'end', least: 'PT0S', kind: 'quality' }] : [],
})

const isHeated = (step: Step): boolean => step.ways[0]?.uses.some((use) => use.kind === 'oven' || use.kind === 'ring') ?? false
const isCooled = (step: Step): boolean =>
  step.ways[0]?.care === 'leave' &&
  (step.ways[0].uses.some((use) => use.kind === 'cold') || (step.ways[0].uses.length === 0 && /\bcool/iu.test(step.does)))

const isInCold = (step: Step): boolean => step.ways[0]?.uses.some((use) => use.kind === 'cold') ?? false

const STAYS_HOT = 30 * 60
const GOES_ON = 'PT15M'

/**
 * What comes from the heat goes on while it is hot, until it is put in the cold or has cooled or stood for half an hour: to the next step,
 * to where it cools, and to the plates, within a quarter of an hour. Common practice, no source; said to be assumed.
 */
const whileHot = (steps: readonly Step[]): Step[] => {
  let since = Number.POSITIVE_INFINITY
  return steps.map((step): Step => {
    const goesOn = since <= STAYS_HOT && !isInCold(step)
    if (isHeated(step)) since = 0
    else since = isCooled(step) ? Number.POSITIVE_INFINITY : since + secondsOf(step.ways[0]?.takes.least ?? 'PT0S')
    return goesOn ? { ...step, after: step.after.map((after) => ({ ...after, most: GOES_ON })) } : step
  })
}

/** USDA FSIS, the two-hour rule (quoted); FSA, into the fridge within one to two hours (quoted). */
const INTO_COLD = 2 * 3600

/**
 * What was heated is in the fridge within two hours, for safety: a limit of the plan, where the steps in between leave it room. Where they do
 * not, nothing is put in: what the rules say of that order is told beside it.
 */
const intoCold = (steps: readonly Step[]): Step[] => {
  let heated: { readonly id: string; readonly since: number } | null = null
  return steps.map((step): Step => {
    const before = heated
    if (isHeated(step)) heated = { id: step.id, since: 0 }
    else if (isInCold(step)) heated = null
    else if (before) heated = { ...before, since: before.since + secondsOf(step.ways[0]?.takes.most ?? 'PT0S') }
    if (!before || !isInCold(step) || before.since > INTO_COLD) return step
    const limit = { from: 'end', most: durationOf(INTO_COLD), kind: 'safety' } as const
    return step.after.some((after) => after.step === before.id)
      ? { ...step, after: step.after.map((after) => (after.step === before.id ? { ...after, ...limit } : after)) }
      : { ...step, after: [...step.after, { step: before.id, least: 'PT0S', ...limit }] }
  })
}

/** What another step follows is out, to the minute, before that begins: nobody fills a tin that is still in the fridge. */
const outInTime = (way: Way): Way => ({
  ...way,
  touches: way.touches.map((touch) => (touch.when === 'out' ? { ...touch, lateBy: 'PT0S' } : touch)),
})

/** Entities of an evening from a draft that a person has corrected. They pass the domain's schemas; what was assumed is listed. */
export const finishDraft = (draft: DishDraft, place: DishPlace): MadeDish => {
  const assumed: Assumed[] = draft.cutShort ? [{ kind: 'cut-short', step: null }] : []
  const id = place.newId()
  const name = lineOf(draft.name, 120) || 'A new dish'
  const keys = place.keys(draft.steps.length + 1)
  let steps: Step[] = []
  for (const [i, each] of draft.steps.entries()) {
    const before: Step | undefined = steps.at(-1)
    const step = place.newId()
    const { coreC, sign } = each.until
    const until = { ...(coreC === undefined ? {} : { coreC }), ...(sign ? { sign: lineOf(sign, 200) } : {}) }
    steps.push({
      id: step,
      dish: id,
      order: keys[i] ?? '',
      does: lineOf(each.text, 400),
      role: 'make',
      where: 'kitchen',
      ways: [outInTime(each.way)],
      after: before ? [{ step: before.id, from: 'end', least: 'PT0S', kind: 'quality' }] : [],
      ...(Object.keys(until).length > 0 ? { until } : {}),
    })
    assumed.push(...each.assumed.map((kind) => ({ kind, step })))
  }
  const keeps = keepsOf(steps)
  const last = steps.at(-1)
  if (last && PLATING.test(last.does) && last.ways[0]?.care === 'hands-on') steps[steps.length - 1] = { ...last, role: 'plate' }
  else {
    const plate = plateStep(id, name, keys[keys.length - 1] ?? '', last, place.newId)
    steps.push(plate)
    assumed.push({ kind: 'plate-added', step: plate.id })
  }
  steps = whileHot(steps)
  if (steps.some((step) => step.after.some((after) => after.most !== undefined))) assumed.push({ kind: 'hot', step: null })
  steps = intoCold(steps)
  if (steps.some((step) => step.after.some(({ kind }) => kind === 'safety'))) assumed.push({ kind: 'into-cold', step: null })
  const orders = place.keys(draft.ingredients.length)
  const { yields } = draft
  if (!yields) assumed.push({ kind: 'no-yield', step: null })
  else if (yields.most > yields.least) assumed.push({ kind: 'yield-range', step: null })
  assumed.push({ kind: 'keeps', step: null })
  const source = place.source ?? draft.source ?? undefined
  return {
    dish: {
      id,
      course: place.course,
      order: place.order,
      name,
      kitchen: place.kitchen,
      // Of "4 to 6" the fewer: nobody goes hungry.
      yields: yields?.least ?? place.covers,
      state: 'on',
      toTable: { early: 'PT0S', late: 'PT0S' },
      keeps,
      ...(source !== undefined ? { source } : {}),
      notes: '',
    },
    steps,
    ingredients: draft.ingredients.map(({ line }, i) => ({
      id: place.newId(),
      dish: id,
      order: orders[i] ?? '',
      ...ingredientOf(line, steps, place.measures),
    })),
    assumed,
  }
}

/** As `finishDraft`, of a preview that nobody corrected. */
export const makeDish = (preview: RecipePreview, place: DishPlace): MadeDish => {
  let keys = 0
  const draft = draftOf(preview, place.decimal ?? '.', () => {
    keys += 1
    return String(keys)
  })
  return finishDraft(draft, place)
}
