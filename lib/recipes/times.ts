import { bareMinutesAt, durationAt, type ReadDuration } from './duration.ts'
import type { DecimalMark, StepTime, TimeKind } from './preview.ts'
import { phraseAt, phrases, type Token, tokenAt } from './tokens.ts'
import { verbAt } from './verbs.ts'

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

const MOMENTS = /^(press|season|drain|wrap|sprinkle|pour|squeeze|tie|scatter|pat|dress)$/

/** Whether "keep" says how long a thing keeps, rather than "keep stirring" or "keep warm". */
const keepsAt = (tokens: readonly Token[], at: number): 'ahead' | 'warm' | null => {
  const next = tokenAt(tokens, at + 1).low
  if (!/^(keep|keeps|store|stores|stored|kept)$/.test(tokenAt(tokens, at).low) || next.endsWith('ing')) return null
  return /^(warm|hot)$/.test(next) || /^(warm|hot)$/.test(tokenAt(tokens, at + 2).low) ? 'warm' : 'ahead'
}

/** "Set aside for 20 minutes to infuse": what the waiting is for. */
const purposeOf = (tokens: readonly Token[], time: ReadDuration): TimeKind | null => {
  const verb = tokenAt(tokens, time.next).low === 'to' ? verbAt(tokens, time.next + 1) : null
  return verb && 'wait' in verb ? verb.wait : null
}

/** "Can be chilled for up to 3 days": how long it may wait, and not how long it must. */
const isKeeping = (tokens: readonly Token[], at: number, time: ReadDuration): boolean =>
  time.least === null &&
  (time.most ?? 0) >= 720 &&
  /^(be|also|then)$/.test(tokenAt(tokens, at - 1).low) &&
  [2, 3].some((back) => /^(can|may|could|will)$/.test(tokenAt(tokens, at - back).low))

/** The last word of work or waiting before a time, else the first one after it, else what the time before in the clause was about. */
const verbOf = (tokens: readonly Token[], from: number, time: ReadDuration, earlier: TimeKind | null): Verb => {
  const end = clauseEnd(tokens, time.next)
  let place: Verb | null = null
  for (let i = time.from - 1; i >= from; i -= 1) {
    const verb = verbAt(tokens, i)
    const keeps = keepsAt(tokens, i)
    if (keeps) return keeps === 'ahead' ? { kind: 'ahead', certain: true } : { kind: 'rest', certain: false }
    if (!verb) continue
    if (place) return place
    // "It keeps in the fridge for 5 days": where it stands says less than what it does there.
    if ('wait' in verb && isColdWord(tokens, i)) {
      if (!isColdPlaceLeft(tokens, i)) place = { kind: verb.wait, certain: true }
      continue
    }
    // "Press under a board for 20 minutes": what is done in a moment does not take so long; it then stands.
    if (MOMENTS.test(tokenAt(tokens, i).low) && (time.least ?? 0) >= 10) return { kind: 'rest', certain: false }
    if ('care' in verb) return { kind: 'takes', certain: true }
    if (isKeeping(tokens, i, time)) return { kind: 'ahead', certain: true }
    if (verb.wait === 'rest') return { kind: purposeOf(tokens, time) ?? isColdPlace(tokens, from, end) ?? 'rest', certain: true }
    return { kind: verb.wait, certain: true }
  }
  if (place) return place
  for (let i = from; i < time.from; i += 1)
    if (tokenAt(tokens, i).low === 'room' && tokenAt(tokens, i + 1).low === 'temperature') return { kind: 'rest', certain: false }
  for (let i = time.next; i < end; i += 1) {
    const verb = verbAt(tokens, i)
    if (verb && !isColdPlaceLeft(tokens, i)) return { kind: 'care' in verb ? 'takes' : verb.wait, certain: false }
  }
  // "Oven 150C, 3 hours": what is in the oven stays there so long.
  for (let i = from; i < time.from; i += 1) if (tokenAt(tokens, i).low === 'oven') return { kind: 'takes', certain: true }
  return { kind: earlier ?? 'takes', certain: false }
}

const isColdWord = (tokens: readonly Token[], at: number): boolean =>
  /^(fridge|refrigerator|freezer)$/.test(tokenAt(tokens, at).low)

/** "Out of the fridge", "from the freezer": that is not what happens to the food. */
const isColdPlaceLeft = (tokens: readonly Token[], at: number): boolean => {
  if (!isColdWord(tokens, at)) return false
  for (let i = at - 1; i >= at - 4; i -= 1) if (/^(from|out)$/.test(tokenAt(tokens, i).low)) return true
  return false
}

const SIDES = phrases('on each side', 'each side', 'per side', 'a side', 'on both sides', 'on either side', 'for each side')
const BATCHES = phrases('per batch', 'a batch', 'each batch')

const FOR_EACH = phrases('per', 'each', 'every', 'a', 'for every', 'for each')
const WEIGHT = /^(pound|pounds|lb|lbs|kilo|kilos|kg|kilogram)$/

/** "20 minutes per 500 g", "a pound", "for every kilo". */
const isByWeight = (tokens: readonly Token[], at: number): boolean => {
  const words = phraseAt(tokens, at, FOR_EACH)
  const weighed = tokenAt(tokens, at + words)
  return words > 0 && (weighed.kind === 'number' || weighed.kind === 'fraction' || WEIGHT.test(weighed.low))
}

/** What the words right beside a time say it is about; null when they say nothing and the verb decides. */
const besideOf = (tokens: readonly Token[], time: ReadDuration): Verb | null => {
  const say = (kind: TimeKind, certain = true): Verb => ({ kind, certain })
  const [own, later] = [tokenAt(tokens, time.from).low, tokenAt(tokens, time.next).low]
  const before = (back: number) => tokenAt(tokens, time.from - back).low
  if (isByWeight(tokens, time.next)) return say('by-weight')
  if (/^(every|each)$/.test(own) || /^(every|each)$/.test(before(1)) || /^(intervals?|apart)$/.test(later)) return say('every')
  if (/^(ahead|beforehand|earlier)$/.test(later)) return say('ahead')
  if (later === 'in' && tokenAt(tokens, time.next + 1).low === 'advance') return say('ahead')
  if (before(1) === 'after' && /^(best|better)$/.test(before(2))) return say('rest')
  if (before(2) === 'after' && before(1).endsWith('ing') && /^(best|better)$/.test(before(3))) return say('rest')
  if (before(1) === 'after' || before(2) === 'after') return say('mark')
  if (/^(less|more|longer)$/.test(later) && tokenAt(tokens, time.next + 1).low === 'than') return say('mark', false)
  if (/^(less|minus)$/.test(before(1))) return say('mark', false)
  if (/^(last|final)$/.test(own)) return say('mark')
  // "For the last 10 minutes" lies inside; "turn up the heat, last 15 minutes" follows.
  if (/^(last|final)$/.test(before(1)))
    return /^(for|in|during)$/.test(before(before(2) === 'the' ? 3 : 2)) ? say('mark') : say('takes', false)
  return null
}

/** What a time is about, by the words around it; how many times it counts, and where its words end. */
const kindOf = (
  tokens: readonly Token[],
  time: ReadDuration,
  floor: number,
  last: TimeKind | null,
): Verb & { readonly times: number; readonly next: number } => {
  const { next } = time
  const sides = phraseAt(tokens, next, SIDES)
  if (sides) return { kind: 'takes', certain: true, times: 2, next: next + sides }
  const batch = phraseAt(tokens, next, BATCHES)
  if (batch) return { kind: 'takes', certain: true, times: 1, next: next + batch }
  const beside = besideOf(tokens, time)
  if (beside) return { ...beside, times: 1, next }
  const start = clauseStart(tokens, time.from, floor)
  const verb = { ...verbOf(tokens, start, time, start === floor ? last : null), times: 1, next }
  const before = tokenAt(tokens, time.from - 1).low
  // "Eat within 4 hours", but "cool within 2 hours".
  if (tokenAt(tokens, time.from).low === 'within') return verb.kind === 'takes' ? { ...verb, kind: 'ahead', certain: true } : verb
  // "Out of the fridge 30 minutes before cooking", but "rest 10 minutes before slicing".
  if (tokenAt(tokens, next).low !== 'before' || (verb.certain && verb.kind !== 'takes') || before === 'for') return verb
  return { ...verb, kind: (time.most ?? 0) >= 720 ? 'ahead' : 'mark', certain: !verb.certain }
}

/** Every time in a step's words, in order, each with what it is about. */
export const timesIn = (tokens: readonly Token[], mark: DecimalMark): readonly StepTime[] => {
  const found: StepTime[] = []
  let floor = 0
  let last: TimeKind | null = null
  let at = 0
  while (at < tokens.length) {
    const time = durationAt(tokens, at, mark) ?? bareMinutesAt(tokens, at, mark)
    if (!time) {
      at += 1
      continue
    }
    const { kind, certain, times, next } = kindOf(tokens, time, floor, last)
    const bounds = kind === 'ahead' ? { least: null, most: time.most ?? time.least } : scaled(time, times)
    found.push({
      value: { kind, ...bounds },
      from: tokenAt(tokens, at).from,
      to: tokenAt(tokens, next - 1).to,
      certain: certain && time.certain,
    })
    floor = next
    last = isLength(kind) ? kind : null
    at = next
  }
  return found
}

const isLength = (kind: TimeKind): boolean => !/^(every|mark|ahead|by-weight)$/.test(kind)

const tidy = (minutes: number): number => Math.round(minutes * 60) / 60
const scaled = (time: ReadDuration, times: number) => ({
  least: time.least === null ? null : tidy(time.least * times),
  most: time.most === null ? null : tidy(time.most * times),
})
