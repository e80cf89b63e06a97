import Fraction from 'fraction.js'
import { parseIngredient } from 'parse-ingredient'
import { foodNature } from '#lib/domain/food-nature.ts'
import { endOf, headOf } from './amount.ts'
import { COUNT_UNITS, countUnit } from './count-units.ts'
import { amountOf, measuredAt } from './measure.ts'
import { isReadable, rangeAt } from './number.ts'
import type { Amount, DecimalMark, Doubt, IngredientLine } from './preview.ts'
import { type Token, tokenAt, tokensOf } from './tokens.ts'

/** A line longer than this is shown and not read. */
export const LONGEST_LINE = 300

const BULLET = /^\s*(?:[-–—•*·▪◦‣☐□✓+]\s*)+/u
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

const numberDoubts = (tokens: readonly Token[], from: number, mark: DecimalMark): Doubt[] =>
  tokens.slice(from).flatMap((token, i): Doubt[] => {
    if (token.kind !== 'number') return []
    if (!isReadable(token.text, mark))
      return [{ kind: /[.,]/.test(token.text) ? 'decimal' : 'number', from: token.from, to: token.to }]
    return tokenAt(tokens, from + i - 1).low === 'or' ? [{ kind: 'alternative', from: token.from, to: token.to }] : []
  })

/** "juice of ½ lemon", "zest of half an orange", "grated zest of 1 lemon": the count stands inside; the food is what is left. */
const insideOf = (text: string, tokens: readonly Token[], mark: DecimalMark): { amount: Amount | null; food: string } | null => {
  for (let at = 1; at < Math.min(tokens.length, 12); at += 1) {
    const range = /^(of|from)$/.test(tokenAt(tokens, at - 1).low) ? rangeAt(tokens, at, mark) : null
    const rest = range ? tokenAt(tokens, range.next) : null
    if (range && rest && rest.from >= 0)
      return {
        amount: amountOf(range.least, range.most, ''),
        food: text.slice(0, tokenAt(tokens, at).from) + text.slice(rest.from),
      }
  }
  // What is left of odd ways of writing (".5 kg"), parse-ingredient may know.
  const [found] = parseIngredient(text, { additionalUOMs: COUNT_UNITS, round: false })
  if (!found || found.isGroupHeader || found.quantity === null) return null
  const unit = found.unitOfMeasure ? (countUnit(found.unitOfMeasure) ?? found.unitOfMeasure) : ''
  const least = new Fraction(found.quantity)
  return {
    amount: amountOf(least, found.quantity2 === null ? least : new Fraction(found.quantity2), unit),
    food: found.description,
  }
}

/** Whether a line without an amount needs none: it says so, or is of the kind that is always to taste. */
const isToTaste = (text: string, food: string): boolean =>
  EXTRA.test(` ${text}`) || /\b(salt|pepper|seasoning|water|oil)\b/iu.test(food) || foodNature(food) === 'spice'

/** Reads one line of a list of ingredients. What it does not understand is in `doubts`; the text stays as it is. */
export const readIngredient = (line: string, section: string | null, mark: DecimalMark): IngredientLine => {
  const text = line.replace(BULLET, '').trim()
  const blank = { text, section, note: '', amount: null, pack: null, also: [] }
  if (text.length > LONGEST_LINE)
    return {
      ...blank,
      food: text.slice(0, 200),
      scales: 'by-taste',
      doubts: [{ kind: 'too-long', from: LONGEST_LINE, to: text.length }],
    }
  const tokens = tokensOf(text)
  const head = headOf(tokens, 0, mark)
  if (head) {
    const of = tokenAt(tokens, head.next).low === 'of' ? head.next + 1 : head.next
    const from = tokenAt(tokens, of).from
    const { food, note } = splitFood(from < 0 ? '' : text.slice(from))
    const each = eachOf(note, mark)
    const doubts = [...head.doubts, ...numberDoubts(tokens, of, mark)]
    if (food === '') doubts.push({ kind: 'number', from: 0, to: text.length })
    if (/[.!]$/.test(text) && text.split(' ').length > 6) doubts.push({ kind: 'sentence', from: 0, to: text.length })
    return {
      ...blank,
      food: food || text,
      note,
      amount: head.amount,
      pack: head.pack ?? each,
      also: head.also,
      scales: scalesOf(food, head.amount),
      doubts,
    }
  }
  const end = endOf(tokens, mark)
  if (end) {
    const { food, note } = splitFood(text.slice(0, tokenAt(tokens, end.from).from).replace(/[\s:–—-]+$/u, ''))
    return {
      ...blank,
      food,
      note,
      amount: end.head.amount,
      also: end.head.also,
      scales: scalesOf(food, end.head.amount),
      doubts: [...end.head.doubts],
    }
  }
  const strange = numberDoubts(tokens, 0, mark)
  const inside = strange.length === 0 ? insideOf(text, tokens, mark) : null
  if (inside) {
    const { food, note } = splitFood(inside.food)
    return { ...blank, food, note, amount: inside.amount, scales: scalesOf(food, inside.amount), doubts: [] }
  }
  // A line without an amount is not cut at its comma: "salt, pepper".
  const at = text.search(EXTRA)
  const food = at > 0 ? text.slice(0, at).replace(/[\s,(]+$/u, '') : text
  const doubts: Doubt[] =
    strange.length > 0 ? strange : isToTaste(text, food) ? [] : [{ kind: 'no-amount', from: 0, to: text.length }]
  return { ...blank, food, note: at > 0 ? text.slice(at).trim() : '', scales: 'by-taste', doubts }
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
