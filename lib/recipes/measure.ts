import type Fraction from 'fraction.js'
import { nameUnit, type UnitWord, unitText } from '#lib/domain/unit-words.ts'
import { type ReadRange, rangeAt } from './number.ts'
import type { Amount, DecimalMark } from './preview.ts'
import { type Token, tokenAt } from './tokens.ts'

/** An amount of volume or mass read at a place. */
export interface Measured {
  readonly range: ReadRange
  readonly unit: string
  readonly word: UnitWord
  readonly next: number
}

/** A unit of volume or mass at a place, of up to three words ("US fl. oz."); full stops that belong to it are taken too. */
export const unitAt = (
  tokens: readonly Token[],
  at: number,
): { readonly text: string; readonly word: UnitWord; readonly next: number } | null => {
  for (let length = 3; length >= 1; length -= 1) {
    const words: string[] = []
    let next = at
    while (words.length < length && tokenAt(tokens, next).kind === 'word') {
      words.push(tokenAt(tokens, next).text)
      next += 1
      const stop = tokenAt(tokens, next)
      if (stop.text === '.' && !stop.spaced) next += 1
    }
    const named = words.length === length ? nameUnit(words.join(' ')) : null
    if (named) return { text: unitText(named), word: named.word, next }
  }
  return null
}

/** "400 g", "15-ounce", "2–3 tbsp", "200ml": a number with a unit of volume or mass. */
export const measuredAt = (tokens: readonly Token[], at: number, mark: DecimalMark): Measured | null => {
  const range = rangeAt(tokens, at, mark)
  if (!range) return null
  const hyphen = /^[-–]$/.test(tokenAt(tokens, range.next).text) && !tokenAt(tokens, range.next).spaced ? 1 : 0
  const unit = unitAt(tokens, range.next + hyphen)
  return unit && { range, unit: unit.text, word: unit.word, next: unit.next }
}

const MOST = 9_999_999

/** As an evening keeps it; null when that cannot hold it. */
export const amountOf = (least: Fraction, most: Fraction, unit: string): Amount | null => {
  const fits = (value: Fraction) => value.n <= MOST && value.d <= 999_999n
  if (!fits(least) || !fits(most)) return null
  return { n: least.toFraction(), ...(most.compare(least) > 0 ? { upTo: most.toFraction() } : {}), unit: unit.slice(0, 40) }
}
