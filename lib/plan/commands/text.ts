import * as Y from 'yjs'

/** Makes the text of a field read `next` by changing only what differs, so that what others type beside it stays. */
export const writeText = (map: Y.Map<unknown>, name: string, next: string): void => {
  const text = map.get(name)
  if (!(text instanceof Y.Text)) {
    map.set(name, new Y.Text(next))
    return
  }
  const { at, cut, put } = textDifference(text.toString(), next)
  if (cut > 0) text.delete(at, cut)
  if (put) text.insert(at, put)
}

export interface TextDifference {
  readonly at: number
  /** How many letters go. */
  readonly cut: number
  /** What comes in their place. */
  readonly put: string
}

/** The one stretch in which two texts differ, at its shortest; a pair of surrogates is never cut through. */
export const textDifference = (before: string, after: string): TextDifference => {
  const shorter = Math.min(before.length, after.length)
  let head = 0
  while (head < shorter && before[head] === after[head]) head += 1
  if (head > 0 && isHigh(before.charCodeAt(head - 1))) head -= 1
  let tail = 0
  while (tail < shorter - head && before[before.length - 1 - tail] === after[after.length - 1 - tail]) tail += 1
  if (tail > 0 && isLow(before.charCodeAt(before.length - tail))) tail -= 1
  return { at: head, cut: before.length - tail - head, put: after.slice(head, after.length - tail) }
}

/** As `textDifference`, where somebody typed and the caret stands behind it now: of several stretches the one that ends there. */
export const typedDifference = (before: string, after: string, caret: number): TextDifference => {
  const tail = after.length - caret
  const isBehind = tail >= 0 && tail <= before.length && before.slice(before.length - tail) === after.slice(caret)
  if (!isBehind || isLow(after.charCodeAt(caret))) return textDifference(before, after)
  return textDifference(before.slice(0, before.length - tail), after.slice(0, caret))
}

/** Where a place in a text is after others have changed it; what they put right there comes behind it. */
export const placeAfter = (place: number, { at, cut, put }: TextDifference): number => {
  if (place <= at) return place
  return place >= at + cut ? place + put.length - cut : at
}

const isHigh = (code: number): boolean => code >= 0xd800 && code <= 0xdbff
const isLow = (code: number): boolean => code >= 0xdc00 && code <= 0xdfff
