import { durationAt, type ReadDuration } from './duration.ts'
import type { DecimalMark, StepTime, TimeKind } from './preview.ts'
import { phraseAt, phrases, type Token, tokenAt } from './tokens.ts'
import { KEEPS, WAITS, WORKS } from './verbs.ts'

/** How far a time looks for the word that it belongs to, in tokens. */
const REACH = 24

/** Where the clause that ends before a place begins: after the last full stop, semicolon or other time, within reach. */
const clauseStart = (tokens: readonly Token[], at: number, floor: number): number => {
  for (let i = at - 1; i >= Math.max(floor, at - REACH); i -= 1)
    if (/^[.;:!?]$/.test(tokenAt(tokens, i).text) && !isAbbreviation(tokens, i)) return i + 1
  return Math.max(floor, at - REACH)
}

const isAbbreviation = (tokens: readonly Token[], at: number): boolean =>
  /^(approx|mins?|hrs?|secs?|tbsp|tsp|no)$/.test(tokenAt(tokens, at - 1).low) &&
  /^[\p{Ll}\d(]/u.test(tokenAt(tokens, at + 1).text)

interface Verb {
  readonly kind: TimeKind
  readonly certain: boolean
}

const isColdPlace = (tokens: readonly Token[], from: number, to: number): TimeKind | null => {
  for (let i = from; i < to; i += 1) {
    const low = tokenAt(tokens, i).low
    if (/^(fridge|refrigerator)$/.test(low)) return 'chill'
    if (low === 'freezer') return 'freeze'
  }
  return null
}

/** Where the clause ends, for a look at what follows: at most eight tokens on. */
const clauseEnd = (tokens: readonly Token[], at: number): number => {
  for (let i = at; i < at + 8; i += 1) if (/^[.;,!?]?$/.test(tokenAt(tokens, i).text)) return i
  return at + 8
}

/** The last word of work or waiting before a time, else the first one after it. */
const verbOf = (tokens: readonly Token[], from: number, time: ReadDuration): Verb => {
  const end = clauseEnd(tokens, time.next)
  for (let i = time.from - 1; i >= from; i -= 1) {
    const { low } = tokenAt(tokens, i)
    const wait = WAITS.get(low)
    if (wait === 'rest') return { kind: isColdPlace(tokens, from, end) ?? 'rest', certain: true }
    // "out of the fridge", "a cooling rack" are not what happens to the food.
    if (wait && !(/^(fridge|refrigerator|freezer)$/.test(low) && isColdPlaceLeft(tokens, i))) return { kind: wait, certain: true }
    if (KEEPS.has(low) && !/^(warm|hot)$/.test(tokenAt(tokens, i + 1).low)) {
      if (/^(keep|keeps|store|stored|kept|stores)$/.test(low)) return { kind: 'ahead', certain: true }
    }
    if (WORKS.has(low)) return { kind: 'takes', certain: true }
  }
  for (let i = time.next; i < end; i += 1) {
    const { low } = tokenAt(tokens, i)
    const wait = WAITS.get(low)
    if (wait) return { kind: wait, certain: false }
    if (WORKS.has(low)) return { kind: 'takes', certain: false }
  }
  return { kind: 'takes', certain: false }
}

const isColdPlaceLeft = (tokens: readonly Token[], at: number): boolean => {
  for (let i = at - 1; i >= at - 4; i -= 1) if (/^(from|out)$/.test(tokenAt(tokens, i).low)) return true
  return false
}

const SIDES = phrases('on each side', 'each side', 'per side', 'a side', 'on both sides', 'on either side', 'for each side')
const BATCHES = phrases('per batch', 'a batch', 'each batch')

/** What a time is about, by the words around it. */
const kindOf = (
  tokens: readonly Token[],
  time: ReadDuration,
  floor: number,
): Verb & { readonly times: number; readonly next: number } => {
  const plain = (kind: TimeKind, certain = true, next = time.next, times = 1) => ({ kind, certain, next, times })
  const from = clauseStart(tokens, time.from, floor)
  const before = (back: number) => tokenAt(tokens, time.from - back).low
  const next = time.next
  const sides = phraseAt(tokens, next, SIDES)
  if (sides) return plain('takes', true, next + sides, 2)
  const batch = phraseAt(tokens, next, BATCHES)
  if (batch) return plain('takes', true, next + batch)
  if (
    /^(per|each|every)$/.test(tokenAt(tokens, next).low) ||
    (tokenAt(tokens, next).low === 'for' && tokenAt(tokens, next + 1).low === 'every')
  )
    return plain('by-weight')
  if (tokenAt(tokens, next).low === 'a' && /^(pound|lb|kilo|kg)$/.test(tokenAt(tokens, next + 1).low)) return plain('by-weight')
  if (/^(every|each)$/.test(before(1))) return plain('every')
  const later = tokenAt(tokens, next).low
  if (/^(ahead|beforehand|earlier)$/.test(later) || (later === 'in' && tokenAt(tokens, next + 1).low === 'advance'))
    return plain('ahead')
  if (/^(within)$/.test(before(1)) || /^within$/.test(tokenAt(tokens, time.from).low)) return plain('ahead')
  if (before(1) === 'after' || before(2) === 'after')
    return before(1) === 'after' && before(2) === 'best' ? plain('rest') : plain('mark')
  if (/^(last|final)$/.test(before(1))) {
    const inside = before(2) === 'the' && /^(for|in|during)$/.test(before(3))
    return inside ? plain('mark') : plain('takes', false)
  }
  const verb = { ...verbOf(tokens, from, time), times: 1, next }
  // "out of the fridge 30 minutes before cooking", but "rest 10 minutes before slicing".
  if (later !== 'before' || (verb.certain && verb.kind !== 'takes') || before(1) === 'for') return verb
  return plain((time.most ?? 0) >= 720 ? 'ahead' : 'mark', !verb.certain)
}

/** Every time in a step's words, in order, each with what it is about. */
export const timesIn = (tokens: readonly Token[], mark: DecimalMark): readonly StepTime[] => {
  const found: StepTime[] = []
  let floor = 0
  let at = 0
  while (at < tokens.length) {
    const time = durationAt(tokens, at, mark)
    if (!time) {
      at += 1
      continue
    }
    const { kind, certain, times, next } = kindOf(tokens, time, floor)
    const bounds = kind === 'ahead' ? { least: null, most: time.most ?? time.least } : scaled(time, times)
    found.push({
      value: { kind, ...bounds },
      from: tokenAt(tokens, at).from,
      to: tokenAt(tokens, next - 1).to,
      certain: certain && time.certain,
    })
    floor = next
    at = next
  }
  return found
}

const tidy = (minutes: number): number => Math.round(minutes * 60) / 60
const scaled = (time: ReadDuration, times: number) => ({
  least: time.least === null ? null : tidy(time.least * times),
  most: time.most === null ? null : tidy(time.most * times),
})
