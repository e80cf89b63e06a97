import { withoutBullet } from './bullet.ts'
import { hasAmount, readYields } from './head-lines.ts'
import { LONGEST_LINE, readIngredient } from './ingredient.ts'
import { bareScaleOf } from './measures-guess.ts'
import { isSentence, plainLine } from './plain-line.ts'
import type { DecimalMark, IngredientLine, RecipePreview, StepPreview, Yields } from './preview.ts'
import { readStep } from './step.ts'
import { tokensOf } from './tokens.ts'
import { verbAt } from './verbs.ts'

/** What plain text gives; the rest of a preview is worked out from it. */
export interface PlainParts {
  readonly title: string | null
  readonly yields: Yields | null
  readonly ingredients: readonly IngredientLine[]
  readonly steps: readonly StepPreview[]
  readonly total: RecipePreview['total']
  readonly leftOver: readonly string[]
}

interface OpenStep {
  text: string
  readonly section: string | null
  readonly numbered: boolean
}

/** Whether a line that is only words names a part: the next line is an amount, and it is no sentence itself. */
const isPartName = (line: string, next: string, mark: DecimalMark): boolean =>
  line.length <= 40 && !/[.,!?\d]/u.test(line) && next !== '' && hasAmount(next, mark)

/** "Make the pork": words alone before a sentence. */
const isMethodPart = (line: string, next: string): boolean =>
  line.length <= 40 && !/[.,;:!?\d]/u.test(line) && /^\p{Lu}/u.test(line) && next.length > 40 && isSentence(next)

/** "Shortcrust: 250 g flour, 1 egg", "2 onions, 2 carrots": several amounts in one line, each with its food; null when it is one. */
const amountsIn = (line: string): { name: string | null; lines: readonly string[] } | null => {
  if (line.length > LONGEST_LINE) return null
  const named = /^(\p{L}[^:,.\d]{1,40}):\s+(?=\S)/u.exec(line)
  const parts = line.slice(named?.[0].length ?? 0).split(/,\s+/u)
  const each = parts.every(
    (part) => /^(?:\d+|[¼½¾⅓⅔⅛])(?! ?(?:cm|mm|inch|in)\b)[^,]*\p{L}{3}/u.test(part) && !/[.!]$/u.test(part),
  )
  return each && parts.length > 1 ? { name: named?.[1]?.trim() ?? null, lines: parts } : null
}

const MOST_READ_AS_STEP = 4000

/** Whether words without any list of ingredients tell what to do. */
const tellsWork = (line: string): boolean => {
  const tokens = tokensOf(line.slice(0, MOST_READ_AS_STEP))
  return tokens.length > 2 && tokens.some((_, at) => verbAt(tokens, at) !== null)
}

/** "Leek soup (serves 6)", "Leek soup - feeds 4": the title without its yield. */
const readTitle = (line: string, mark: DecimalMark): { title: string; yields: Yields | null } => {
  const found = /^(.{1,200}?)(?:\s?\(([^()]{1,60})\)\s?:?|\s[–—-]\s([^–—]{1,60}))$/u.exec(line)
  const said = found?.[2] ?? found?.[3] ?? ''
  // "Leek soup (6)"
  const parts = found?.[2] && /^\d{1,2}(?: ?[–-] ?\d{1,2})?$/.test(said) ? [`serves ${said}`] : said.split(',')
  const yields = parts.map((part) => readYields(part.trim(), mark)).find((each) => each !== null) ?? null
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
    if (mode === 'steps' || (!amount && startsSteps)) addStep(withoutBullet(words), false)
    else if (amount || mode === 'ingredients') {
      mode = 'ingredients'
      for (const each of amountsIn(withoutBullet(words))?.lines ?? [words]) ingredients.push(readIngredient(each, section, mark))
    } else leftOver.push(words)
  }

  let methodHeaded = false
  const lines = text.split(/\r\n|[\n\r]/u).map((raw) => raw.trim())
  for (const [i, words] of lines.entries()) {
    const next = lines[i + 1] ?? ''
    // A text without headings may list ingredients again after some steps: part by part.
    const again = mode === 'steps' && !methodHeaded && blank && numbers === 0
    const line = plainLine(words, mark, mode === 'steps' && !again, numbers + 1)
    const named = line.kind === 'words' && !line.amount && !line.sentence && isPartName(words, next, mark)
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
      methodHeaded = true
      section = null
    } else if (named && (mode === 'head' || (blank && (mode === 'ingredients' || again)))) {
      enter('ingredients')
      section = words
    } else if (line.kind === 'words' && blank && ingredients.length > 0 && isMethodPart(words, next)) {
      enter('steps')
      section = words
    } else if (line.kind === 'words' && mode !== 'steps' && !line.amount && amountsIn(words)) {
      enter('ingredients')
      const listed = amountsIn(words)
      for (const each of listed?.lines ?? []) ingredients.push(readIngredient(each, listed?.name ?? section, mark))
    } else if (line.kind === 'words' && line.amount && again && hasAmount(next, mark)) {
      enter('ingredients')
      addWords(words, line)
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
  // No list and no number anywhere: what tells of work is a method all the same.
  const onlyWords = ingredients.length === 0 && steps.length === 0
  const kept: string[] = []
  for (const words of leftOver)
    if (onlyWords && tellsWork(words)) steps.push({ text: words, section: null, numbered: false })
    else kept.push(words)
  const bare = bareScaleOf(text)
  return {
    title,
    yields,
    ingredients,
    steps: steps.filter((step) => step.text !== '').map((step) => readStep(step.text, step.section, mark, bare)),
    total,
    leftOver: kept,
  }
}
