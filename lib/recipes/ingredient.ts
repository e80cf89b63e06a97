import Fraction from 'fraction.js'
import { parseIngredient } from 'parse-ingredient'
import { foodNature } from '#lib/domain/food-nature.ts'
import { CONTAINERS, endOf, type Head, headOf } from './amount.ts'
import { withoutBullet } from './bullet.ts'
import { COUNT_UNITS, countUnit } from './count-units.ts'
import { amountOf, measuredAt } from './measure.ts'
import { isReadable, rangeAt } from './number.ts'
import type { Amount, DecimalMark, Doubt, IngredientLine, Stretch } from './preview.ts'
import { isNumeral, type Token, tokenAt, tokensOf } from './tokens.ts'

/** A line longer than this is shown and not read. */
export const LONGEST_LINE = 300

const EXTRA =
  /\s+(?:\+|plus)\s+(?:more|extra)\b|\s\(?(?:to taste|to serve|to garnish|to finish|to decorate|for frying|for serving|for dusting|for greasing|for the table|optional)\b/iu

/** The food and what is said about it: cut at the first comma, bracket, "plus extra" or "to serve". */
const splitFood = (text: string): { food: string; note: string } => {
  const cut = [text.search(/[,(;]|\s[–—-]\s/u), text.search(EXTRA)].filter((at) => at > 0)
  const at = cut.length > 0 ? Math.min(...cut) : text.length
  return {
    food: text.slice(0, at).trim(),
    note: text
      .slice(at)
      .replace(/^[\s,;–—-]+/u, '')
      .trim(),
  }
}

const scalesOf = (food: string, amount: Amount | null): IngredientLine['scales'] => {
  const nature = foodNature(food)
  if (amount === null || nature === 'salt' || nature === 'spice') return 'by-taste'
  if (/pinch|dash|splash|drizzle|glug|knob|handful|squeeze|grind|grating/.test(amount.unit)) return 'by-taste'
  const countable = /^(|small|medium|large|clove|slice|sheet|sprig|head|fillet|rasher)$/.test(amount.unit)
  return countable && !amount.n.includes('/') ? 'whole' : 'yes'
}

interface Rest {
  readonly told: readonly Stretch[]
  readonly also: readonly Amount[]
  readonly doubts: readonly Doubt[]
}

const IS_LENGTH = /^(mm|cm|centimetres?|centimeters?|inch|inches|%)$/
const AMOUNT_ENDS = /^([),;]|each|total|in|weight|drained|unpeeled|peeled)?$/
const NUMBER_WORD = /^(one|two|three|four|five|six|seven|eight|nine|ten|twelve)$/

/**
 * The numbers behind an amount: the same again in another measure ("about 300 g"), how it is cut ("into 8", "3 cm thick"); all others are
 * in doubt, for they may be a second food ("4 cloves, 1 cinnamon stick") or another choice.
 */
const restOf = (tokens: readonly Token[], from: number, mark: DecimalMark): Rest => {
  const told: Stretch[] = []
  const also: Amount[] = []
  const doubts: Doubt[] = []
  let at = from
  while (at < tokens.length) {
    const token = tokenAt(tokens, at)
    if (!isNumeral(token) && !NUMBER_WORD.test(token.low)) {
      at += 1
      continue
    }
    const range = rangeAt(tokens, at, mark)
    const size = range && measuredAt(tokens, at, mark)
    const next = size ? size.next : range ? range.next : at + 1
    const stretch = { from: token.from, to: tokenAt(tokens, next - 1).to }
    const before = tokenAt(tokens, at - 1).low
    const unit = tokenAt(tokens, tokenAt(tokens, next).text === '-' ? next + 1 : next).low
    if (!range) doubts.push({ kind: /[.,]/.test(token.text) ? 'decimal' : 'number', ...stretch })
    else if (size && before !== 'or' && AMOUNT_ENDS.test(tokenAt(tokens, next).low)) {
      const amount = amountOf(range.least, range.most, size.unit)
      if (amount) also.push(amount)
      told.push(stretch)
    } else if (IS_LENGTH.test(unit) || (!size && /^(into|in)$/.test(before))) told.push(stretch)
    // "the small ones", "one by one"
    else if (token.kind !== 'word' || token.low !== 'one')
      doubts.push({ kind: before === 'or' ? 'alternative' : 'number', ...stretch })
    at = next
  }
  return { told, also, doubts }
}

const ONE_NUMBER = /^[^\p{N}]{0,3}\p{N}[\p{N}.,/]*[^\p{N}]*$/u

/** "juice of ½ lemon", "zest of half an orange", "grated zest of 1 lemon": the count stands inside; the food is what is left. */
const insideOf = (
  text: string,
  tokens: readonly Token[],
  mark: DecimalMark,
): { amount: Amount | null; food: string; told: Stretch; next: number } | null => {
  for (let at = 1; at < Math.min(tokens.length, 12) && !isNumeral(tokenAt(tokens, at - 1)); at += 1) {
    const range = /^(of|from)$/.test(tokenAt(tokens, at - 1).low) ? rangeAt(tokens, at, mark) : null
    const rest = range ? tokenAt(tokens, range.next) : null
    if (range && rest && rest.from >= 0)
      return {
        amount: amountOf(range.least, range.most, ''),
        food: text.slice(0, tokenAt(tokens, at).from) + text.slice(rest.from),
        told: { from: tokenAt(tokens, at).from, to: tokenAt(tokens, range.next - 1).to },
        next: range.next,
      }
  }
  // What is left of odd ways of writing (".5 kg"), parse-ingredient may know.
  const [found] = parseIngredient(text, { additionalUOMs: COUNT_UNITS, round: false })
  if (!found || found.isGroupHeader || found.quantity === null || !text.endsWith(found.description)) return null
  const length = text.length - found.description.length
  if (!ONE_NUMBER.test(text.slice(0, length))) return null
  const unit = found.unitOfMeasure ? (countUnit(found.unitOfMeasure) ?? found.unitOfMeasure) : ''
  const least = new Fraction(found.quantity)
  return {
    amount: amountOf(least, found.quantity2 === null ? least : new Fraction(found.quantity2), unit),
    food: found.description,
    told: { from: 0, to: length },
    next: tokens.filter((token) => token.from < length).length,
  }
}

/** Whether a line without an amount needs none: it says so, or is of the kind that is always to taste. */
const isToTaste = (text: string, food: string): boolean =>
  EXTRA.test(` ${text}`) || /\b(salt|pepper|seasoning|water|oil)\b/iu.test(food) || foodNature(food) === 'spice'

/** Reads one line of a list of ingredients. What it does not understand is in `doubts`; the text stays as it is. */
export const readIngredient = (line: string, section: string | null, mark: DecimalMark): IngredientLine => {
  const text = withoutBullet(line)
  const blank = { text, section, note: '', amount: null, pack: null, also: [], told: [] }
  if (text.length > LONGEST_LINE)
    return {
      ...blank,
      food: text.slice(0, 200),
      scales: 'by-taste',
      doubts: [{ kind: 'too-long', from: 0, to: text.length }],
    }
  const tokens = tokensOf(text)
  const head = headOf(tokens, 0, mark)
  if (head) return withHead(text, tokens, head, section, mark)
  const end = endOf(tokens, mark)
  if (end) {
    const { food, note } = splitFood(text.slice(0, tokenAt(tokens, end.from).from).replace(/[\s:,–—-]+$/u, ''))
    const rest = restOf(tokens, end.head.next, mark)
    const behind = text.slice(tokenAt(tokens, end.head.next - 1).to).replace(/^[\s,;]+/u, '')
    return {
      ...blank,
      food,
      note: [note, behind].filter(Boolean).join(', '),
      amount: end.head.amount,
      also: [...end.head.also, ...rest.also],
      scales: scalesOf(food, end.head.amount),
      told: [{ from: tokenAt(tokens, end.from).from, to: tokenAt(tokens, end.head.next - 1).to }, ...rest.told],
      doubts: [...end.head.doubts, ...rest.doubts],
    }
  }
  const readable = tokens.every((token) => token.kind !== 'number' || isReadable(token.text, mark))
  const inside = readable ? insideOf(text, tokens, mark) : null
  if (inside) {
    const { food, note } = splitFood(inside.food)
    const rest = restOf(tokens, inside.next, mark)
    return {
      ...blank,
      food,
      note,
      amount: inside.amount,
      also: rest.also,
      scales: scalesOf(food, inside.amount),
      told: [inside.told, ...rest.told],
      doubts: rest.doubts,
    }
  }
  // A line without an amount is not cut at its comma: "salt, pepper".
  const at = text.search(EXTRA)
  const food = at > 0 ? text.slice(0, at).replace(/[\s,(]+$/u, '') : text
  const rest = restOf(tokens, 0, mark)
  const none: Doubt[] =
    rest.doubts.length === 0 && !isToTaste(text, food) ? [{ kind: 'no-amount', from: 0, to: text.length }] : []
  return {
    ...blank,
    food,
    note: at > 0 ? text.slice(at).trim() : '',
    scales: 'by-taste',
    told: rest.told,
    doubts: [...rest.doubts, ...none],
  }
}

const withHead = (
  text: string,
  tokens: readonly Token[],
  head: Head,
  section: string | null,
  mark: DecimalMark,
): IngredientLine => {
  const of = tokenAt(tokens, head.next).low === 'of' ? head.next + 1 : head.next
  const from = tokenAt(tokens, of).from
  const split = splitFood(from < 0 ? '' : text.slice(from))
  // "3 cloves": what would count is here the food itself.
  const itself =
    split.food === '' && head.amount !== null && /^[a-z]+$/.test(head.amount.unit) ? tokenAt(tokens, head.next - 1).text : ''
  const amount = itself && head.amount ? { ...head.amount, unit: '' } : head.amount
  const food = split.food || itself
  const rest = restOf(tokens, of, mark)
  const doubts = [...head.doubts, ...rest.doubts]
  if (food === '') doubts.push({ kind: 'number', from: 0, to: text.length })
  if (/[.!]$/.test(text) && text.split(' ').length > 6) doubts.push({ kind: 'sentence', from: 0, to: text.length })
  const each = eachOf(split.note, mark)
  // "1 tin tomatoes (400 g)": a tin's weight is the tin's.
  const boxed = !head.pack && !each && amount !== null && CONTAINERS.test(amount.unit) ? (rest.also[0] ?? null) : null
  return {
    text,
    section,
    food: food || text,
    note: split.note,
    amount,
    pack: head.pack ?? each ?? boxed,
    also: [...head.also, ...(each || boxed ? [] : rest.also)],
    scales: scalesOf(food, amount),
    told: [{ from: 0, to: tokenAt(tokens, Math.max(0, head.next - 1)).to }, ...rest.told],
    doubts,
  }
}

/** "(about 160 g each)": the size of each piece. */
const eachOf = (note: string, mark: DecimalMark): Amount | null => {
  const tokens = tokensOf(note)
  const each = tokens.findIndex((token) => token.low === 'each')
  if (each < 0) return null
  for (let at = 0; at < each; at += 1) {
    const size = measuredAt(tokens, at, mark)
    if (size && size.next === each) return amountOf(size.range.least, size.range.most, size.unit)
  }
  return null
}
