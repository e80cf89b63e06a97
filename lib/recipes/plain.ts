import { readYields } from './head-lines.ts'
import { readIngredient } from './ingredient.ts'
import { plainLine } from './plain-line.ts'
import type { DecimalMark, IngredientLine, RecipePreview, StepPreview, Yields } from './preview.ts'
import { readStep } from './step.ts'

/** What plain text gives; the rest of a preview is worked out from it. */
export interface PlainParts {
  readonly title: string | null
  readonly yields: Yields | null
  readonly ingredients: readonly IngredientLine[]
  readonly steps: readonly StepPreview[]
  readonly total: RecipePreview['total']
  readonly leftOver: readonly string[]
}

const BULLET = /^\s*[•*·▪◦‣☐□✓–—-]\s+/u

interface OpenStep {
  text: string
  readonly section: string | null
  readonly numbered: boolean
}

/** "Leek soup (serves 6)", "Leek soup - feeds 4": the title without its yield. */
const readTitle = (line: string, mark: DecimalMark): { title: string; yields: Yields | null } => {
  const found = /^(.{1,200}?)(?:\s?\(([^()]{1,60})\)\s?:?|\s[–—-]\s([^–—]{1,60}))$/u.exec(line)
  const yields = readYields(found?.[2] ?? found?.[3] ?? '', mark)
  return { title: yields ? (found?.[1] ?? line) : line, yields }
}

/**
 * Reads a recipe written as lines. Before any heading the first line is the title; lines that look like ingredients are some until,
 * after a blank line or a heading, one does not; then each numbered line or paragraph is a step. Lines that fit nowhere are left over.
 */
export const readPlain = (text: string, mark: DecimalMark): PlainParts => {
  let mode = 'head' as 'head' | 'ingredients' | 'steps'
  let [headed, blank, numbers] = [false, false, 0]
  let title: string | null = null
  let yields: Yields | null = null
  let section: string | null = null
  let total: PlainParts['total'] = { prep: null, cook: null, total: null }
  const ingredients: IngredientLine[] = []
  const steps: OpenStep[] = []
  const leftOver: string[] = []

  const enter = (next: typeof mode) => {
    if (mode !== next) section = null
    mode = next
  }
  const addStep = (words: string, numbered: boolean) => {
    enter('steps')
    if (numbered) numbers += 1
    const last = steps.at(-1)
    // A number alone waits for its words; a numbered step goes on until a blank line.
    const goesOn = !numbered && last?.numbered && (!blank || last.text === '')
    if (last && goesOn) last.text = `${last.text} ${words}`.trim()
    else steps.push({ text: words, section, numbered })
  }
  const addWords = (words: string, { amount, sentence }: { amount: boolean; sentence: boolean }) => {
    const begun = ingredients.length > 0
    const startsSteps = mode === 'ingredients' ? begun && (headed ? blank && sentence : blank || sentence) : begun && sentence
    if (mode === 'steps' || (!amount && startsSteps)) addStep(words.replace(BULLET, ''), false)
    else if (amount || mode === 'ingredients') {
      mode = 'ingredients'
      ingredients.push(readIngredient(words, section, mark))
    } else leftOver.push(words)
  }

  for (const raw of text.split(/\r\n|[\n\r]/u)) {
    const words = raw.trim()
    const line = plainLine(words, mark, mode === 'steps', numbers + 1)
    const mayTitle = line.kind === 'section' || (line.kind === 'words' && !line.amount)
    if (title === null && mode === 'head' && mayTitle) {
      const read = readTitle(words, mark)
      title = read.title
      yields ??= read.yields
    } else if (line.kind === 'ingredients-heading') {
      enter('ingredients')
      headed = true
      section = null
    } else if (line.kind === 'method-heading') {
      enter('steps')
      section = null
    } else if (line.kind === 'facts') {
      total = { prep: total.prep ?? line.total.prep, cook: total.cook ?? line.total.cook, total: total.total ?? line.total.total }
      // Said twice, the first counts and the second is shown.
      if (line.yields && yields) leftOver.push(words)
      yields ??= line.yields
    } else if (line.kind === 'section') {
      section = line.name
      if (mode === 'head') mode = 'ingredients'
    } else if (line.kind === 'numbered') addStep(line.words, true)
    else if (line.kind === 'words') addWords(words, line)
    blank = line.kind === 'blank'
  }
  return {
    title,
    yields,
    ingredients,
    steps: steps.filter((step) => step.text !== '').map((step) => readStep(step.text, step.section, mark)),
    total,
    leftOver,
  }
}
