import { cleanText } from '#lib/domain/atoms.ts'
import type { Ingredient } from '#lib/domain/ingredient.ts'
import type { Step } from '#lib/domain/menu.ts'
import { isOpen, type Measures, nameUnit, ownerIn, type UnitOwner, unitText } from '#lib/domain/unit-words.ts'
import { headOf } from './amount.ts'
import type { Amount, DecimalMark, IngredientLine } from './preview.ts'
import { tokenAt, tokensOf } from './tokens.ts'

/** One clean line of at most so many UTF-16 units, never half a character. */
export const lineOf = (text: string, most: number): string => {
  const clean = cleanText(text, false).replace(/\s+/gu, ' ').trim()
  return clean.length <= most
    ? clean
    : `${clean
        .slice(0, most - 1)
        .replace(/[\ud800-\udbff]$/u, '')
        .trimEnd()}…`
}

/** "½ cup cream, US": whose measure it is, said behind the food. */
const ownerSaid = (note: string): UnitOwner | null => nameUnit(`${note.replace(/[()]/g, '').trim()} cup`)?.owner ?? null

const unitOf = (line: IngredientLine, amount: Amount, measures: Measures | null): string => {
  const named = nameUnit(amount.unit)
  if (named) {
    const said = isOpen(named.word) ? ownerSaid(line.note) : null
    return unitText({ word: named.word, owner: named.owner ?? said ?? (measures ? ownerIn(measures, named.word) : null) })
  }
  return line.pack && amount.unit !== '' ? `${line.pack.n} ${line.pack.unit} ${amount.unit}` : amount.unit
}

const foodOf = (line: IngredientLine): string => {
  const each =
    line.pack && (line.amount?.unit ?? '') === '' && !line.note.includes('each') ? ` (${line.pack.n} ${line.pack.unit} each)` : ''
  const said = line.amount !== null && isOpen(nameUnit(line.amount.unit)?.word ?? 'g') && ownerSaid(line.note) !== null
  const note = line.note === '' || said ? '' : line.note.startsWith('(') ? ` ${line.note}` : `, ${line.note}`
  return lineOf(`${line.food}${each}${note}`, 200) || '?'
}

/** The first step that names a food by its last word ("carrots" for "4 carrots"). */
const stepNaming = (line: IngredientLine, steps: readonly Step[]): string | undefined => {
  const word = line.food
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((each) => each.length > 2)
    .at(-1)
  if (!word) return undefined
  const stem = word.replace(/(?:es|s)$/u, '')
  return steps.find((step) => step.does.toLowerCase().includes(stem))?.id
}

/**
 * An ingredient from a line that was read, but for its id and place. The step is the first that names it; its allergens are not
 * known. Measures null leaves a bare cup bare: quantities will ask whose it is.
 */
export const ingredientOf = (
  line: IngredientLine,
  steps: readonly Step[],
  measures: Measures | null,
): Omit<Ingredient, 'id' | 'dish' | 'order'> => {
  const step = stepNaming(line, steps)
  return {
    ...(step ? { step } : {}),
    food: foodOf(line),
    amount: line.amount && { ...line.amount, unit: lineOf(unitOf(line, line.amount, measures), 40) },
    scales: line.scales,
    allergens: [],
    // A recipe's words never say that something is free of anything.
    checked: 'unknown',
    contains: [],
  }
}

/**
 * An amount that stands alone: "½ cup", "2 to 3", "1 x 400 g tin", "a pinch"; a word behind a number that is no known measure counts
 * ("3 blobs"). Null when there is no number, or more than an amount.
 */
export const readAmount = (text: string, mark: DecimalMark): Amount | null => {
  const clean = lineOf(text, 80)
  const tokens = tokensOf(clean)
  const head = headOf(tokens, 0, mark)
  if (!head?.amount || head.doubts.length > 0) return null
  const { amount, pack } = head
  const rest = head.next < tokens.length ? clean.slice(tokenAt(tokens, head.next).from) : ''
  if (rest !== '')
    return amount.unit === '' && pack === null && /^\p{L}[\p{L} -]{0,39}$/u.test(rest) ? { ...amount, unit: rest } : null
  return pack && amount.unit !== '' ? { ...amount, unit: lineOf(`${pack.n} ${pack.unit} ${amount.unit}`, 40) } : amount
}
