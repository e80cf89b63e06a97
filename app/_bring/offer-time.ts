import { means, type Said, wrong } from '#app/_ui/parts.ts'
import { readDuration } from '#app/_words/duration.ts'
import type { Span } from '#lib/domain/atoms.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import { spanFromUsual } from '#lib/domain/usual-span.ts'
import type { OfferPatch } from './offer-edit.ts'

export const WRONG_TIME = 'Write how long, such as 25 min or 1 h 30.'

/** A time as somebody writes it, around which it may take less or more. */
export const timed = (text: string, make: (span: Span) => OfferPatch): Said<OfferPatch> => {
  const time = readDuration(text)
  return time === null || secondsOf(time) === 0 ? wrong(WRONG_TIME) : means(make(spanFromUsual(secondsOf(time))))
}
