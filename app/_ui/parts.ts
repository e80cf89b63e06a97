/** What words that were written, or a choice, come to: the change that they mean, or what is wrong and what to do. */
export type Said<T> = { readonly kind: 'means'; readonly value: T } | { readonly kind: 'wrong'; readonly why: string }

export const means = <T>(value: T): Said<T> => ({ kind: 'means', value })
export const wrong = (why: string): Said<never> => ({ kind: 'wrong', why })

/** `at`: the path of what it says, which is its name among the parts of one entry. `label`: for those who do not see the sentence. */
interface Blank {
  readonly at: string
  readonly label: string
}
export interface TextBlank<T> extends Blank {
  readonly kind: 'text'
  readonly text: string
  readonly empty?: string
  readonly long?: boolean
  readonly write: (text: string) => Said<T>
}
export interface ChoiceBlank<T> extends Blank {
  readonly kind: 'choice'
  readonly value: string
  readonly options: readonly (readonly [value: string, words: string, group?: string])[]
  readonly choose: (value: string) => Said<T>
}
export interface Press<T> extends Blank {
  readonly kind: 'press'
  readonly words: string
  readonly press: () => Said<T>
}
/** Said beside the blanks, not to be changed there: what they mean, or what is amiss and where to put it right. */
export interface Note {
  readonly kind: 'note'
  readonly at: string
  readonly words: string
  readonly tone: 'means' | 'amiss'
  readonly link?: { readonly href: string; readonly words: string }
}

/** A sentence as data: plain words, and blanks that give back a change of the thing that the sentence is about. */
export type Part<T> = string | TextBlank<T> | ChoiceBlank<T> | Press<T> | Note
export type Parts<T> = readonly Part<T>[]

const lifted = <T, U>(said: Said<T>, lift: (value: T) => U): Said<U> => (said.kind === 'wrong' ? said : means(lift(said.value)))

/** The sentence of a part of a thing as a sentence of the whole thing. */
export const within = <T, U>(parts: Parts<T>, lift: (value: T) => U): Parts<U> =>
  parts.map((part): Part<U> => {
    if (typeof part === 'string' || part.kind === 'note') return part
    if (part.kind === 'text') return { ...part, write: (text) => lifted(part.write(text), lift) }
    if (part.kind === 'choice') return { ...part, choose: (value) => lifted(part.choose(value), lift) }
    return { ...part, press: () => lifted(part.press(), lift) }
  })

const chosenWords = <T>(part: ChoiceBlank<T>): string => part.options.find(([value]) => value === part.value)?.[1] ?? part.value

/** The sentence as one reads it, without what can be pressed. */
export const readOut = <T>(parts: Parts<T>): string =>
  parts
    .map((part) => {
      if (typeof part === 'string') return part
      if (part.kind === 'text') return part.text || (part.empty ?? '')
      if (part.kind === 'choice') return chosenWords(part)
      return part.kind === 'note' ? ` (${part.words})` : ''
    })
    .join('')
