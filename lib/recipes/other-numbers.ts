import { countUnit } from './count-units.ts'
import { unitAt } from './measure.ts'
import { isRangeMark, numberAt } from './number.ts'
import type { DecimalMark, Doubt, Stretch } from './preview.ts'
import { isNumeral, type Token, tokenAt } from './tokens.ts'
import { verbAt } from './verbs.ts'

const LENGTH = /^(mm|cm|centimetres?|centimeters?|inch|inches|in|metres?)$/
const SIGNS = /^(["”″%]|''|kcal|kj|calories|people|times?|pieces?|batches|lots|parts?)$/

// After a number these name nothing that could be counted: what the number is of is not said.
const NO_THING =
  /^(for|at|until|till|then|and|or|to|in|on|with|if|when|while|about|the|a|an|of|from|before|after|by|per|each|every|a|more|longer|extra|further|less|over|under|off|out|up|down|again|depending|also|plus|minus|so|ish|maybe|but|is|are|was|will|should|it|them|this|that|uncovered|covered|fan|gas|oven|degrees?|heat|hot|low|medium|high|first|second|max|maximum|min|minimum|total|altogether|approx|roughly|once|twice|side|sides)$/
// "Cook 20 mintues": a unit of time, badly typed or too short or too long for an evening.
const TIME_LIKE = /^(m|h|s|d|mnts?|mns|hrs?|secs?|months?|years?|std|stunden?|minuten|heures?|horas?|ore|minuti|minutos|uur)$/

/** Whether two words differ by at most two letters put in, left out or changed: words of a few letters only. */
const isNear = (word: string, known: string): boolean => {
  if (Math.abs(word.length - known.length) > 2 || word.length > 10 || word[0] !== known[0]) return false
  let row = Array.from({ length: known.length + 1 }, (_, i) => i)
  for (let i = 1; i <= word.length; i += 1) {
    const next = [i]
    for (let j = 1; j <= known.length; j += 1)
      next.push(Math.min((row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1, (row[j - 1] ?? 0) + (word[i - 1] === known[j - 1] ? 0 : 1)))
    row = next
  }
  return (row[known.length] ?? 9) <= 2
}

const isTimeLike = (low: string): boolean =>
  TIME_LIKE.test(low) || (low.length >= 6 && isNear(low, 'minutes')) || (low.length === 5 && isNear(low, 'hours'))

/** "for", "another", "give it": what comes after such words is a time more often than a count. */
const isTimePlace = (tokens: readonly Token[], at: number): boolean =>
  /^(another|further)$/.test(tokenAt(tokens, at - 1).low) ||
  (tokenAt(tokens, at - 1).low === 'it' && /^(give|gives|gave)$/.test(tokenAt(tokens, at - 2).low))

/** Whether the number that ends before a place says what it is of: a measure, a size, a thing that is counted. */
const isOfThing = (tokens: readonly Token[], next: number, decimal: boolean): boolean => {
  const hyphen = /^[-–]$/.test(tokenAt(tokens, next).text) && !tokenAt(tokens, next).spaced ? next + 1 : next
  const { low, kind } = tokenAt(tokens, hyphen)
  if (unitAt(tokens, hyphen) || SIGNS.test(low)) return true
  if (LENGTH.test(low)) return low !== 'in' || !/^(a|an|the|batches|one|two)$/.test(tokenAt(tokens, hyphen + 1).low)
  if (kind !== 'word' || decimal || hyphen > next) return false
  return countUnit(low) !== null || (!NO_THING.test(low) && !isTimeLike(low) && verbAt(tokens, hyphen) === null)
}

const WORD_NUMBERS =
  /^(two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty|thirty|forty|forty-five|fifty|sixty|ninety)$/

export interface OtherNumbers {
  readonly told: readonly Stretch[]
  readonly doubts: readonly Doubt[]
}

/** Walks the stretches in order: whether one of them holds a place; places must not go back. */
export const covers = (stretches: readonly Stretch[]) => {
  let at = 0
  const sorted = [...stretches].sort((a, b) => a.from - b.from)
  return (place: number): boolean => {
    while (at < sorted.length && (sorted[at]?.to ?? 0) <= place) at += 1
    return (sorted[at]?.from ?? Number.POSITIVE_INFINITY) <= place
  }
}

/**
 * The numbers that `read` does not hold: told when a measure, a size or a counted thing follows, else in doubt ("bake at 180 for 20").
 * No number is in neither. A number in words is looked at where a time is likely, and where nothing that is counted follows.
 */
export const otherNumbers = (tokens: readonly Token[], read: readonly Stretch[], mark: DecimalMark): OtherNumbers => {
  const isRead = covers(read)
  const told: Stretch[] = []
  const doubts: Doubt[] = []
  let at = 0
  while (at < tokens.length) {
    const token = tokenAt(tokens, at)
    const digits = isNumeral(token)
    if (isRead(token.from) || (!digits && !WORD_NUMBERS.test(token.low))) {
      at += 1
      continue
    }
    const number = numberAt(tokens, at, mark)
    const next = number ? number.next : at + 1
    const place = { from: token.from, to: tokenAt(tokens, next - 1).to }
    if (!number) doubts.push({ kind: /[.,]/.test(token.text) ? 'decimal' : 'number', ...place })
    else if (!tokens.slice(at, next).some(isNumeral)) {
      if (isTimePlace(tokens, at) || isTimeLike(tokenAt(tokens, next).low)) doubts.push({ kind: 'number', ...place })
    } else {
      // "2–3 tbsp", "30 x 20 cm", "9x13-inch": the first is what the second is.
      const joint = tokenAt(tokens, next)
      const joined = isRangeMark(joint) || /^(x|×|by|\/)$/.test(joint.low)
      const second = joined ? numberAt(tokens, next + 1, mark) : null
      const end = second ? second.next : next
      const of = isOfThing(tokens, end, !/^\d+$/.test(token.text) && token.kind === 'number') && !isTimePlace(tokens, at)
      if (second && !isRead(tokenAt(tokens, next + 1).from)) {
        const both = { from: token.from, to: tokenAt(tokens, end - 1).to }
        if (of) told.push(both)
        else doubts.push({ kind: 'number', ...both })
        at = end
        continue
      }
      if (of) told.push(place)
      else doubts.push({ kind: 'number', ...place })
    }
    at = next
  }
  return { told, doubts }
}
