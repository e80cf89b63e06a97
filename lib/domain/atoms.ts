import * as z from 'zod/mini'
import { isDuration } from './duration.ts'
import { isZone } from './zone.ts'

/** Ids are unique within an evening: letters, digits and hyphens, 1 to 40 of them. */
export const Id = z.string().check(z.regex(/^[A-Za-z0-9-]{1,40}$/, 'must be 1 to 40 letters, digits or hyphens'))

/** A fractional key: siblings sort by it, ties by id. */
export const OrderKey = z.string().check(z.regex(/^[0-9A-Za-z]{1,64}$/, 'must be 1 to 64 letters or digits'))

/** One line of text: no control characters, so no output format can be broken by it. */
export const line = (most: number) =>
  z.string().check(
    z.maxLength(most),
    z.refine((text) => !hasControls(text, false), 'must not contain control characters'),
  )

/** Several lines of text: tab and newline allowed, no other control character. */
export const paragraphs = (most: number) =>
  z.string().check(
    z.maxLength(most),
    z.refine((text) => !hasControls(text, true), 'must not contain control characters'),
  )

/** Replaces what `line` and `paragraphs` refuse, for text that comes from outside. */
export const cleanText = (text: string, keepLines: boolean): string =>
  Array.from(text, (char) => (hasControls(char, keepLines) ? ' ' : char)).join('')

const hasControls = (text: string, allowLines: boolean): boolean => {
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at)
    if (allowLines && (code === 0x09 || code === 0x0a)) continue
    if (code < 0x20 || (code >= 0x7f && code <= 0x9f) || code === 0x2028 || code === 0x2029) return true
  }
  return false
}

/** An ISO 8601 duration in days, hours, minutes and seconds: never negative, no weeks, months or years. */
export const Duration = z
  .string()
  .check(
    z.maxLength(40),
    z.refine(isDuration, 'must be an ISO 8601 duration of days, hours, minutes and seconds, such as PT1H30M'),
  )

/** How long something takes: least ≤ likely ≤ most (checked with the whole evening). */
export const Span = z.strictObject({ least: Duration, likely: Duration, most: Duration })
export type Span = z.infer<typeof Span>

/** Wall-clock time on a day counted from the evening's date, in the evening's zone. */
export const At = z.strictObject({
  day: z.int().check(z.gte(-7), z.lte(1)),
  time: z.string().check(z.regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'must be HH:MM')),
})
export type At = z.infer<typeof At>

export const Zone = z.string().check(z.maxLength(64), z.refine(isZone, 'must be an IANA time zone, such as Europe/London'))

/** RFC 3339 with an offset. */
export const Instant = z.iso.datetime({ offset: true })

/** A kebab-case word from an open list of the trade: a need, a food group. */
export const Word = z
  .string()
  .check(z.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'must be lower-case words joined by hyphens'), z.maxLength(40))

/** An exact amount: "3", "1/2". */
export const Fraction = z
  .string()
  .check(z.regex(/^\d{1,7}(\/[1-9]\d{0,5})?$/, 'must be a whole number or a fraction such as 1/2'))

/** What has an edge in degrees Celsius. */
export const Celsius = z.number().check(z.gte(-40), z.lte(500))
