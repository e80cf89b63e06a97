import { celsiusOf, FAN_LOWER_C, ovenMark } from '#lib/domain/oven-marks.ts'
import { rangeAt } from './number.ts'
import type { BareScale, DecimalMark, Found, Heat } from './preview.ts'
import { phraseAt, phrases, type Token, tokenAt } from './tokens.ts'

interface Reading {
  readonly lowC: number
  readonly highC: number
  readonly scale: 'C' | 'F' | 'mark' | 'word' | 'bare' | 'number'
  readonly fan: boolean
  readonly next: number
}

const FAN = phrases(
  'fan-assisted',
  'fan-forced',
  'fan forced',
  'fan oven',
  'fan',
  '( fan )',
  'convection',
  'hot air',
  'circulating air',
)
const MARK = phrases('gas mark', 'gas', 'mark')
const DEGREES = /^(°|º|˚|degrees?|deg)$/

/** "°C", "degrees Fahrenheit", "F": the scale, and the place after it. A bare degree sign is no scale. */
const scaleAt = (tokens: readonly Token[], at: number): { scale: 'C' | 'F' | 'bare'; next: number } | null => {
  const sign = DEGREES.test(tokenAt(tokens, at).low)
  const letter = tokenAt(tokens, sign ? at + 1 : at)
  if (/^(c|celsius|centigrade)$/.test(letter.low) && (sign || letter.low !== 'c' || !letter.spaced || letter.text === 'C'))
    return { scale: 'C', next: at + (sign ? 2 : 1) }
  if (/^(f|fahrenheit)$/.test(letter.low) && (sign || letter.low !== 'f' || !letter.spaced || letter.text === 'F'))
    return { scale: 'F', next: at + (sign ? 2 : 1) }
  return sign ? { scale: 'bare', next: at + 1 } : null
}

/** No oven is hotter in °C. */
const HOTTEST_C = 290

/** A number without its scale: °F when it is too much for °C, or when the text writes its heats so. */
const bareC = (value: number, bare: BareScale): number =>
  value > HOTTEST_C || (bare === 'F' && value >= 100) ? celsiusOf(value) : value

const degreesAt = (tokens: readonly Token[], at: number, mark: DecimalMark, bare: BareScale): Reading | null => {
  const fanFirst = phraseAt(tokens, at, FAN)
  const range = rangeAt(tokens, at + fanFirst, mark)
  // "75°C to 80°C": the sign stands at both ends.
  const first = range && scaleAt(tokens, range.next)
  if (!range || !first) return null
  let { next } = first
  let most = range.most
  let { scale } = first
  if (range.least.equals(range.most) && /^(to|-|–|—)$/.test(tokenAt(tokens, next).low)) {
    const second = rangeAt(tokens, next + 1, mark)
    const sign = second && scaleAt(tokens, second.next)
    if (second && sign && second.most.compare(range.least) > 0) {
      most = second.most
      next = sign.next
      scale = sign.scale
    }
  }
  const fanAfter = phraseAt(tokens, next, FAN)
  const fan = fanFirst > 0 || fanAfter > 0
  const inC = (value: number) =>
    (scale === 'F' ? celsiusOf(value) : scale === 'bare' ? bareC(value, bare) : value) + (fan ? FAN_LOWER_C : 0)
  return { lowC: inC(range.least.valueOf()), highC: inC(most.valueOf()), scale, fan, next: next + fanAfter }
}

const HEATED =
  /^(oven|ovens|preheat|heat|bake|baked|roast|roasted|turn|reduce|lower|raise|increase|drop|crank|thermometer|core|oil)$/
const READS = /^(reads?|reach|reaches|registers?|shows|hits|says)$/
const AFTER_HEAT = /^([.,;:)!?/&–—-]|fan|oven|for|and|then|until|till|or|to|in|with|if|when|while|before|conventional|electric)?$/

/** Whether the words before a number, in its sentence, make a heat of it: "oven 220", "turn it down to 160", "reads 165". */
const isHeatHere = (tokens: readonly Token[], at: number): boolean => {
  const before = tokenAt(tokens, at - 1).low
  if (before === 'oven' || READS.test(before) || /^(fan|oven)$/.test(tokenAt(tokens, at + 1).low)) return true
  // "Roast 200, 1 hour"
  const alone = /^[,;.]?$/.test(tokenAt(tokens, at + 1).text) && /^\d{3}$/.test(tokenAt(tokens, at).text)
  if (alone && [1, 2, 3].some((back) => /^(bake|roast|oven)$/.test(tokenAt(tokens, at - back).low))) return true
  if (!/^(at|to|@|on|about|around|:)$/.test(before)) return false
  for (let i = at - 2; i >= at - 9 && !/^[.;!?]?$/.test(tokenAt(tokens, i).text); i -= 1)
    if (HEATED.test(tokenAt(tokens, i).low)) return true
  return false
}

/** "oven 220", "reads 165": a heat that says neither degree nor scale. */
const numberOnlyAt = (tokens: readonly Token[], at: number, mark: DecimalMark, bare: BareScale): Reading | null => {
  if (!/^\d{2,3}$/.test(tokenAt(tokens, at).text) || !isHeatHere(tokens, at)) return null
  const range = rangeAt(tokens, at, mark)
  if (!range || !AFTER_HEAT.test(tokenAt(tokens, range.next).low)) return null
  const [least, most] = [range.least.valueOf(), range.most.valueOf()]
  const coreOnly = READS.test(tokenAt(tokens, at - 1).low)
  if (most > 550 || least < (coreOnly ? 40 : 60) || (!coreOnly && least % 5 !== 0)) return null
  const fanAfter = phraseAt(tokens, range.next, FAN)
  // The inside of food is never above 100 °C.
  const inC = (value: number) => bareC(value, coreOnly && value > 100 && value <= 212 ? 'F' : bare) + (fanAfter ? FAN_LOWER_C : 0)
  return { lowC: inC(least), highC: inC(most), scale: 'number', fan: fanAfter > 0, next: range.next + fanAfter }
}

const markAt = (tokens: readonly Token[], at: number): Reading | null => {
  const words = phraseAt(tokens, at, MARK)
  const range = words ? rangeAt(tokens, at + words, '.') : null
  if (!range) return null
  const [low, high] = [ovenMark(range.least.toFraction()), ovenMark(range.most.toFraction())]
  return low && high && { lowC: low.printedC, highC: high.printedC, scale: 'mark', fan: false, next: range.next }
}

const OVEN_WORDS = (
  [
    ['very hot oven', 230],
    ['fairly hot oven', 200],
    ['moderately hot oven', 190],
    ['hot oven', 220],
    ['moderate oven', 180],
    ['medium oven', 180],
    ['very low oven', 110],
    ['low oven', 140],
    ['slow oven', 150],
  ] as const
).map(([words, c]) => ({ words: phrases(words), c }))

const wordAt = (tokens: readonly Token[], at: number): Reading | null => {
  for (const { words, c } of OVEN_WORDS) {
    const length = phraseAt(tokens, at, words)
    if (length) return { lowC: c, highC: c, scale: 'word', fan: false, next: at + length }
  }
  return null
}

const readingAt = (tokens: readonly Token[], at: number, mark: DecimalMark, bare: BareScale): Reading | null =>
  markAt(tokens, at) ?? degreesAt(tokens, at, mark, bare) ?? wordAt(tokens, at)

/** What may stand between two readings of one heat: "200°C (180°C fan) / gas 6". */
const joined = (tokens: readonly Token[], at: number): number => {
  for (let i = at; i < at + 4; i += 1)
    if (!/^([/(),;|]|or|oven|conventional|fan:?)$/.test(tokenAt(tokens, i).low) || tokenAt(tokens, i).low === 'fan') return i
  return at + 4
}

const CORE = /^(thermometer|inside|internal|internally|centre|center|core|middle|thickest|probe|thigh)$/
const OVEN = /^(oven|preheat|bake|baked|roast|roasted|gas)$/
const FAT = /^(oil|fat|fryer|deep-fry|lard)$/

const kindOf = (tokens: readonly Token[], at: number, readings: readonly Reading[], end: number): Heat['kind'] => {
  if (readings.some((each) => each.scale === 'mark' || each.scale === 'word' || each.fan)) return 'oven'
  const highest = Math.max(...readings.map((each) => each.highC))
  let [core, oven, fat] = [false, false, false]
  const look = (i: number) => {
    const { low } = tokenAt(tokens, i)
    core ||= CORE.test(low)
    oven ||= OVEN.test(low)
    fat ||= FAT.test(low)
  }
  for (let i = at - 1; i >= at - 16 && !/^[.;]$/.test(tokenAt(tokens, i).text); i -= 1) look(i)
  for (let i = end; i < end + 8 && !/^[.;]$/.test(tokenAt(tokens, i).text); i += 1) look(i)
  if (core && highest <= 100) return 'core'
  if (oven && highest >= 50) return 'oven'
  if (fat) return 'fat'
  // "Keep warm at 70 °C"
  return highest >= 110 || (highest >= 50 && tokenAt(tokens, at - 1).low === 'at') ? 'oven' : 'other'
}

/** An oven so low, and no word of an oven beside it: a guess. */
const isLukewarm = (tokens: readonly Token[], at: number, end: number, best: Reading, kind: Heat['kind']): boolean =>
  kind === 'oven' && best.highC < 110 && tokenAt(tokens, at - 1).low !== 'oven' && tokenAt(tokens, end).low !== 'oven'

/** The reading to go by: °C without fan, then with, then °F, then the mark. */
const RANK: Readonly<Record<Reading['scale'], number>> = { C: 0, F: 2, mark: 3, bare: 4, number: 6, word: 8 }
const rank = (reading: Reading) => RANK[reading.scale] + (reading.fan ? 1 : 0)

/** Every heat in a step's words; several ways of writing one are one. Not certain: no scale, a word, or readings that disagree. */
export const heatsIn = (tokens: readonly Token[], mark: DecimalMark, bare: BareScale = 'C'): readonly Found<Heat>[] => {
  const found: Found<Heat>[] = []
  let at = 0
  while (at < tokens.length) {
    const first = readingAt(tokens, at, mark, bare) ?? numberOnlyAt(tokens, at, mark, bare)
    if (!first) {
      at += 1
      continue
    }
    const readings = [first]
    let end = first.next
    while (readings.length < 5) {
      const more = readingAt(tokens, joined(tokens, end), mark, bare)
      if (!more || joined(tokens, end) === end) break
      readings.push(more)
      end = more.next
    }
    const best = readings.reduce((a, b) => (rank(b) < rank(a) ? b : a))
    const agree = readings.every((each) => Math.abs(each.lowC - best.lowC) <= 15)
    const kind = kindOf(tokens, at, readings, end)
    found.push({
      value: { kind, lowC: best.lowC, highC: best.highC },
      from: tokenAt(tokens, at).from,
      to: tokenAt(tokens, end - 1).to,
      certain: agree && !/^(bare|word|number)$/.test(best.scale) && !isLukewarm(tokens, at, end, best, kind),
    })
    at = end
  }
  return found
}
