import type { Span } from '#lib/domain/atoms.ts'
import { durationOf, minutesOf, secondsOf } from '#lib/domain/duration.ts'
import type { Way } from '#lib/domain/menu.ts'
import { type Kind, keyOf, type Observation } from './observation.ts'
import { byNight, shrink } from './shrink.ts'

/** Off by less than this the written minutes are right enough; common practice, no source. */
const OFF_SHARE = 0.1
const OFF_MINUTES = 1
/** From so many nights on the spread is that of the nights, below it the written one is kept around the new usual. */
const SPREAD_NIGHTS = 3
/** One in ten is shorter, one in ten longer: the normal distribution's tenth and ninetieth hundredth. */
const TENTH = 1.2816

/** The minutes that a step usually takes here, the nights that they rest on, and what is written. */
export interface Usual {
  readonly takes: Span
  readonly nights: number
}

/** Half minutes below five, whole ones above. */
const onGrid = (seconds: number): number => {
  const grid = seconds < 300 ? 30 : 60
  return Math.max(grid, Math.round(seconds / grid) * grid)
}

/** The span that the nights suggest in place of the written one; the written one itself without nights, or when it is right enough. */
export const learntSpan = (written: Span, nights: readonly number[]): Span => {
  const found = shrink(nights)
  const likely = secondsOf(written.likely)
  const usual = onGrid(likely * Math.exp(found.mean))
  const off = Math.abs(usual - likely)
  if (found.mean === 0 || off < OFF_MINUTES * 60 || off < OFF_SHARE * likely) return written
  const shares =
    found.nights >= SPREAD_NIGHTS
      ? [Math.exp(-TENTH * found.sd), Math.exp(TENTH * found.sd)]
      : [secondsOf(written.least) / likely, secondsOf(written.most) / likely]
  return {
    least: durationOf(Math.min(usual, onGrid(usual * (shares[0] ?? 1)))),
    likely: durationOf(usual),
    most: durationOf(Math.max(usual, onGrid(usual * (shares[1] ?? 1)))),
  }
}

/** The step, as it is found again from evening to evening. */
export interface Same {
  readonly dish: string
  readonly does: string
  readonly kitchen: string
}

/**
 * What this very step took here before, against what is written now: so nothing is counted twice once it was taken. Null when it was
 * never told, when it is about right, and where how long it lasts is chosen.
 */
export const usualOf = (way: Way, { dish, does, kitchen }: Same, all: readonly Observation[]): Usual | null => {
  const written = minutesOf(way.takes.likely)
  if (written <= 0 || way.upTo !== undefined) return null
  const nights = byNight(
    all
      .filter((each) => each.dish === keyOf(dish) && each.does === keyOf(does) && each.care === way.care)
      .filter((each) => each.kitchen === keyOf(kitchen))
      .map(({ evening, took }) => ({ evening, log: Math.log(took / written) })),
  )
  const takes = learntSpan(way.takes, nights)
  return takes === way.takes ? null : { takes, nights: nights.length }
}

/** How much longer (1.2) or shorter (0.9) steps of a kind took than written, and on how many nights. */
export interface Pace {
  readonly factor: number
  readonly nights: number
}

const PACE_OFF = 0.08
const PACE_NIGHTS = 2
const OVEN_NIGHTS = 3

const paceFrom = (all: readonly Observation[], least: number): Pace | null => {
  const found = shrink(byNight(all.map(({ evening, took, written }) => ({ evening, log: Math.log(took / written) }))))
  const factor = Math.exp(found.mean)
  if (found.nights < least || Math.abs(factor - 1) < PACE_OFF) return null
  return { factor, nights: found.nights }
}

/** Steps of this kind in this kitchen, by this cook where one is named. It is told, never taken: it would be counted upon itself. */
export const paceOf = (kind: Kind, at: { kitchen: string; cook: string | null }, all: readonly Observation[]): Pace | null =>
  paceFrom(
    all
      .filter(({ role, care, kit }) => role === kind.role && care === kind.care && kit === kind.kit)
      .filter(({ kitchen, cook }) => kitchen === keyOf(at.kitchen) && (at.cook === null || cook === at.cook)),
    PACE_NIGHTS,
  )

/**
 * Whether a kitchen's oven is slow or fast, from what was left in it until it was done, on three nights or more. It is a sentence about minutes:
 * nobody's temperature is changed by it, and whether food is done the thermometer says.
 */
export const ovenPace = (kitchen: string, all: readonly Observation[]): Pace | null =>
  paceFrom(
    all.filter((each) => each.kitchen === keyOf(kitchen) && each.kit === 'oven' && each.care === 'leave' && each.byDoneness),
    OVEN_NIGHTS,
  )
