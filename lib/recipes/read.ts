import { fail, ok, type Result } from '#lib/domain/result.ts'
import { readYields } from './head-lines.ts'
import { readIngredient } from './ingredient.ts'
import { isoMinutes, type LinkedRecipe, readLinkedData } from './linked-data.ts'
import { bareScaleOf, guessMeasures, hasOpenMeasure } from './measures-guess.ts'
import { isPage, readPage } from './page-text.ts'
import { readPlain } from './plain.ts'
import type { DecimalMark, RecipePreview } from './preview.ts'
import { readStep } from './step.ts'

/** The longest text that is read: a page with its scripts, in UTF-16 units. */
export const LONGEST_PAGE = 2_000_000
/** The longest text that is read as a recipe written in words. */
export const LONGEST_TEXT = 100_000
/** The most lines of ingredients that are read of one recipe. */
export const MOST_LINES = 400
/** The most steps that are read of one recipe. */
export const MOST_STEPS = 200

/** Why nothing was read. */
export type Unread =
  | { readonly kind: 'too-long'; readonly most: number }
  | { readonly kind: 'too-deep' }
  | { readonly kind: 'nothing' }

/** What the reader may be told about a text. */
export interface ReadOptions {
  /** What the text's numbers have between whole and part; a point unless told. */
  readonly decimal?: DecimalMark
}

const withMeasures = (parts: Omit<RecipePreview, 'measures' | 'asksMeasures'>): RecipePreview => {
  const words = [...parts.ingredients.map((line) => line.text), ...parts.steps.map((step) => step.text)].join('\n')
  return { ...parts, measures: guessMeasures(words), asksMeasures: hasOpenMeasure(parts.ingredients) }
}

const fromLinked = (recipe: LinkedRecipe, mark: DecimalMark): RecipePreview => {
  const yields =
    recipe.yields.map((text) => readYields(/^\d/.test(text) ? `serves ${text}` : text, mark)).find((each) => each !== null) ??
    null
  const bare = bareScaleOf([...recipe.ingredients, ...recipe.steps.map((step) => step.text)].join('\n'))
  const minutes = (text: string | null) => (text === null ? null : isoMinutes(text))
  const total = { prep: minutes(recipe.prep), cook: minutes(recipe.cook), total: minutes(recipe.total) }
  const unread = (text: string | null, read: number | null) => (text !== null && read === null ? [text.slice(0, 300)] : [])
  return withMeasures({
    title: recipe.title?.slice(0, 300) ?? null,
    yields,
    ingredients: recipe.ingredients.slice(0, MOST_LINES).map((line) => readIngredient(line, null, mark)),
    steps: recipe.steps.slice(0, MOST_STEPS).map((step) => readStep(step.text, step.section, mark, bare)),
    total,
    diets: recipe.diets,
    leftOver: [
      ...(yields === null ? recipe.yields.map((text) => text.slice(0, 300)) : []),
      ...unread(recipe.prep, total.prep),
      ...unread(recipe.cook, total.cook),
      ...unread(recipe.total, total.total),
      ...recipe.ingredients.slice(MOST_LINES),
      ...recipe.steps.slice(MOST_STEPS).map((step) => step.text),
    ],
  })
}

const fromWords = (text: string, mark: DecimalMark): Result<RecipePreview, Unread> => {
  if (text.length > LONGEST_TEXT) return fail({ kind: 'too-long', most: LONGEST_TEXT })
  const parts = readPlain(text, mark)
  if (parts.title === null && parts.ingredients.length === 0 && parts.steps.length === 0) return fail({ kind: 'nothing' })
  return ok(
    withMeasures({
      ...parts,
      ingredients: parts.ingredients.slice(0, MOST_LINES),
      steps: parts.steps.slice(0, MOST_STEPS),
      diets: [],
      leftOver: [
        ...parts.leftOver,
        ...parts.ingredients.slice(MOST_LINES).map((line) => line.text),
        ...parts.steps.slice(MOST_STEPS).map((step) => step.text),
      ],
    }),
  )
}

/**
 * A recipe from text: plain lines, schema.org Recipe JSON-LD, or a page's HTML (its JSON-LD, else its words). Nothing in it is run.
 * Refuses what is too long or has nothing in it; everything else is a preview with its doubts.
 */
export const readRecipe = (text: string, { decimal = '.' }: ReadOptions = {}): Result<RecipePreview, Unread> => {
  if (text.length > LONGEST_PAGE) return fail({ kind: 'too-long', most: LONGEST_PAGE })
  if (/^\s*[[{]/u.test(text)) {
    const linked = readLinkedData(text)
    if (linked) return ok(fromLinked(linked, decimal))
  }
  if (!isPage(text)) return fromWords(text, decimal)
  const page = readPage(text)
  if (!page) return fail({ kind: 'too-deep' })
  for (const data of page.data) {
    const linked = readLinkedData(data)
    if (linked) return ok(fromLinked(linked, decimal))
  }
  return fromWords(page.words, decimal)
}
