import {
  hasAmount,
  isIngredientsHeading,
  isMethodHeading,
  readSection,
  readTotals,
  readYields,
  stepNumber,
} from './head-lines.ts'
import { readIngredient } from './ingredient.ts'
import type { DecimalMark, IngredientLine, StepPreview, Yields } from './preview.ts'
import { readStep } from './step.ts'

/** What plain text gives; the rest of a preview is worked out from it. */
export interface PlainParts {
  readonly title: string | null
  readonly yields: Yields | null
  readonly ingredients: readonly IngredientLine[]
  readonly steps: readonly StepPreview[]
  readonly total: { readonly prep: number | null; readonly cook: number | null; readonly total: number | null }
  readonly leftOver: readonly string[]
}

const BULLET = /^\s*[•*·▪◦‣☐□✓–—-]\s+/u

/** Whether a line without an amount reads like a step rather than like food: it ends as a sentence, or is long. */
const isSentence = (line: string): boolean => line.length > 100 || /[.!]$/.test(line)

/** "salt the legs, cover, leave overnight." begins as an ingredient might, and is none. */
const isWordySentence = (line: string): boolean =>
  isSentence(line) && (line.length > 60 || (/^\p{L}/u.test(line) && line.split(/\s+/u).length > 4))

interface OpenStep {
  text: string
  readonly section: string | null
  readonly numbered: boolean
}

/**
 * Reads a recipe written as lines. Before any heading the first line is the title; lines that begin with an amount are ingredients
 * until, after a blank line or a heading, one does not; then each numbered line or paragraph is a step. Lines that fit nowhere are
 * left over.
 */
export const readPlain = (text: string, mark: DecimalMark): PlainParts => {
  let mode: 'head' | 'ingredients' | 'steps' = 'head'
  let headed = false
  let title: string | null = null
  let yields: Yields | null = null
  let section: string | null = null
  let blank = false
  const total = { prep: null as number | null, cook: null as number | null, total: null as number | null }
  const ingredients: IngredientLine[] = []
  const steps: OpenStep[] = []
  const leftOver: string[] = []
  let waiting = false
  let expected = 1

  const addStep = (words: string, numbered: boolean) => {
    mode = 'steps'
    const last = steps.at(-1)
    const goesOn = !numbered && last?.numbered && !blank
    if (last && goesOn) last.text = `${last.text} ${words}`.trim()
    else steps.push({ text: words, section, numbered })
  }

  for (const raw of text.split(/\r\n|[\n\r]/u)) {
    const line = raw.trim()
    if (line === '') {
      blank = true
      continue
    }
    const wasBlank = blank
    // "SERVES 4 | PREP 15 MINS | COOK 50 MINS" is three lines in one.
    const facts = mode === 'steps' ? null : readFacts(line, mark)
    const totals = facts ? facts.totals : null
    const amount = facts ? facts.yields : null
    const numberEnd = stepNumber(line) || bareNumber(line, expected)
    const part = readSection(line)
    if (isIngredientsHeading(line)) [mode, headed, section] = ['ingredients', true, null]
    else if (isMethodHeading(line)) [mode, section] = ['steps', null]
    else if (totals) {
      for (const which of ['prep', 'cook', 'total'] as const) total[which] ??= totals[which] ?? null
      if (amount) yields ??= amount
    } else if (amount && (title !== null || yields === null)) {
      // "for 6:" is said once; a second amount is a line like any other.
      if (yields === null) yields = amount
      else leftOver.push(line)
    } else if (title === null && mode === 'head' && !hasAmount(line, mark) && !numberEnd) {
      const bracket = /^(.{1,200}?)(?:\s?\(([^()]{1,60})\)\s?:?|\s[–—-]\s([^–—]{1,60}))$/u.exec(line)
      const said = bracket?.[2] ?? bracket?.[3]
      const inTitle = said ? readYields(said, mark) : null
      title = inTitle ? (bracket?.[1] ?? line) : line
      if (inTitle) yields = inTitle
    } else if (part !== null && !(mode === 'steps' && waiting)) {
      section = part
      if (mode === 'head') mode = 'ingredients'
    } else if (numberEnd > 0 && (mode === 'steps' || !beginsWithUnit(line.slice(numberEnd)))) {
      const words = line.slice(numberEnd).trim()
      if (mode !== 'steps') section = null
      mode = 'steps'
      expected += 1
      waiting = words === ''
      blank = true
      steps.push({ text: words, section, numbered: true })
    } else if (mode === 'steps') {
      blank = wasBlank && !waiting
      if (waiting) blank = false
      addStep(line.replace(BULLET, ''), false)
      waiting = false
    } else if (hasAmount(line, mark) && !isWordySentence(line)) {
      mode = 'ingredients'
      ingredients.push(readIngredient(line, section, mark))
    } else if (mode === 'ingredients') {
      const startsSteps =
        ingredients.length > 0 && ((!headed && (wasBlank || isSentence(line))) || (wasBlank && isSentence(line)))
      if (startsSteps) {
        section = null
        addStep(line.replace(BULLET, ''), false)
      } else ingredients.push(readIngredient(line, section, mark))
    } else if (isSentence(line) && ingredients.length > 0) addStep(line, false)
    else leftOver.push(line)
    blank = false
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

const NO_TOTALS: PlainParts['total'] = { prep: null, cook: null, total: null }

/** Yields and times of a line's parts between bars; null when one part is neither. */
const readFacts = (line: string, mark: DecimalMark): { yields: Yields | null; totals: PlainParts['total'] | null } | null => {
  const parts = line.length > 200 ? [] : line.split(/[|·•]/u).map((part) => part.trim())
  let yields: Yields | null = null
  let totals: PlainParts['total'] | null = null
  for (const part of parts) {
    const times = readTotals(part, mark)
    const amount = times ? null : readYields(part, mark)
    if (times) totals = { ...(totals ?? NO_TOTALS), ...times }
    else if (amount) yields ??= amount
    else return null
  }
  return yields || totals ? { yields, totals } : null
}

/** "2 Toss the potatoes in the oil.": the next number, without a stop, before a sentence. */
const bareNumber = (line: string, expected: number): number => {
  const found = /^(\d{1,2})\s+(?=\p{Lu})/u.exec(line)
  return found && Number(found[1]) === expected && isSentence(line) && line.split(' ').length > 4 ? found[0].length : 0
}

/** "1. 5 kg": a broken decimal rather than a numbered step. */
const beginsWithUnit = (words: string): boolean => /^\s*\d{1,3}\s*(?:g|kg|ml|l|dl|cl)\b/iu.test(words)
