import {
  hasAmount,
  isIngredientsHeading,
  isMethodHeading,
  readSection,
  readTotals,
  readYields,
  stepNumber,
} from './head-lines.ts'
import type { DecimalMark, RecipePreview, Yields } from './preview.ts'

/** What a line of a recipe written in words is, by itself. */
export type PlainLine =
  | { readonly kind: 'blank' }
  | { readonly kind: 'ingredients-heading' }
  | { readonly kind: 'method-heading' }
  | { readonly kind: 'facts'; readonly yields: Yields | null; readonly total: RecipePreview['total'] }
  | { readonly kind: 'section'; readonly name: string }
  | { readonly kind: 'numbered'; readonly words: string }
  /** `amount`: it looks like a line of ingredients; `sentence`: it reads like a step. */
  | { readonly kind: 'words'; readonly amount: boolean; readonly sentence: boolean }

const NO_TOTAL: RecipePreview['total'] = { prep: null, cook: null, total: null }

/** Whether a line without an amount reads like a step rather than like food: it ends as a sentence, or is long. */
export const isSentence = (line: string): boolean => line.length > 100 || /[.!]$/.test(line)

/** "salt the legs, cover, leave overnight." begins as an ingredient might, and is none. */
const isWordySentence = (line: string): boolean =>
  isSentence(line) && (line.length > 60 || (/^\p{L}/u.test(line) && line.split(/\s+/u).length > 4))

/** Yields and times of a line's parts between bars ("SERVES 4 | PREP 15 MINS"); null when one part is neither. */
const readFacts = (line: string, mark: DecimalMark): { yields: Yields | null; total: RecipePreview['total'] } | null => {
  if (line.length > 200) return null
  let [yields, total]: [Yields | null, RecipePreview['total']] = [null, NO_TOTAL]
  for (const part of line.split(/[|·•;\t]|\/\/| \/ | {3,}/u).map((each) => each.trim())) {
    if (part === '') continue
    const times = readTotals(part, mark)
    const amount = times ? null : readYields(part, mark)
    if (!times && !amount) return null
    total = { ...total, ...times }
    yields ??= amount
  }
  return { yields, total }
}

/** "2 Toss the potatoes in the oil.": the next number, without a stop, before a sentence. */
const bareNumber = (line: string, expected: number): number => {
  const found = /^(\d{1,2})\s+(?=\p{Lu})/u.exec(line)
  return found && Number(found[1]) === expected && isSentence(line) && line.split(' ').length > 4 ? found[0].length : 0
}

/** "1. 5 kg": a broken decimal rather than a numbered step. */
const isBrokenDecimal = (words: string): boolean => /^\s*\d{1,3}\s*(?:g|kg|ml|l|dl|cl)\b/iu.test(words)

/** What a trimmed line is. In the method there are no facts and amounts any more; `expected` is the number that the next step would have. */
export const plainLine = (line: string, mark: DecimalMark, inMethod: boolean, expected: number): PlainLine => {
  // A row of dashes or stars parts what stands above it from what stands below.
  if (!/[\p{L}\p{N}]/u.test(line)) return { kind: 'blank' }
  if (isIngredientsHeading(line)) return { kind: 'ingredients-heading' }
  if (isMethodHeading(line)) return { kind: 'method-heading' }
  const facts = inMethod ? null : readFacts(line, mark)
  if (facts) return { kind: 'facts', ...facts }
  const name = readSection(line)
  if (name !== null) return { kind: 'section', name }
  const number = stepNumber(line) || bareNumber(line, expected)
  const words = line.slice(number).trim()
  if (number > 0 && (inMethod || !isBrokenDecimal(words))) return { kind: 'numbered', words }
  return { kind: 'words', amount: !inMethod && hasAmount(line, mark) && !isWordySentence(line), sentence: isSentence(line) }
}
