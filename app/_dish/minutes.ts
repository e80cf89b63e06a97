import type { Span } from '#lib/domain/atoms.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Way } from '#lib/domain/menu.ts'
import { spanFromUsual } from '#lib/domain/usual-span.ts'

const longer = (a: string, b: string): string => (secondsOf(a) >= secondsOf(b) ? a : b)
const shorter = (a: string, b: string): string => (secondsOf(a) <= secondsOf(b) ? a : b)
const same = (a: string, b: string): boolean => secondsOf(a) === secondsOf(b)

/** What the usual length alone would suggest. */
export const suggested = (likely: string): Span => spanFromUsual(secondsOf(likely))

/**
 * The span with another usual length. A least or most that was only suggested is suggested anew; one that a person set stays
 * as long as the usual length does not pass it.
 */
export const withUsual = (takes: Span, likely: string): Span => {
  const [before, now] = [suggested(takes.likely), suggested(likely)]
  const keepsLeast = !same(takes.least, before.least) && secondsOf(takes.least) <= secondsOf(likely)
  const keepsMost = !same(takes.most, before.most) && secondsOf(takes.most) >= secondsOf(likely)
  return { least: keepsLeast ? takes.least : now.least, likely, most: keepsMost ? takes.most : now.most }
}

/** The span with other bounds; the usual length is moved as little as it must. */
export const withBounds = (takes: Span, [least, most]: readonly [string, string]): Span => ({
  least,
  likely: shorter(longer(takes.likely, least), most),
  most,
})

/** The way with that length; it may stay no shorter than its most. */
export const withTakes = (way: Way, takes: Span): Way =>
  way.upTo === undefined ? { ...way, takes } : { ...way, takes, upTo: longer(way.upTo, takes.most) }
