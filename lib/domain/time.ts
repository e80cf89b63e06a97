import { Temporal } from 'temporal-polyfill'
import { TICK_SECONDS } from './duration.ts'

/** What places an evening on the world's clock. */
export interface EveningClock {
  /** yyyy-mm-dd, the calendar date in `zone` on which the guests come. */
  readonly date: string
  readonly zone: string
}

/** A wall-clock time on a day counted from the evening's date. */
export interface WallTime {
  readonly day: number
  readonly time: string
}

export const isZone = (zone: string): boolean => {
  try {
    Temporal.PlainDate.from('2000-01-01').toZonedDateTime(zone)
    return /^[A-Za-z]/.test(zone)
  } catch {
    return false
  }
}

export const isDate = (date: string): boolean => {
  try {
    return /^\d{4}-\d{2}-\d{2}$/.test(date) && Temporal.PlainDate.from(date, { overflow: 'reject' }).toString() === date
  } catch {
    return false
  }
}

/**
 * Milliseconds since 1970 of a wall-clock time. A time that happens twice is its first occurrence, a time that never
 * happens is moved by the length of the gap: Temporal's "compatible", as RFC 5545 has it.
 */
export const epochMsOf = (clock: EveningClock, at: WallTime): number =>
  Temporal.PlainDate.from(clock.date)
    .add({ days: at.day })
    .toPlainDateTime(Temporal.PlainTime.from(at.time))
    .toZonedDateTime(clock.zone, { disambiguation: 'compatible' }).epochMilliseconds

/** The origin of an evening's ticks: the first moment of the day a week before it. */
export const originMsOf = ({ date, zone }: EveningClock): number =>
  remembered(
    origins,
    `${date} ${zone}`,
    () => Temporal.PlainDate.from(date).subtract({ days: 7 }).toZonedDateTime(zone).epochMilliseconds,
  )

/** Calendar arithmetic takes some 0.03 ms a time, and a plan asks the same things hundreds of times. */
const origins = new Map<string, number>()
const instants = new Map<string, number>()
const MOST_REMEMBERED = 20_000

const remembered = <T>(known: Map<string, T>, key: string, work: () => T): T => {
  const found = known.get(key)
  if (found !== undefined) return found
  const made = work()
  if (known.size >= MOST_REMEMBERED) known.clear()
  known.set(key, made)
  return made
}

const TICK_MS = TICK_SECONDS * 1000

/** Elapsed ticks from the origin, rounded inward for the start of a window (up) or its end (down). */
export const tickOf = (clock: EveningClock, at: WallTime, round: 'up' | 'down'): number =>
  tickOfMs(clock, epochMsOf(clock, at), round)

/** As `tickOf`, of an instant. */
export const tickOfMs = (clock: EveningClock, epochMs: number, round: 'up' | 'down'): number => {
  const ticks = (epochMs - originMsOf(clock)) / TICK_MS
  return round === 'up' ? Math.ceil(ticks) : Math.floor(ticks)
}

export const epochMsOfTick = (clock: EveningClock, tick: number): number => originMsOf(clock) + tick * TICK_MS

/** RFC 3339 with the zone's offset: "2026-11-14T19:45:00+00:00". */
export const instantOfMs = ({ zone }: EveningClock, epochMs: number): string => {
  const second = Math.floor(epochMs / 1000)
  const quarter = Math.floor(second / QUARTER)
  const { minute, offset } = remembered(quarters, `${quarter} ${zone}`, () => quarterOf(zone, quarter))
  if (minute === null) return printed(zone, epochMs)
  const left = second - quarter * QUARTER
  return `${minute.hour}:${twoDigits(minute.past + Math.floor(left / 60))}:${twoDigits(left % 60)}${offset}`
}

const printed = (zone: string, epochMs: number): string =>
  Temporal.Instant.fromEpochMilliseconds(epochMs)
    .toZonedDateTimeISO(zone)
    .toString({ timeZoneName: 'never', smallestUnit: 'second' })

const twoDigits = (number: number): string => String(number).padStart(2, '0')

/** Seconds: clocks change, and offsets are whole, at quarters of an hour. Where one is not, each instant is printed anew. */
const QUARTER = 900
/** How the instants of a quarter of an hour are written: up to the hour, minutes past it, and the offset. */
interface Quarter {
  readonly minute: { readonly hour: string; readonly past: number } | null
  readonly offset: string
}
const quarters = new Map<string, Quarter>()

const quarterOf = (zone: string, quarter: number): Quarter => {
  const begins = PRINTED.exec(printed(zone, quarter * QUARTER * 1000))
  const ends = PRINTED.exec(printed(zone, (quarter + 1) * QUARTER * 1000 - 1000))
  if (!begins?.[1] || !ends) return { minute: null, offset: '' }
  const past = Number(begins[2])
  const offset = begins[4] ?? ''
  const isWhole = begins[3] === '00' && ends[1] === begins[1] && Number(ends[2]) === past + 14 && ends[4] === offset
  return { minute: isWhole ? { hour: begins[1], past } : null, offset }
}
const PRINTED = /^(.*T\d\d):(\d\d):(\d\d)(.*)$/

export const instantOfTick = (clock: EveningClock, tick: number): string => instantOfMs(clock, epochMsOfTick(clock, tick))

/** Milliseconds since 1970 of an RFC 3339 instant. Throws on anything else: parse first. */
export const msOfInstant = (instant: string): number =>
  remembered(instants, instant, () => Temporal.Instant.from(instant).epochMilliseconds)

/** The wall clock at an instant, as day from the evening's date and HH:MM (seconds cut off). */
export const wallTimeOfMs = (clock: EveningClock, epochMs: number): WallTime => {
  const zoned = Temporal.Instant.fromEpochMilliseconds(epochMs).toZonedDateTimeISO(clock.zone)
  const day = Temporal.PlainDate.from(clock.date).until(zoned.toPlainDate(), { largestUnit: 'days' }).days
  return { day, time: zoned.toPlainTime().toString({ smallestUnit: 'minute' }) }
}

export const wallTimeOfTick = (clock: EveningClock, tick: number): WallTime => wallTimeOfMs(clock, epochMsOfTick(clock, tick))

/** The calendar date of an instant in a zone, `plusDays` later when given: yyyy-mm-dd. */
export const dateAt = (zone: string, epochMs: number, plusDays = 0): string =>
  Temporal.Instant.fromEpochMilliseconds(epochMs).toZonedDateTimeISO(zone).toPlainDate().add({ days: plusDays }).toString()

/** The calendar date that lies `day` days from the evening's: yyyy-mm-dd. */
export const dateOfDay = (clock: EveningClock, day: number): string =>
  Temporal.PlainDate.from(clock.date).add({ days: day }).toString()

/** Days from a date (yyyy-mm-dd) to the evening's date: positive when the evening is later. */
export const daysUntil = (clock: EveningClock, from: string): number =>
  Temporal.PlainDate.from(from).until(Temporal.PlainDate.from(clock.date), { largestUnit: 'days' }).days
