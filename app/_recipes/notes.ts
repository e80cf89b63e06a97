import { assumedWords, doubtWords } from '#app/_words/recipe.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import type { DishDraft } from '#lib/recipes/draft.ts'
import type { Doubt } from '#lib/recipes/preview.ts'

const LONGEST = 8000
const LONGEST_LINE = 300

const quoted = (text: string): string => `“${text.length > 80 ? `${text.slice(0, 78).trimEnd()}…` : text}”`
const doubted = (text: string, doubts: readonly Doubt[]): string[] =>
  doubts.map((doubt) => `${quoted(text)}: ${doubtWords[doubt.kind](text.slice(doubt.from, doubt.to))}`)

/** What a dish is to remember of its recipe: what was assumed, what was not understood, what was not used. */
export const notesOf = (draft: DishDraft, hasRecipe: boolean): string => {
  const assumed = draft.steps.flatMap((step) =>
    step.assumed
      .filter((kind) => kind !== 'no-recipe')
      .map((kind) => `${quoted(step.text)}: ${assumedWords[kind](step.way.takes.likely)}`),
  )
  const open = [
    ...draft.ingredients.flatMap(({ line }) => doubted(line.text, line.doubts)),
    ...draft.steps.flatMap((step) => doubted(step.text, step.doubts)),
  ]
  const aside = draft.steps.flatMap((step) => step.aside.map((words) => `${quoted(step.text)}: ${quoted(words)}`))
  const unused = draft.unused.filter((line) => line.why === 'left-over').map((line) => line.text.slice(0, LONGEST_LINE))
  const parts = [
    hasRecipe || !draft.steps.some((step) => step.assumed.includes('no-recipe'))
      ? []
      : ['There is no recipe yet: the method is assumed from the dish’s name.'],
    assumed.length > 0 ? ['Assumed, as the recipe does not say:', ...assumed] : [],
    open.length > 0 ? ['Not understood:', ...open] : [],
    aside.length > 0 ? ['Read, and used nowhere yet:', ...aside] : [],
    unused.length > 0 ? ['Also on the recipe:', ...unused] : [],
  ].filter((part) => part.length > 0)
  const text = cleanText(parts.map((part) => part.join('\n')).join('\n\n'), true)
  return text.length <= LONGEST ? text : `${text.slice(0, LONGEST - 1).replace(/[\ud800-\udbff]$/u, '')}…`
}
