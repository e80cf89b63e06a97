import Fraction from 'fraction.js'
import { parseIngredient } from 'parse-ingredient'
import { foodNature } from '#lib/domain/food-nature.ts'
import type { UnitWord } from '#lib/domain/unit-words.ts'
import { COUNT_UNITS, countUnit } from './count-units.ts'
import { amountOf, measuredAt, unitAt } from './measure.ts'
import { isReadable, type ReadRange, rangeAt } from './number.ts'
import type { Amount, DecimalMark, Doubt, IngredientLine } from './preview.ts'
import { phraseAt, phrases, type Token, tokenAt, tokensOf } from './tokens.ts'

/** A line longer than this is shown and not read. */
export const LONGEST_LINE = 300

const BULLET = /^\s*(?:[-–—•*·▪◦‣☐□✓+]\s*)+/u
const HEAPED = phrases('heaped', 'level', 'rounded', 'scant', 'generous')
const ABOUT = phrases(
  'about',
  'approximately',
  'approx .',
  'approx',
  'roughly',
  'around',
  'ca .',
  'ca',
  'scant',
  'a scant',
  'heaped',
  'a heaped',
  'generous',
  'a generous',
  'level',
)

// How many of the smaller are one of the larger where no country disagrees; a tablespoon of three or four teaspoons is not here.
const PER: Partial<Record<UnitWord, Partial<Record<UnitWord, string>>>> = {
  lb: { oz: '16' },
  kg: { g: '1000' },
  stone: { lb: '14' },
  l: { ml: '1000', dl: '10', cl: '100' },
  cup: { cup: '1' },
  quart: { pint: '2' },
}
const SPOONS_OF_A_SPOON = '3'

interface Head {
  readonly amount: Amount | null
  readonly pack: Amount | null
  readonly also: readonly Amount[]
  readonly doubts: readonly Doubt[]
  /** The first token after the amount. */
  readonly next: number
}

const stretch = (tokens: readonly Token[], from: number, next: number) => ({
  from: tokenAt(tokens, from).from,
  to: tokenAt(tokens, Math.max(from, next - 1)).to,
})

/** A measure that follows another to be added ("1 lb 2 oz", "2 tbsp plus 1 tsp"), or to say the same again ("/7 fl oz", "(120 g)"). */
const tailOf = (tokens: readonly Token[], first: NonNullable<ReturnType<typeof measuredAt>>, mark: DecimalMark): Head => {
  let { least, most } = first.range
  let { next } = first
  const also: Amount[] = []
  const doubts: Doubt[] = []
  for (let turn = 0; turn < 4; turn += 1) {
    const sign = tokenAt(tokens, next)
    const plus = /^(plus|\+|and)$/.test(sign.low)
    const again = sign.text === '/' || sign.text === '('
    const second = measuredAt(tokens, plus || again ? next + 1 : next, mark)
    if (!second) break
    if (again) {
      const same = amountOf(second.range.least, second.range.most, second.unit)
      if (same) also.push(same)
      const closed = sign.text === '(' && tokenAt(tokens, second.next).text === ')'
      if (sign.text === '(' && !closed) break
      next = closed ? second.next + 1 : second.next
      // "1kg/2lb 4oz": the second measure may be a sum itself.
      const more = sign.text === '/' ? measuredAt(tokens, next, mark) : null
      const per = more ? PER[second.word]?.[more.word] : undefined
      if (more && per) {
        also.pop()
        const total = second.range.least.add(more.range.least.div(per))
        const sum = amountOf(total, total, second.unit)
        if (sum) also.push(sum)
        next = more.next
      }
      continue
    }
    const spoons = first.word === 'tbsp' && second.word === 'tsp'
    const per = second.word === first.word ? '1' : (PER[first.word]?.[second.word] ?? (spoons ? SPOONS_OF_A_SPOON : undefined))
    if (!per || (!plus && per === '1')) {
      doubts.push({ kind: 'sum', ...stretch(tokens, next, second.next) })
      next = second.next
      break
    }
    // An Australian tablespoon has four.
    if (spoons) doubts.push({ kind: 'sum', ...stretch(tokens, next, second.next) })
    least = least.add(second.range.least.div(per))
    most = most.add(second.range.most.div(per))
    next = second.next
  }
  return { amount: amountOf(least, most, first.unit), pack: null, also, doubts, next }
}

/** A pack after a count: "x 400 g tin", "(15-ounce) can", "14-ounce can". Null when there is none. */
const packAt = (tokens: readonly Token[], at: number, mark: DecimalMark): { pack: Amount | null; next: number } | null => {
  const sign = tokenAt(tokens, at).low
  const times = /^[x×]$/.test(sign)
  const open = sign === '('
  const size = measuredAt(tokens, times || open ? at + 1 : at, mark)
  if (!size || (open && tokenAt(tokens, size.next).text !== ')')) return null
  if (!times && !open && !tokenAt(tokens, at).spaced) return null
  return { pack: amountOf(size.range.least, size.range.most, size.unit), next: open ? size.next + 1 : size.next }
}

const SIZES = /^(small|medium|large|big|extra-large|good|generous|heaped|fat|thick|thin|little|whole|scant|rounded)$/

/** A word that counts, with a word of size before it ("small bunch", "large"): parse-ingredient's table and ours. */
const countAt = (tokens: readonly Token[], at: number): { unit: string; next: number } | null => {
  const [first, second] = [tokenAt(tokens, at), tokenAt(tokens, at + 1)]
  const stop = (next: number) => (tokenAt(tokens, next).text === '.' && !tokenAt(tokens, next).spaced ? next + 1 : next)
  if (first.kind !== 'word') return null
  const own = countUnit(first.text)
  const both = SIZES.test(first.low) && second.kind === 'word' ? countUnit(second.text) : null
  if (both && !SIZES.test(second.low)) return { unit: `${first.low} ${both}`, next: stop(at + 2) }
  return own ? { unit: own, next: stop(at + 1) } : null
}

const headOf = (tokens: readonly Token[], start: number, mark: DecimalMark): Head | null => {
  const at = start + phraseAt(tokens, start, ABOUT)
  const measured = measuredAt(tokens, at, mark)
  if (measured) return tailOf(tokens, measured, mark)
  const article = /^(a|an|one)$/.test(tokenAt(tokens, at).low)
  const counted = article ? countAt(tokens, at + 1) : null
  const one: ReadRange = { least: new Fraction(1), most: new Fraction(1), next: at + 1 }
  if (article && counted && !/^(little|whole|large|small|medium|big)$/.test(counted.unit))
    return { amount: amountOf(one.least, one.most, counted.unit), pack: null, also: [], doubts: [], next: counted.next }
  const measuredOne = article ? unitAt(tokens, at + 1) : null
  if (measuredOne)
    return { amount: amountOf(one.least, one.most, measuredOne.text), pack: null, also: [], doubts: [], next: measuredOne.next }
  const range = rangeAt(tokens, at, mark) ?? (article && tokenAt(tokens, at + 1).low !== 'little' ? one : null)
  if (range) {
    const approx = range.next + phraseAt(tokens, range.next, HEAPED)
    const heaped = approx > range.next ? unitAt(tokens, approx) : null
    if (heaped)
      return { amount: amountOf(range.least, range.most, heaped.text), pack: null, also: [], doubts: [], next: heaped.next }
    const packed = packAt(tokens, range.next, mark)
    const count = countAt(tokens, packed ? packed.next : range.next)
    const again = count && !packed ? packAt(tokens, count.next, mark) : null
    const next = again ? again.next : count ? count.next : packed ? packed.next : range.next
    const bracketed = again?.pack && tokenAt(tokens, count?.next ?? 0).text === '(' ? again.pack : null
    return {
      amount: amountOf(range.least, range.most, count?.unit ?? ''),
      pack: packed?.pack ?? null,
      also: bracketed ? [bracketed] : [],
      doubts: [],
      next: again && !bracketed ? (count?.next ?? next) : next,
    }
  }
  const bare = countAt(tokens, at)
  // "big handful of parsley", "pinch of salt"; but not "ball of dough" words that are the food itself, which an "of" tells.
  if (bare && tokenAt(tokens, bare.next).low === 'of')
    return { amount: amountOf(one.least, one.most, bare.unit), pack: null, also: [], doubts: [], next: bare.next }
  return null
}

/** "flour 200 g": the amount at the end of the line. */
const endOf = (tokens: readonly Token[], mark: DecimalMark): { head: Head; from: number } | null => {
  const from = tokens.findIndex((token) => token.kind === 'number' || token.kind === 'fraction')
  const last = from > 0 ? measuredAt(tokens, from, mark) : null
  if (!last) return null
  const head = tailOf(tokens, last, mark)
  return head.next >= tokens.length ? { head, from } : null
}

const EXTRA =
  /\s+(?:\+|plus)\s+(?:more|extra)\b|\s+(?:to taste|to serve|to garnish|to finish|to decorate|for frying|for serving|for dusting|for greasing|for the table|optional)\b/iu

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

/** "juice of ½ lemon", "grated zest of 1 orange": parse-ingredient finds the count inside. */
const insideOf = (text: string): { amount: Amount | null; food: string } | null => {
  const spelt = text.replace(/[¼-¾⅐-⅞]/gu, (part) => part.normalize('NFKC').replace('⁄', '/'))
  const [found] = parseIngredient(spelt, { additionalUOMs: COUNT_UNITS, round: false })
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
  const inside =
    strange.length === 0 && tokens.some((token) => token.kind === 'number' || token.kind === 'fraction') ? insideOf(text) : null
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
