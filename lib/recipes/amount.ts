import Fraction from 'fraction.js'
import type { UnitWord } from '#lib/domain/unit-words.ts'
import { countUnit } from './count-units.ts'
import { amountOf, measuredAt, unitAt } from './measure.ts'
import { numberAt, type ReadRange, rangeAt } from './number.ts'
import type { Amount, DecimalMark, Doubt } from './preview.ts'
import { isNumeral, phraseAt, phrases, type Token, tokenAt } from './tokens.ts'

const HEAPED = phrases('heaped', 'level', 'rounded', 'scant', 'generous', 'good', 'full', 'large', 'small', 'big', 'flat')
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
  quart: { pint: '2' },
}
const SPOONS_OF_A_SPOON = '3'

/** What an ingredient's line begins with. */
export interface Head {
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

/** "(1 stick)": the same again, counted. */
const bracketedCount = (
  tokens: readonly Token[],
  at: number,
  mark: DecimalMark,
): { amount: Amount | null; next: number } | null => {
  const range = rangeAt(tokens, at + 1, mark)
  const count = range && countAt(tokens, range.next)
  if (!range || !count || tokenAt(tokens, count.next).text !== ')') return null
  return { amount: amountOf(range.least, range.most, count.unit), next: count.next + 1 }
}

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
    const counted = sign.text === '(' && !second ? bracketedCount(tokens, next, mark) : null
    if (counted) {
      if (counted.amount) also.push(counted.amount)
      next = counted.next
      continue
    }
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

/** What is bought by the piece with its weight on it. */
export const CONTAINERS = /^(tin|can|jar|packet|package|bottle|pot|tub|block|bag|box|carton|sachet|pack|tube|pouch)$/
// Fewer or more than is said.
const NO_COUNT = /^(few|little|bit|lot)$/

const PIECES = /^(piece|knob|stick|strip|slice|chunk|thumb|length|sliver|section|hunk|block)s?$/

/** "a 5 cm piece of", "3cm piece", "2 x 10 cm strips": pieces of a size, counted. */
const piecesAt = (tokens: readonly Token[], at: number, mark: DecimalMark): Head | null => {
  const sizeEnd = (from: number): number => {
    const size = rangeAt(tokens, from, mark)
    if (!size) return -1
    const hyphen = tokenAt(tokens, size.next).text === '-' ? 1 : 0
    if (!/^(mm|cm|inch|inches|in|centimetres?|centimeters?)$/.test(tokenAt(tokens, size.next + hyphen).low)) return -1
    const end = size.next + hyphen + 1
    const long = tokenAt(tokens, end).text === '-' ? end + 1 : end
    return /^(long|thick|wide|square)$/.test(tokenAt(tokens, long).low) ? long + 1 : end
  }
  const article = /^(a|an|one)$/.test(tokenAt(tokens, at).low)
  const alone = sizeEnd(article ? at + 1 : at)
  const count = alone < 0 && !article ? numberAt(tokens, at, mark) : null
  const times = count && /^[x×]$/.test(tokenAt(tokens, count.next).low) ? 1 : 0
  const end = count ? sizeEnd(count.next + times) : alone
  const piece = tokenAt(tokens, end).low
  if (end < 0 || !PIECES.test(piece)) return null
  const n = count ? count.n : new Fraction(1)
  return { amount: amountOf(n, n, piece.replace(/s$/, '')), pack: null, also: [], doubts: [], next: end + 1 }
}

/** The amount that a line begins with, in whatever way it is written; null when it begins with none. */
export const headOf = (tokens: readonly Token[], start: number, mark: DecimalMark): Head | null => {
  const at = start + phraseAt(tokens, start, ABOUT)
  const pieces = piecesAt(tokens, at, mark)
  if (pieces) return pieces
  const measured = measuredAt(tokens, at, mark)
  if (measured) {
    // "400 g tin chopped tomatoes": one tin of that size.
    const container = countAt(tokens, measured.next)
    if (container && CONTAINERS.test(container.unit))
      return {
        amount: amountOf(new Fraction(1), new Fraction(1), container.unit),
        pack: amountOf(measured.range.least, measured.range.most, measured.unit),
        also: [],
        doubts: [],
        next: container.next,
      }
    return tailOf(tokens, measured, mark)
  }
  const article = /^(a|an|one)$/.test(tokenAt(tokens, at).low) && !NO_COUNT.test(tokenAt(tokens, at + 1).low)
  const counted = article ? countAt(tokens, at + 1) : null
  const one: ReadRange = { least: new Fraction(1), most: new Fraction(1), next: at + 1 }
  if (article && counted && !/^(little|whole|large|small|medium|big)$/.test(counted.unit))
    return { amount: amountOf(one.least, one.most, counted.unit), pack: null, also: [], doubts: [], next: counted.next }
  const measuredOne = article ? unitAt(tokens, at + 1) : null
  if (measuredOne)
    return { amount: amountOf(one.least, one.most, measuredOne.text), pack: null, also: [], doubts: [], next: measuredOne.next }
  const range = rangeAt(tokens, at, mark) ?? (article ? one : null)
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
  const guess = bare !== null && /(^| )(pinch|dash|handful|knob|splash|drizzle|squeeze|glug)$/.test(bare.unit)
  if (bare && (guess || tokenAt(tokens, bare.next).low === 'of'))
    return { amount: amountOf(one.least, one.most, bare.unit), pack: null, also: [], doubts: [], next: bare.next }
  return null
}

/** "flour 200 g", "butter - 100 g, softened": the amount behind the food. */
export const endOf = (tokens: readonly Token[], mark: DecimalMark): { head: Head; from: number } | null => {
  const from = tokens.findIndex(isNumeral)
  const last = from > 0 ? measuredAt(tokens, from, mark) : null
  if (!last) return null
  const head = tailOf(tokens, last, mark)
  return head.next >= tokens.length || /^[,(;]$/.test(tokenAt(tokens, head.next).text) ? { head, from } : null
}
