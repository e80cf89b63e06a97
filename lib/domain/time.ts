import { dateOf, dayNumber, padded, readDate } from './calendar-date.ts'
import { TICK_SECONDS } from './duration.ts'
import { remembered } from './remembered.ts'
import { DAY_MS, instantAt, offsetAt, offsetText, type WallMs } from './zone.ts'

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

export const isDate = (date: string): boolean => readDate(date) !== null

/**
 * Milliseconds since 1970 of a wall-clock time. A time that happens twice is its first occurrence, a time that never
 * happens is moved by the length of the gap, as RFC 5545 has it.
 */
export const epochMsOf = (clock: EveningClock, at: WallTime): number =>
  instantAt(clock.zone, (dayNumber(clock.date) + at.day) * DAY_MS + minutesOf(at.time) * MINUTE_MS)

const MINUTE_MS = 60_000

/** Of HH:MM. */
const minutesOf = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5))

/** The origin of an evening's ticks: midnight a week before it, or the first moment after where clocks pass it over. */
export const originMsOf = ({ date, zone }: EveningClock): number =>
  remembered(origins, `${date} ${zone}`, () => instantAt(zone, (dayNumber(date) - 7) * DAY_MS))

const origins = new Map<string, number>()
const instants = new Map<string, number>()

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

/** What the clocks of a zone show at an instant, and how far they are ahead of UTC. */
const wallAt = (zone: string, epochMs: number): { readonly wall: WallMs; readonly offset: number } => {
  const offset = offsetAt(zone, epochMs)
  return { wall: epochMs + offset, offset }
}

const dayOf = (wall: WallMs): number => Math.floor(wall / DAY_MS)

/** HH:MM, the seconds cut off. */
const timeOf = (wall: WallMs): string => {
  const minutes = Math.floor((wall - dayOf(wall) * DAY_MS) / MINUTE_MS)
  return `${padded(Math.floor(minutes / 60), 2)}:${padded(minutes % 60, 2)}`
}

/** RFC 3339 with the zone's offset: "2026-11-14T19:45:00+00:00". */
export const instantOfMs = ({ zone }: EveningClock, epochMs: number): string => {
  const { wall, offset } = wallAt(zone, epochMs)
  const second = Math.floor(wall / 1000) - Math.floor(wall / MINUTE_MS) * 60
  return `${dateOf(dayOf(wall))}T${timeOf(wall)}:${padded(second, 2)}${offsetText(offset)}`
}

export const instantOfTick = (clock: EveningClock, tick: number): string => instantOfMs(clock, epochMsOfTick(clock, tick))

/** Milliseconds since 1970 of an RFC 3339 instant. Throws on anything else: parse first. */
export const msOfInstant = (instant: string): number => remembered(instants, instant, () => readInstant(instant))

const INSTANT = /^(\d{4}-\d\d-\d\d)T(\d\d):(\d\d)(?::(\d\d)(?:\.(\d+))?)?(?:Z|([+-])(\d\d):?(\d\d))$/

const readInstant = (instant: string): number => {
  const found = INSTANT.exec(instant)
  if (!found?.[1]) throw new RangeError(`no instant: ${instant}`)
  const [, date, hour, minute, second = '0', part = '', sign, ahead = '0', minutesAhead = '0'] = found
  const offset = (sign === '-' ? -1 : 1) * (Number(ahead) * 60 + Number(minutesAhead))
  const minutes = Number(hour) * 60 + Number(minute) - offset
  return dayNumber(date) * DAY_MS + minutes * MINUTE_MS + Number(second) * 1000 + Number(part.padEnd(3, '0').slice(0, 3))
}

/** The wall clock at an instant, as day from the evening's date and HH:MM (seconds cut off). */
export const wallTimeOfMs = (clock: EveningClock, epochMs: number): WallTime => {
  const { wall } = wallAt(clock.zone, epochMs)
  return { day: dayOf(wall) - dayNumber(clock.date), time: timeOf(wall) }
}

export const wallTimeOfTick = (clock: EveningClock, tick: number): WallTime => wallTimeOfMs(clock, epochMsOfTick(clock, tick))

/** The calendar date of an instant in a zone, `plusDays` later when given: yyyy-mm-dd. */
export const dateAt = (zone: string, epochMs: number, plusDays = 0): string =>
  dateOf(dayOf(wallAt(zone, epochMs).wall) + plusDays)

/** The calendar date that lies `day` days from the evening's: yyyy-mm-dd. */
export const dateOfDay = (clock: EveningClock, day: number): string => dateOf(dayNumber(clock.date) + day)

/** Days from a date (yyyy-mm-dd) to the evening's date: positive when the evening is later. */
export const daysUntil = (clock: EveningClock, from: string): number => dayNumber(clock.date) - dayNumber(from)
