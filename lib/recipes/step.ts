import { heatsIn } from './heats.ts'
import { kitIn } from './kit.ts'
import { numberAt } from './number.ts'
import type { DecimalMark, Doubt, Found, StepPreview, StepTime, Stretch } from './preview.ts'
import { timesIn } from './times.ts'
import { type Phrases, phraseAt, phrases, type Token, tokenAt, tokensOf } from './tokens.ts'
import { type Care, verbAt } from './verbs.ts'

/** A step longer than this is shown whole and read only so far. */
export const LONGEST_STEP = 4000

const AHEAD = phrases(
  'the day before',
  'the night before',
  'a day ahead',
  'night before',
  'day before',
  'the previous day',
  'in advance',
  'ahead of time',
  'made ahead',
  'next day',
)
const CONSTANT = phrases(
  'stirring all the time',
  'stirring constantly',
  'stirring continuously',
  'whisking constantly',
  'stirring throughout',
  'whisking all the time',
)
const WATCHED = phrases(
  'stirring now and then',
  'stirring occasionally',
  'stirring often',
  'stirring from time to time',
  'keep an eye on',
  'watch closely',
)

const phrasesIn = (tokens: readonly Token[], text: string, known: Phrases): readonly Found<string>[] => {
  const found: Found<string>[] = []
  for (let at = 0; at < tokens.length; at += 1) {
    const length = phraseAt(tokens, at, known)
    if (!length) continue
    const [from, to] = [tokenAt(tokens, at).from, tokenAt(tokens, at + length - 1).to]
    found.push({ value: text.slice(from, to), from, to, certain: false })
    at += length - 1
  }
  return found
}

/** "until the potatoes are soft": from the word to the end of its clause. */
const signsIn = (tokens: readonly Token[], text: string, times: readonly StepTime[]): readonly Found<string>[] => {
  const found: Found<string>[] = []
  for (let at = 0; at < tokens.length; at += 1) {
    if (!/^(until|till)$/.test(tokenAt(tokens, at).low)) continue
    let end = at + 1
    while (end < tokens.length && end < at + 24 && !/^([.,;!?(]|then)$/.test(tokenAt(tokens, end).low)) end += 1
    const [from, to] = [tokenAt(tokens, at).from, tokenAt(tokens, end - 1).to]
    const inside = times.find((time) => time.from > from && time.from < to)
    const value = text.slice(from, inside ? inside.from : to).trim()
    if (end > at + 1) found.push({ value, from, to: inside ? inside.from : to, certain: true })
    at = end - 1
  }
  return found
}

const careOf = (tokens: readonly Token[], text: string, times: readonly StepTime[]): StepPreview['care'] => {
  const constant = phrasesIn(tokens, text, CONSTANT)[0]
  if (constant) return { ...constant, value: 'hands-on', certain: true }
  const watched = phrasesIn(tokens, text, WATCHED)[0]
  if (watched) return { ...watched, value: 'eye', certain: true }
  // What goes on while the clock runs is the last work before the first time; without a time, the first work.
  const time = times.find((each) => each.value.kind === 'takes')
  let care: Found<Care> | null = null
  for (const [at, token] of tokens.entries()) {
    if (time && token.from >= time.from && care) break
    const verb: ReturnType<typeof verbAt> = care && !time ? null : verbAt(tokens, at)
    if (verb && 'care' in verb) care = { value: verb.care, from: token.from, to: token.to, certain: false }
  }
  return care
}

const covers = (stretches: readonly Stretch[]) => {
  let at = 0
  const sorted = [...stretches].sort((a, b) => a.from - b.from)
  return (place: number): boolean => {
    while (at < sorted.length && (sorted[at]?.to ?? 0) <= place) at += 1
    return (sorted[at]?.from ?? Number.POSITIVE_INFINITY) <= place
  }
}

const SMALL = /^(for|at|until|till|then|and|or|to|in|on|with|if|when|about|the|a|of|from|before|after)?$/

/** Numbers that no time or heat explains and that count nothing either: "bake at 180 for 20". */
const strayNumbers = (tokens: readonly Token[], read: readonly Stretch[], mark: DecimalMark): readonly Doubt[] => {
  const isRead = covers(read)
  const found: Doubt[] = []
  for (let at = 0; at < tokens.length; at += 1) {
    const token = tokenAt(tokens, at)
    if (token.kind !== 'number' || isRead(token.from)) continue
    const number = numberAt(tokens, at, mark)
    if (!number) found.push({ kind: /[.,]/.test(token.text) ? 'decimal' : 'number', from: token.from, to: token.to })
    else {
      const next = tokenAt(tokens, number.next)
      const ranged = /^[-–—/x×]$/.test(next.low) && tokenAt(tokens, number.next + 1).kind === 'number'
      if (!ranged && (next.kind !== 'word' || SMALL.test(next.low)))
        found.push({ kind: 'number', from: token.from, to: tokenAt(tokens, number.next - 1).to })
      at = number.next - 1
    }
  }
  return found
}

/** Reads one step's words. The text is kept as it is; what is found carries the stretch it came from. */
export const readStep = (text: string, section: string | null, mark: DecimalMark): StepPreview => {
  const whole = text.length <= LONGEST_STEP
  const tokens = tokensOf(whole ? text : text.slice(0, LONGEST_STEP))
  const [times, heats] = [timesIn(tokens, mark), heatsIn(tokens, mark)]
  const vague = [...times, ...heats].filter((each) => !each.certain)
  return {
    text,
    section,
    times,
    heats,
    kit: kitIn(tokens),
    care: careOf(tokens, text, times),
    signs: signsIn(tokens, text, times),
    ahead: phrasesIn(tokens, text, AHEAD),
    doubts: [
      ...vague.map(({ from, to }) => ({ kind: 'vague' as const, from, to })),
      ...strayNumbers(tokens, [...times, ...heats], mark),
      ...(whole ? [] : [{ kind: 'too-long' as const, from: LONGEST_STEP, to: text.length }]),
    ],
  }
}
