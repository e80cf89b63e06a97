import type { DecimalMark, StepPreview, StepTime } from './preview.ts'
import { LONGEST_STEP, readStep } from './step.ts'
import { tokensOf } from './tokens.ts'
import { verbAt } from './verbs.ts'

/** A piece of a step with at most one length of time: what an evening calls a step. */
export interface Part {
  readonly step: StepPreview
  /** The time that decides its length; null when the text gives none. */
  readonly time: StepTime | null
}

const LENGTHS = new Set<string>(['takes', 'rest', 'chill', 'freeze', 'cool', 'marinate', 'soak', 'rise', 'by-weight'])

/** Places where a sentence begins. */
const sentenceStarts = (text: string): readonly number[] => {
  const starts = [0]
  for (const found of text.matchAll(/[.!?;]\s+/gu)) starts.push(found.index + found[0].length)
  return starts
}

const JOINTS = [', then ', ' then ', '; ', ', and ', ', ']

/** Where to cut between two times: a sentence's start, else a joint of the sentence, else behind the first. */
const cutBetween = (text: string, starts: readonly number[], after: number, before: number): number => {
  const sentence = starts.filter((start) => start >= after && start <= before)
  const first = sentence[0]
  if (first !== undefined) return first
  const between = text.slice(after, before)
  for (const joint of JOINTS) {
    const at = between.indexOf(joint)
    if (at >= 0) return after + at + 1
  }
  return after
}

/** A piece of a sentence as a sentence: without the joint before it or the comma behind, with a capital. */
const tidy = (text: string): string =>
  text
    .replace(/^[\s,;.)]+(?:(?:and|then)\s+)*/iu, '')
    .trimEnd()
    .replace(/,? (?:and )?then$/iu, '')
    .replace(/[,;]$/u, '')
    .replace(/^\p{Ll}/u, (letter) => letter.toUpperCase())

/** Whether there is work for hands in some words: they are a step of their own before what stands in the oven. */
export const hasHandWork = (text: string): boolean => {
  const tokens = tokensOf(text)
  return tokens.some((_, at) => {
    const verb = verbAt(tokens, at)
    return verb !== null && 'care' in verb && verb.care === 'hands-on'
  })
}

/**
 * "(50 minutes straight from the fridge)": said by the way, and no length of its own. "Shred it (15 min)." is one: the brackets hold
 * nothing else, and the sentence ends there.
 */
const isAside = (text: string, { from, to }: StepTime): boolean => {
  const open = text.lastIndexOf('(', from)
  if (open <= text.lastIndexOf(')', from)) return false
  const isAlone = /^\(\s*(?:(?:about|around|approx\.?|ca?\.)\s*)?$/iu.test(text.slice(open, from))
  const endsThere = /^\s*\)\s*(?:[.!;]|$)/u.test(text.slice(to, to + 20))
  const sentence =
    text
      .slice(Math.max(0, open - 200), open)
      .split(/[.!?;]\s/u)
      .at(-1) ?? ''
  return !isAlone || !endsThere || /\d/u.test(sentence)
}

/** "Heat the oven to 200°C." at the beginning, when it has no time of its own, is cut off: what follows is another thing. */
const heatingFirst = (text: string, starts: readonly number[], lengths: readonly StepTime[]): number[] => {
  const second = starts[1]
  const first = text.slice(0, second)
  const heats = /^\s*(?:meanwhile,? )?(?:pre-?heat|heat|set|turn)\b[^.]{0,60}\boven\b/iu.test(first)
  return heats && second !== undefined && (lengths[0]?.from ?? second) >= second ? [0, second] : [0]
}

/** Where what comes after the last length begins: the next sentence, or the same one's "then". */
const behind = (text: string, starts: readonly number[], at: number): number | undefined => {
  const then = /^[^.;]{0,60}?,? (?:and )?then /iu.exec(text.slice(at, at + 80))
  return then ? at + then[0].length : starts.find((start) => start >= at)
}

/** A step cut so that each part has one length; hand work in earlier sentences becomes a part without one. */
export const partsOf = (whole: StepPreview, mark: DecimalMark): readonly Part[] => {
  const step = { ...whole, text: whole.text.slice(0, LONGEST_STEP) }
  const lengths = step.times.filter((time) => LENGTHS.has(time.value.kind) && !isAside(step.text, time))
  const starts = sentenceStarts(step.text)
  const cuts: number[] = heatingFirst(step.text, starts, lengths)
  for (const [i, time] of lengths.entries()) {
    const from = i === 0 ? (cuts.at(-1) ?? 0) : cutBetween(step.text, starts, lengths[i - 1]?.to ?? 0, time.from)
    if (i > 0) cuts.push(from)
    const own = starts.filter((start) => start <= time.from && start > from).at(-1)
    if (own !== undefined && hasHandWork(step.text.slice(from, own))) cuts.push(own)
  }
  const last = lengths.at(-1)
  const rest = last ? behind(step.text, starts, last.to) : undefined
  if (rest !== undefined && hasHandWork(step.text.slice(rest))) cuts.push(rest)
  return cuts.flatMap((from, i): Part[] => {
    const to = cuts[i + 1] ?? step.text.length
    const words = tidy(step.text.slice(from, to))
    if (words === '') return []
    const time = lengths.find((each) => each.from >= from && each.from < to) ?? null
    return [{ step: readStep(words, step.section, mark, step.bare), time }]
  })
}
