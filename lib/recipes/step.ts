import type { Care } from '#lib/domain/menu.ts'
import { heatsIn } from './heats.ts'
import { kitIn } from './kit.ts'
import { covers, otherNumbers } from './other-numbers.ts'
import type { BareScale, DecimalMark, Doubt, Found, StepPreview, StepTime, Stretch } from './preview.ts'
import { timesIn } from './times.ts'
import { type Phrases, phraseAt, phrases, type Token, tokenAt, tokensOf } from './tokens.ts'
import { verbAt } from './verbs.ts'

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

// Words of time without a number: how long is for a person to say.
const WITHOUT_NUMBER = phrases(
  'all day',
  'all night',
  'all afternoon',
  'all morning',
  'a while',
  'as long as',
  'until morning',
  'till morning',
  'until the next day',
  'until the evening',
  'a moment',
  'a few moments',
)

const UNIT_WORD = /^(minutes?|mins?|hours?|hrs?|seconds|secs?|hourly|overnight|fortnight|degrees|celsius|fahrenheit|°|º|˚)$/

/** Words of time or heat that no reading holds: "some minutes", "a matter of hours". "The last minute" is a manner. */
const unreadWords = (tokens: readonly Token[], read: readonly Stretch[]): readonly Doubt[] => {
  const isRead = covers(read)
  return tokens.flatMap((token, at): Doubt[] =>
    UNIT_WORD.test(token.low) && !isRead(token.from) && tokenAt(tokens, at - 1).low !== 'last'
      ? [{ kind: 'vague', from: token.from, to: token.to }]
      : [],
  )
}

/** Reads one step's words. The text is kept as it is; what is found carries the stretch it came from. */
export const readStep = (text: string, section: string | null, mark: DecimalMark, bare: BareScale = 'C'): StepPreview => {
  const whole = text.length <= LONGEST_STEP
  const tokens = tokensOf(whole ? text : text.slice(0, LONGEST_STEP))
  const [times, heats] = [timesIn(tokens, mark), heatsIn(tokens, mark, bare)]
  const vague = [...times, ...heats].filter((each) => !each.certain)
  const { told, doubts } = otherNumbers(tokens, [...times, ...heats], mark)
  return {
    text,
    section,
    times,
    heats,
    kit: kitIn(tokens),
    care: careOf(tokens, text, times),
    signs: signsIn(tokens, text, times),
    ahead: phrasesIn(tokens, text, AHEAD),
    bare,
    told,
    doubts: [
      ...vague.map(({ from, to }) => ({ kind: 'vague' as const, from, to })),
      ...phrasesIn(tokens, text, WITHOUT_NUMBER).map(({ from, to }) => ({ kind: 'vague' as const, from, to })),
      ...unreadWords(tokens, [...times, ...heats, ...doubts]),
      ...doubts,
      ...(whole ? [] : [{ kind: 'too-long' as const, from: LONGEST_STEP, to: text.length }]),
    ],
  }
}
