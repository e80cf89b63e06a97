import type { Amount, IngredientLine, RecipePreview, StepPreview, Stretch } from '#lib/recipes/preview.ts'
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

interface Reading extends Stretch {
  readonly text: string
  readonly certain: boolean
}

const stepReadings = (step: StepPreview): readonly Reading[] =>
  [
    ...step.times.map(({ value, from, to, certain }) => ({
      from,
      to,
      certain,
      text: `${value.kind} ${rangeText(value.least, value.most)}`,
    })),
    ...step.heats.map(({ value, from, to, certain }) => ({
      from,
      to,
      certain,
      text: `${value.kind} ${rangeText(value.lowC, value.highC)}`,
    })),
  ].sort((a, b) => a.from - b.from)

/** A step's times and heats as the cases write them, in the order of the text. */
export const stepTexts = (step: StepPreview): string[] => stepReadings(step).map((each) => each.text)

export interface Share {
  readonly right: number
  readonly all: number
}

export interface Score {
  readonly preview: RecipePreview
  readonly ingredients: Share
  readonly steps: Share
  /** What was not right. */
  readonly wrong: readonly string[]
  /** Of that, what nothing flagged: a line without a doubt, a time or heat that is wrong and certain, or one that is missing beside no doubt. */
  readonly silent: readonly string[]
}

const overlaps = (a: Stretch, b: Stretch): boolean => a.from < b.to && b.from < a.to

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
    const seen = step ? stepReadings(step) : []
    const left = [...seen]
    const missing = expected.filter((each) => {
      const at = left.findIndex((reading) => reading.text === each)
      if (at >= 0) left.splice(at, 1)
      return at < 0
    })
    rightTimes += expected.length - missing.length
    allTimes += Math.max(expected.length, seen.length)
    const doubts = step?.doubts ?? []
    const sure = left.filter((reading) => reading.certain && !doubts.some((doubt) => overlaps(doubt, reading)))
    if (missing.length > 0 || left.length > 0)
      say(
        `${recipe.name} step ${i + 1}: ${expected.join(', ')} ← ${seen.map((each) => each.text).join(', ')}`,
        sure.length === 0 && missing.length <= doubts.length,
      )
  }
  return {
    preview,
    ingredients: { right, all: recipe.ingredients.length },
    steps: { right: rightTimes, all: allTimes },
    wrong,
    silent,
  }
}

/** The numbers of a text that neither a reading nor a doubt holds. Looked for by themselves, with no word of the reader's. */
const loose = (text: string, held: readonly Stretch[]): readonly string[] =>
  [...text.matchAll(/\p{N}+(?:[.,]\p{N}+)*/gu)].flatMap((found) =>
    held.some(({ from, to }) => from <= found.index && found.index + found[0].length <= to) ? [] : [`${found[0]} in "${text}"`],
  )

/** Numbers in lines and steps that are silently unread. */
export const unreadNumbers = (preview: Pick<RecipePreview, 'ingredients' | 'steps'>): readonly string[] => [
  ...preview.ingredients.flatMap((line) => loose(line.text, [...line.told, ...line.doubts])),
  ...preview.steps.flatMap((step) => loose(step.text, [...step.times, ...step.heats, ...step.told, ...step.doubts])),
]
