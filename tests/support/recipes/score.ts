import type { Amount, IngredientLine, RecipePreview, StepPreview } from '#lib/recipes/preview.ts'
import { readRecipe } from '#lib/recipes/read.ts'
import type { RecipeCase } from './case.ts'

const amountText = (amount: Amount | null): string =>
  amount === null ? '-' : `${amount.n}${amount.upTo ? `..${amount.upTo}` : ''} ${amount.unit}`.trim()

/** A line as the cases write it. */
export const lineText = (line: IngredientLine): string =>
  `${amountText(line.amount)}${line.pack ? ` / ${amountText(line.pack)}` : ''} | ${line.food}`

const number = (value: number | null): string => (value === null ? '' : String(Math.round(value * 10) / 10))
const rangeText = (least: number | null, most: number | null): string =>
  least === most ? number(least) : `${number(least)}..${number(most)}`

/** A step's times and heats as the cases write them, in the order of the text. */
export const stepTexts = (step: StepPreview): string[] =>
  [
    ...step.times.map((time) => ({
      from: time.from,
      text: `${time.value.kind} ${rangeText(time.value.least, time.value.most)}`,
    })),
    ...step.heats.map((heat) => ({
      from: heat.from,
      text: `${heat.value.kind} ${rangeText(heat.value.lowC, heat.value.highC)}`,
    })),
  ]
    .sort((a, b) => a.from - b.from)
    .map((each) => each.text)

export interface Share {
  readonly right: number
  readonly all: number
}

export interface Score {
  readonly preview: RecipePreview
  readonly ingredients: Share
  readonly steps: Share
  /** What was not right, and of that what nothing flagged. */
  readonly wrong: readonly string[]
  readonly silent: readonly string[]
}

/** How much of a recipe was read as a careful reader would: each ingredient line, each time and heat of each step. Things found too many count as wrong. */
export const score = (recipe: RecipeCase): Score => {
  const read = readRecipe(recipe.text, recipe.decimal ? { decimal: recipe.decimal } : {})
  if (!read.ok) throw new Error(`${recipe.name}: ${read.error.kind}`)
  const preview = read.value
  const wrong: string[] = []
  const silent: string[] = []
  const say = (text: string, flagged: boolean) => {
    wrong.push(text)
    if (!flagged) silent.push(text)
  }
  // Lines are matched in their order, so that one that is missing costs itself only.
  const found = preview.ingredients.map((line) => ({ text: lineText(line), flagged: line.doubts.length > 0 }))
  let [right, next] = [0, 0]
  for (const expected of recipe.ingredients) {
    const at = found.findIndex((line, i) => i >= next && line.text === expected)
    if (at >= 0) {
      right += 1
      next = at + 1
    } else {
      const instead = found.find((line, i) => i >= next && !recipe.ingredients.includes(line.text))
      say(`${recipe.name}: ${expected} ← ${instead?.text ?? 'nothing'}`, instead ? instead.flagged : preview.leftOver.length > 0)
    }
  }
  let [rightTimes, allTimes] = [0, 0]
  for (const [i, expected] of recipe.steps.entries()) {
    const step = preview.steps[i]
    const seen = step ? stepTexts(step) : []
    const left = [...seen]
    const missing = expected.filter((each) => {
      const at = left.indexOf(each)
      if (at >= 0) left.splice(at, 1)
      return at < 0
    })
    rightTimes += expected.length - missing.length
    allTimes += Math.max(expected.length, seen.length)
    if (missing.length > 0 || left.length > 0)
      say(`${recipe.name} step ${i + 1}: ${expected.join(', ')} ← ${seen.join(', ')}`, (step?.doubts.length ?? 0) > 0)
  }
  return {
    preview,
    ingredients: { right, all: recipe.ingredients.length },
    steps: { right: rightTimes, all: allTimes },
    wrong,
    silent,
  }
}
