/** A word, a number as it is written, or a single other sign. */
export interface Token {
  readonly kind: 'number' | 'fraction' | 'word' | 'mark'
  readonly text: string
  /** Lower case, with the straight apostrophe. */
  readonly low: string
  readonly from: number
  readonly to: number
  /** Whether white space stands before it. */
  readonly spaced: boolean
}

/** Whether a token is a number in signs, also in ones that are not read (², Ⅳ, ٣). */
export const isNumeral = (token: Token): boolean => token.kind !== 'word' && /\p{N}/u.test(token.text)

const NOTHING: Token = { kind: 'mark', text: '', low: '', from: -1, to: -1, spaced: true }

// Each alternative takes what it can and never gives back: the text is walked once.
const TOKEN = /(\d+(?:[.,]\d+)*)|([¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])|((?:\p{L}\p{M}*)+(?:['’-](?:\p{L}\p{M}*)+)*)|(\S)/uy
const SPACE = /\s*/uy
// "twenty-minute", "half-hour": the number is the word before the hyphen.
const COMPOUND =
  /^(?:half|quarter|one|two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty|thirty|forty|forty-five|sixty|ninety|twenty-four)-(?=(?:seconds?|minutes?|mins?|hours?|days?|weeks?|inch|inches)$)/u

const token = (kind: Token['kind'], text: string, from: number, spaced: boolean): Token => ({
  kind,
  text,
  low: text.toLowerCase(),
  from,
  to: from + text.length,
  spaced,
})

/** The text as tokens, in one pass. */
export const tokensOf = (text: string): readonly Token[] => {
  const tokens: Token[] = []
  let at = 0
  while (at < text.length) {
    SPACE.lastIndex = at
    const from = at + (SPACE.exec(text)?.[0].length ?? 0)
    if (from >= text.length) break
    TOKEN.lastIndex = from
    const found = TOKEN.exec(text)
    const word = found?.[0] ?? text.charAt(from)
    const kind = found?.[1] ? 'number' : found?.[2] ? 'fraction' : found?.[3] ? 'word' : 'mark'
    const spaced = from > at || at === 0
    const low = word.toLowerCase().replaceAll('’', "'")
    const cut = kind === 'word' && word.length < 24 ? (COMPOUND.exec(low)?.[0].length ?? 0) : 0
    if (cut > 0) {
      tokens.push(token('word', word.slice(0, cut - 1), from, spaced), token('mark', '-', from + cut - 1, false))
      tokens.push(token('word', word.slice(cut), from + cut, false))
    } else tokens.push({ kind, text: word, low, from, to: from + word.length, spaced })
    at = from + word.length
  }
  return tokens
}

/** The token at a place, or an empty one beyond the ends. */
export const tokenAt = (tokens: readonly Token[], at: number): Token => tokens[at] ?? NOTHING

/** Phrases ready to be looked for: by their first word, the one listed first before the others. */
export type Phrases = ReadonlyMap<string, readonly (readonly string[])[]>

export const phrases = (...listed: readonly string[]): Phrases => {
  const byFirst = new Map<string, (readonly string[])[]>()
  for (const phrase of listed) {
    const words = phrase.split(' ')
    const first = words[0] ?? ''
    byFirst.set(first, [...(byFirst.get(first) ?? []), words])
  }
  return byFirst
}

/** How many tokens the first of these phrases that stands at a place has; 0 when none does. */
export const phraseAt = (tokens: readonly Token[], at: number, known: Phrases): number => {
  const found = known
    .get(tokenAt(tokens, at).low)
    ?.find((words) => words.every((word, i) => i === 0 || tokenAt(tokens, at + i).low === word))
  return found ? found.length : 0
}
