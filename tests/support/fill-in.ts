import type { Part, Said } from '#app/_ui/parts.ts'

/** Words that one or the other blank of a step understands. */
export const WORDS = [
  '',
  '35 min',
  '1:30',
  '90',
  '3 days',
  '20 to 65 min',
  '30 min more',
  '3 h in all',
  '210 to 225',
  '375 F',
  'gas 5',
  '180 fan',
  '72',
  '3 shelves',
  'two places',
  '5',
  'mandolin',
  'golden at the edge',
  '11:30',
  '9 pm',
]

export interface Filled<T> {
  readonly at: string
  readonly put: string
  readonly said: Said<T>
}

/** What comes of a blank when each of its choices is made, or each of the words is written into it. */
export const fillIn = <T>(part: Part<T>, words: readonly string[] = WORDS): readonly Filled<T>[] => {
  if (typeof part === 'string' || part.kind === 'note') return []
  if (part.kind === 'press') return [{ at: part.at, put: part.words, said: part.press() }]
  if (part.kind === 'choice') return part.options.map(([value]) => ({ at: part.at, put: value, said: part.choose(value) }))
  return words.map((put) => ({ at: part.at, put, said: part.write(put) }))
}
