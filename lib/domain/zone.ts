import { dayNumberOf, padded } from './calendar-date.ts'
import { remembered } from './remembered.ts'

/** Milliseconds of a wall clock, counted as if it showed UTC. */
export type WallMs = number

export const DAY_MS = 86_400_000
const SECOND_MS = 1000
/** Clocks change, and offsets are whole, at quarters of an hour, but for those of long ago. */
const QUARTER_MS = 900_000
/** Before this the sun was the clock: each zone has the offset that it has at this moment, 1800-01-01. */
const FIRST_MS = dayNumberOf(1800, 1, 1) * DAY_MS

/** What is needed of ECMAScript's Temporal. */
interface Clocks {
  readonly Instant: {
    fromEpochMilliseconds(ms: number): { toZonedDateTimeISO(zone: string): { readonly offsetNanoseconds: number } }
  }
}

declare const Temporal: Clocks | undefined

/**
 * Where the engine has it: a page's first DateTimeFormat takes 30 to 50 ms, for the words of all languages are made ready, and four times
 * that on a phone.
 */
const clocks = typeof Temporal === 'undefined' ? undefined : Temporal

const formats = new Map<string, Intl.DateTimeFormat>()

/** Throws a RangeError on what is no zone. */
const formatOf = (zone: string): Intl.DateTimeFormat =>
  remembered(
    formats,
    zone,
    () =>
      new Intl.DateTimeFormat('en-US', {
        timeZone: zone,
        calendar: 'gregory',
        numberingSystem: 'latn',
        hourCycle: 'h23',
        year: 'numeric',
        month: '2-digit',
        day: '2-digit',
        hour: '2-digit',
        minute: '2-digit',
        second: '2-digit',
      }),
  )

/** "11/14/2026, 19:45:00" */
const SHOWN = /^(\d+)\/(\d+)\/(\d+), (\d+):(\d+):(\d+)$/

const lookedUp = (zone: string, ms: number): number => {
  const at = Math.max(FIRST_MS, Math.floor(ms / SECOND_MS) * SECOND_MS)
  if (clocks) return clocks.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(zone).offsetNanoseconds / 1_000_000
  const shown = SHOWN.exec(formatOf(zone).format(at))
  if (!shown) throw new Error(`a clock cannot be read: ${formatOf(zone).format(at)}`)
  const [month = 0, day = 0, year = 0, hour = 0, minute = 0, second = 0] = shown.slice(1).map(Number)
  return dayNumberOf(year, month, day) * DAY_MS + ((hour * 60 + minute) * 60 + second) * SECOND_MS - at
}

/** Whether this is the name of a zone of the IANA database. */
export const isZone = (zone: string): boolean => {
  try {
    return /^[A-Za-z]/.test(zone) && Number.isFinite(lookedUp(zone, 0))
  } catch {
    return false
  }
}

/** Of quarters of an hour: null where the offset changes within. */
const offsets = new Map<string, number | null>()

/** By how much the clocks of a zone are ahead of UTC at an instant, in milliseconds. */
export const offsetAt = (zone: string, ms: number): number => {
  const quarter = Math.floor(ms / QUARTER_MS)
  const whole = remembered(offsets, `${quarter} ${zone}`, () => {
    const first = lookedUp(zone, quarter * QUARTER_MS)
    return first === lookedUp(zone, (quarter + 1) * QUARTER_MS - 1) ? first : null
  })
  return whole ?? lookedUp(zone, ms)
}

/**
 * The instant at which the clocks of a zone show this. What they show twice is its first occurrence; what they never show is moved by
 * the length of the gap, as RFC 5545 3.3.5 has it. No zone changes its clocks twice within two days.
 */
export const instantAt = (zone: string, wall: WallMs): number => {
  const before = wall - offsetAt(zone, wall - DAY_MS)
  const after = wall - offsetAt(zone, wall + DAY_MS)
  const shows = (ms: number) => ms + offsetAt(zone, ms) === wall
  // The first occurrence is that of the earlier offset, and it is also by this that a gap is passed over.
  return shows(before) || !shows(after) ? before : after
}

/** "+01:00", to the nearest minute. */
export const offsetText = (offset: number): string => {
  const minutes = Math.round(Math.abs(offset) / 60_000)
  return `${offset < 0 ? '-' : '+'}${padded(Math.floor(minutes / 60), 2)}:${padded(minutes % 60, 2)}`
}
