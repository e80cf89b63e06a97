import { isRangeMark, numberAt, rangeAt } from './number.ts'
import type { DecimalMark, Minutes } from './preview.ts'
import { phraseAt, phrases, type Token, tokenAt } from './tokens.ts'

/** A length of time read at a place. Not certain: "overnight", "a few minutes". */
export interface ReadDuration extends Minutes {
  readonly from: number
  readonly next: number
  readonly certain: boolean
}

const UNIT_MINUTES: Readonly<Record<string, number>> = {
  second: 1 / 60,
  seconds: 1 / 60,
  sec: 1 / 60,
  secs: 1 / 60,
  minute: 1,
  minutes: 1,
  min: 1,
  mins: 1,
  "minutes'": 1,
  hour: 60,
  hours: 60,
  hr: 60,
  hrs: 60,
  h: 60,
  day: 1440,
  days: 1440,
  week: 10_080,
  weeks: 10_080,
  fortnight: 20_160,
}

const VAGUE = [
  { words: phrases('a couple of', 'couple of'), least: 2, most: 3 },
  { words: phrases('a few', 'few'), least: 2, most: 4 },
  { words: phrases('several'), least: 3, most: 6 },
]
const AND_A_HALF = phrases('and a half')

const unitAt = (tokens: readonly Token[], at: number): number | undefined => {
  const low = tokenAt(tokens, at).low
  return Object.hasOwn(UNIT_MINUTES, low) ? UNIT_MINUTES[low] : undefined
}

interface Piece {
  readonly least: number
  readonly most: number
  readonly next: number
  readonly certain: boolean
}

const BARE_END = /^([.,;:)!?]|then|until|till|more|longer)?$/

/** "30" or "30 minutes" after hours, also "and 30 minutes", "and a half": how many minutes more. */
const afterHours = (
  tokens: readonly Token[],
  at: number,
  mark: DecimalMark,
): { minutes: number; next: number; certain: boolean } | null => {
  const and = /^(and|&)$/.test(tokenAt(tokens, at).low) || tokenAt(tokens, at).text === ','
  const from = and ? at + 1 : at
  const read = numberAt(tokens, from, mark)
  if (!read || read.n.compare(60) >= 0) return null
  // "and a half", "and three-quarters": of the hour.
  if (and && read.n.compare(1) < 0) return { minutes: read.n.mul(60).valueOf(), next: read.next, certain: true }
  const unit = unitAt(tokens, read.next)
  const short = /^m$/.test(tokenAt(tokens, read.next).low)
  if (unit === 1 || short) return { minutes: read.n.valueOf(), next: read.next + 1, certain: true }
  // "An hour and twenty": minutes, most likely.
  if (and && unit === undefined && read.n.compare(5) >= 0 && BARE_END.test(tokenAt(tokens, read.next).low))
    return { minutes: read.n.valueOf(), next: read.next, certain: false }
  // "1h45", "1 hr 30"
  const bare = !and && unit === undefined && /^\d{2}$/.test(tokenAt(tokens, from).text) && read.next === from + 1
  return bare ? { minutes: read.n.valueOf(), next: read.next, certain: true } : null
}

const OR_SO: ReadonlyMap<string, number> = new Map([
  ['so', 1],
  ['two', 2],
  ['three', 3],
])

const isIdiom = (tokens: readonly Token[], at: number): boolean => {
  const unit = tokenAt(tokens, at + 1).low
  const before = tokenAt(tokens, at - 1).low
  return unit === 'minute' && before === 'the' && /^(at|to|until)$/.test(tokenAt(tokens, at - 2).low)
}

const pieceAt = (tokens: readonly Token[], at: number, mark: DecimalMark): Piece | null => {
  // A night: no more is known than that it lasts from evening to morning.
  if (tokenAt(tokens, at).low === 'overnight') return { least: 480, most: 960, next: at + 1, certain: false }
  if (/^(a|one)$/.test(tokenAt(tokens, at).low) && tokenAt(tokens, at + 1).low === 'night')
    return { least: 480, most: 960, next: at + 2, certain: false }
  for (const { words, least, most } of VAGUE) {
    const length = phraseAt(tokens, at, words)
    const unit = length ? (unitAt(tokens, at + length) ?? unitAt(tokens, at + length + 1)) : undefined
    if (unit !== undefined) {
      const next = at + length + (unitAt(tokens, at + length) === undefined ? 2 : 1)
      return { least: least * unit, most: most * unit, next, certain: false }
    }
  }
  // "in a second bowl" is no time.
  const article =
    /^(a|an|another|further|good|one|last|final|every|each)$/.test(tokenAt(tokens, at).low) &&
    unitAt(tokens, at + 1) !== undefined &&
    tokenAt(tokens, at + 1).low !== 'second'
  // "At the last minute" is a manner, no length.
  if (article && /^(last|final)$/.test(tokenAt(tokens, at).low) && isIdiom(tokens, at)) return null
  const range = article ? null : rangeAt(tokens, at, mark)
  const unitFrom = article ? at + 1 : range ? range.next : -1
  if (unitFrom < 0) return null
  const hyphen = /^[-–]$/.test(tokenAt(tokens, unitFrom).text) && !tokenAt(tokens, unitFrom).spaced ? 1 : 0
  const more = /^(more|further|extra)$/.test(tokenAt(tokens, unitFrom).low) ? 1 : 0
  const unit = unitAt(tokens, unitFrom + hyphen + more)
  if (unit === undefined) return null
  const [low, high] = range ? [range.least.valueOf(), range.most.valueOf()] : [1, 1]
  const end = unitFrom + hyphen + more + 1
  const orMore = article && tokenAt(tokens, end).low === 'or' ? OR_SO.get(tokenAt(tokens, end + 1).low) : undefined
  // "An hour or two": unless what follows has a unit of its own.
  if (orMore !== undefined && unitAt(tokens, end + 2) === undefined)
    return { least: unit, most: unit * orMore, next: end + 2, certain: true }
  const extra = unit === 60 ? afterHours(tokens, end, mark) : null
  const half = unit !== 60 && phraseAt(tokens, end, AND_A_HALF)
  const added = extra ? extra.minutes : half ? unit / 2 : 0
  return {
    least: low * unit + added,
    most: high * unit + added,
    next: extra ? extra.next : half ? end + 3 : end,
    certain: extra?.certain ?? true,
  }
}

const OPEN_ABOVE = phrases('at least', 'a minimum of', 'minimum of', 'minimum', 'no less than', 'more than', 'over')
const OPEN_BELOW = phrases(
  'up to',
  'at most',
  'no more than',
  'a maximum of',
  'maximum of',
  'maximum',
  'under',
  'less than',
  'within',
  'for up to',
)
const OR_MORE = phrases('or more', 'or longer', 'at least', 'minimum', 'or so at least')
const OR_LESS = phrases('at most', 'maximum', 'max', 'or less', 'at the most')
const ABOUT = phrases(
  'about',
  'around',
  'approximately',
  'approx',
  'roughly',
  'another',
  'a further',
  'further',
  'some',
  'an extra',
  'a good',
)

const skipped = (tokens: readonly Token[], at: number): number => {
  const length = phraseAt(tokens, at, ABOUT)
  // "another minute": the word is the one there.
  return length && pieceAt(tokens, at + length, '.') !== null ? at + length : at
}

/** The length of time that begins at a place, with its bounds: "at least 2 hours and up to 8", "45 minutes to an hour", "1 h 20 or more". */
export const durationAt = (tokens: readonly Token[], at: number, mark: DecimalMark): ReadDuration | null => {
  const above = phraseAt(tokens, at, OPEN_ABOVE)
  const below = above ? 0 : phraseAt(tokens, at, OPEN_BELOW)
  const first = pieceAt(tokens, skipped(tokens, at + above + below), mark)
  if (!first) return null
  const after = phraseAt(tokens, first.next, OR_MORE)
  const before = after ? 0 : phraseAt(tokens, first.next, OR_LESS)
  const open = above > 0 || after > 0
  const least = below || before ? null : first.least
  const most = open ? null : first.most
  const end = { least, most, from: at, next: first.next + after + before, certain: first.certain }
  if (least === null) return end
  const joint = tokenAt(tokens, end.next)
  const comma = joint.text === ',' ? 1 : 0
  const word = tokenAt(tokens, end.next + comma)
  if (!isRangeMark(word) && !(word.low === 'and' && open) && !(word.low === 'up')) return end
  const start = word.low === 'up' ? end.next + comma : end.next + comma + 1
  const upTo = phraseAt(tokens, start, OPEN_BELOW)
  if ((word.low === 'and' || word.low === 'up') && !upTo) return end
  const second = pieceAt(tokens, skipped(tokens, start + upTo), mark)
  if (!second || second.most <= first.least) return end
  return {
    least: first.least,
    most: second.most,
    from: at,
    next: second.next,
    certain: first.certain && (second.certain || open),
  }
}

/** "For another five", "give it 10": minutes, most likely, without the word; never certain. */
export const bareMinutesAt = (tokens: readonly Token[], at: number, mark: DecimalMark): ReadDuration | null => {
  const before = (back: number) => tokenAt(tokens, at - back).low
  const given = before(1) === 'it' && /^(give|gives)$/.test(before(2))
  if (!given && !/^(for|another|further|every)$/.test(before(1))) return null
  if (/^(enough|serves|serve|feeds|makes|sauce|dinner)$/.test(before(2))) return null
  const range = rangeAt(tokens, at, mark)
  if (!range || !BARE_END.test(tokenAt(tokens, range.next).low)) return null
  const [least, most] = [range.least.valueOf(), range.most.valueOf()]
  const more = /^(more|longer)$/.test(tokenAt(tokens, range.next).low) ? 1 : 0
  return least >= 1 && most <= 240 ? { least, most, from: at, next: range.next + more, certain: false } : null
}
