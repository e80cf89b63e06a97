import { celsiusOf, FAN_LOWER_C, ovenMark } from '#lib/domain/oven-marks.ts'
import { rangeAt } from './number.ts'
import type { DecimalMark, Found, Heat } from './preview.ts'
import { phraseAt, phrases, type Token, tokenAt } from './tokens.ts'

interface Reading {
  readonly lowC: number
  readonly highC: number
  readonly scale: 'C' | 'F' | 'mark' | 'word' | 'bare'
  readonly fan: boolean
  readonly next: number
}

const FAN = phrases('fan-assisted', 'fan oven', 'fan', '( fan )', 'convection')
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

const degreesAt = (tokens: readonly Token[], at: number, mark: DecimalMark): Reading | null => {
  const fanFirst = tokenAt(tokens, at).low === 'fan' ? 1 : 0
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
  const inC = (value: number) => (scale === 'F' ? celsiusOf(value) : value) + (fan ? FAN_LOWER_C : 0)
  return { lowC: inC(range.least.valueOf()), highC: inC(most.valueOf()), scale, fan, next: next + fanAfter }
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

const readingAt = (tokens: readonly Token[], at: number, mark: DecimalMark): Reading | null =>
  markAt(tokens, at) ?? degreesAt(tokens, at, mark) ?? wordAt(tokens, at)

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
  return highest >= 110 ? 'oven' : 'other'
}

/** The reading to go by: °C without fan, then with, then °F, then the mark. */
const RANK: Readonly<Record<Reading['scale'], number>> = { C: 0, F: 2, mark: 3, bare: 4, word: 5 }
const rank = (reading: Reading) => RANK[reading.scale] + (reading.fan ? 1 : 0)

/** Every heat in a step's words; several ways of writing one are one. Not certain: a bare degree sign, a word, or readings that disagree. */
export const heatsIn = (tokens: readonly Token[], mark: DecimalMark): readonly Found<Heat>[] => {
  const found: Found<Heat>[] = []
  let at = 0
  while (at < tokens.length) {
    const first = readingAt(tokens, at, mark)
    if (!first) {
      at += 1
      continue
    }
    const readings = [first]
    let end = first.next
    while (readings.length < 5) {
      const more = readingAt(tokens, joined(tokens, end), mark)
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
      certain: agree && best.scale !== 'bare' && best.scale !== 'word',
    })
    at = end
  }
  return found
}
