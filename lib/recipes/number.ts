import Fraction from 'fraction.js'
import { numericQuantity } from 'numeric-quantity'
import type { DecimalMark } from './preview.ts'
import { type Token, tokenAt } from './tokens.ts'

/** A number read at a place, and the place after it. */
export interface ReadNumber {
  readonly n: Fraction
  readonly next: number
}

export interface ReadRange {
  readonly least: Fraction
  readonly most: Fraction
  readonly next: number
}

const WORDS: Readonly<Record<string, number>> = {
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  ten: 10,
  eleven: 11,
  twelve: 12,
  fifteen: 15,
  twenty: 20,
  'twenty-five': 25,
  thirty: 30,
  forty: 40,
  'forty-five': 45,
  fifty: 50,
  sixty: 60,
  ninety: 90,
}
const PARTS: Readonly<Record<string, readonly [number, number]>> = {
  half: [1, 2],
  third: [1, 3],
  quarter: [1, 4],
  quarters: [1, 4],
  thirds: [1, 3],
}

const own = <T>(table: Readonly<Record<string, T>>, key: string): T | undefined =>
  Object.hasOwn(table, key) ? table[key] : undefined

const GROUPED = { '.': /^\d{1,3}(,\d{3})+(\.\d+)?$/, ',': /^\d{1,3}(\.\d{3})+(,\d+)?$/ } as const
const DECIMAL = { '.': /^\d+(\.\d+)?$/, ',': /^\d+(,\d+)?$/ } as const

/** Whether digits can be read under this decimal mark: "1,5" under a point cannot, "1,000" can. */
export const isReadable = (digits: string, mark: DecimalMark): boolean =>
  digits.length <= 9 && (DECIMAL[mark].test(digits) || GROUPED[mark].test(digits))

/** The exact value of "1", "1.5", "1/2", "1 1/2", "1½" (numeric-quantity reads it); null for all else. */
const exactly = (text: string, mark: DecimalMark): Fraction | null => {
  const read = numericQuantity(text, { verbose: true, round: false, decimalSeparator: mark })
  if (typeof read.value !== 'number' || !Number.isFinite(read.value)) return null
  if (read.numerator !== undefined && read.denominator) return new Fraction(read.numerator, read.denominator).add(read.whole ?? 0)
  const [group, point] = mark === '.' ? [',', '.'] : ['.', ',']
  return new Fraction(text.trim().replaceAll(group, '').replace(point, '.'))
}

/** The end of "/ 2" after a numerator, when together they are a kitchen fraction; otherwise 0. */
const slashEnd = (tokens: readonly Token[], at: number): number => {
  const [over, slash, under] = [tokenAt(tokens, at), tokenAt(tokens, at + 1), tokenAt(tokens, at + 2)]
  if (over.kind !== 'number' || (slash.text !== '/' && slash.text !== '⁄') || under.kind !== 'number') return 0
  const small = /^\d{1,2}$/
  return small.test(over.text) && small.test(under.text) && Number(under.text) >= 2 && Number(under.text) <= 16 ? at + 3 : 0
}

const numeralAt = (tokens: readonly Token[], at: number, mark: DecimalMark): ReadNumber | null => {
  const first = tokenAt(tokens, at)
  if (first.kind !== 'number' && first.kind !== 'fraction') return null
  if (first.kind === 'number' && !isReadable(first.text, mark)) return null
  let next = slashEnd(tokens, at) || at + 1
  if (next === at + 1 && /^\d+$/.test(first.text)) {
    const after = tokenAt(tokens, next)
    if (after.kind === 'fraction') next += 1
    else if (after.kind === 'number' && after.spaced && slashEnd(tokens, next)) next = slashEnd(tokens, next)
  }
  const text = tokens
    .slice(at, next)
    .map((token) => (token.text === '⁄' ? '/' : token.text))
    .join(' ')
    .replaceAll(' / ', '/')
  const n = exactly(text, mark)
  return n && { n, next }
}

/** "and a half", "and 1/2" after a whole number: how much, and where it ends. */
const andPart = (tokens: readonly Token[], at: number): ReadNumber | null => {
  if (tokenAt(tokens, at).low !== 'and' && tokenAt(tokens, at).text !== '&') return null
  const skip = /^(a|one)$/.test(tokenAt(tokens, at + 1).low) ? 2 : 1
  const part = own(PARTS, tokenAt(tokens, at + skip).low)
  if (part) return { n: new Fraction(part[0], part[1]), next: at + skip + 1 }
  const end = slashEnd(tokens, at + 1)
  const vulgar = tokenAt(tokens, at + 1).kind === 'fraction'
  return end || vulgar ? numeralAt(tokens, at + 1, '.') : null
}

/** The number at a place: digits, fractions, words ("two and a half", "half a", "three quarters of a", "a dozen"). An article alone is none. */
export const numberAt = (tokens: readonly Token[], at: number, mark: DecimalMark): ReadNumber | null => {
  const first = tokenAt(tokens, at)
  const skipOf = (next: number) => {
    const of = tokenAt(tokens, next).low === 'of' ? next + 1 : next
    return /^(a|an|one)$/.test(tokenAt(tokens, of).low) ? of + 1 : next
  }
  if (/^(a|one)$/.test(first.low)) {
    const second = tokenAt(tokens, at + 1).low
    if (second === 'dozen') return { n: new Fraction(12), next: at + 2 }
    const part = own(PARTS, second)
    if (part) return { n: new Fraction(part[0], part[1]), next: skipOf(at + 2) }
  }
  const half = own(PARTS, first.low)
  if (half && first.low !== 'quarters' && first.low !== 'thirds') {
    const dozen = first.low === 'half' && /^an?$/.test(tokenAt(tokens, at + 1).low) ? at + 2 : at + 1
    if (first.low === 'half' && tokenAt(tokens, dozen).low === 'dozen') return { n: new Fraction(6), next: dozen + 1 }
    return { n: new Fraction(half[0], half[1]), next: skipOf(at + 1) }
  }
  if (/^three-quarters?$/.test(first.low)) return { n: new Fraction(3, 4), next: skipOf(at + 1) }
  const word = own(WORDS, first.low)
  const read = word === undefined ? numeralAt(tokens, at, mark) : { n: new Fraction(word), next: at + 1 }
  if (!read) return null
  if (word !== undefined) {
    const parts = own(PARTS, tokenAt(tokens, read.next).low)
    if (parts) return { n: new Fraction(parts[0], parts[1]).mul(word), next: skipOf(read.next + 1) }
    if (tokenAt(tokens, read.next).low === 'dozen') return { n: read.n.mul(12), next: read.next + 1 }
  }
  const more = read.n.d === 1n ? andPart(tokens, read.next) : null
  return more ? { n: read.n.add(more.n), next: more.next } : read
}

const TO = new Set(['to', 'or', '-', '–', '—', '‒', '−', '~'])

/** Whether a token joins the ends of a range. */
export const isRangeMark = (token: Token): boolean => TO.has(token.low)

/** A number, or two of them that make a range in order ("2 to 3", "4–6", "between 5 and 7"). */
export const rangeAt = (tokens: readonly Token[], at: number, mark: DecimalMark): ReadRange | null => {
  const between = tokenAt(tokens, at).low === 'between'
  const first = numberAt(tokens, between ? at + 1 : at, mark)
  if (!first) return null
  const joint = tokenAt(tokens, first.next)
  if (isRangeMark(joint) || (between && joint.low === 'and')) {
    const second = numberAt(tokens, first.next + 1, mark)
    if (second && second.n.compare(first.n) > 0) return { least: first.n, most: second.n, next: second.next }
  }
  return between ? null : { least: first.n, most: first.n, next: first.next }
}
