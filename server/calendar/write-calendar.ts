import { cleanText } from '#lib/domain/atoms.ts'
import { foldLine } from './fold-line.ts'

/** One entry of a calendar file. Instants in ms since 1970. */
export interface CalendarEvent {
  readonly uid: string
  readonly sequence: number
  readonly changedAt: number
  readonly from: number
  readonly to: number
  /** yyyy-mm-dd: it is of this whole day, wherever the calendar is, and of no hour; it does not call. */
  readonly date?: string
  readonly title: string
  readonly notes: string
  /** Minutes before; null: no alarm. */
  readonly alarm: number | null
  readonly cancelled: boolean
}

const MINUTE = 60_000

/** TEXT (RFC 5545, 3.3.11): its own signs escaped, line ends of every kind as \n, and no control character left. */
const text = (written: string): string =>
  written
    .split(/\r\n|[\r\n\u0085\u2028\u2029]/)
    .map((line) => cleanText(line, false).replace(/[\\;,]/g, (sign) => `\\${sign}`))
    .join('\\n')

const oneLine = (written: string): string => text(cleanText(written, false))

/** An instant in UTC, in whole seconds (RFC 5545, 3.3.5). */
const utc = (ms: number): string => new Date(Math.floor(ms / 1000) * 1000).toISOString().replace(/[-:]|\.\d{3}/g, '')

/** The end must be later than the start (RFC 5545, 3.8.2.2); a day without an end is that day (3.6.1), and takes nobody's time. */
const whenOf = ({ date, from, to }: CalendarEvent): readonly string[] =>
  date === undefined
    ? [`DTSTART:${utc(from)}`, `DTEND:${utc(Math.max(to, from + MINUTE))}`]
    : [`DTSTART;VALUE=DATE:${date.replaceAll('-', '')}`, 'TRANSP:TRANSPARENT']

const linesOf = (event: CalendarEvent): readonly string[] => {
  const title = oneLine(event.title) || 'An entry'
  return [
    'BEGIN:VEVENT',
    `UID:${text(event.uid)}`,
    // Without a METHOD it is when what is said was last changed (RFC 5545, 3.8.7.2).
    `DTSTAMP:${utc(event.changedAt)}`,
    `LAST-MODIFIED:${utc(event.changedAt)}`,
    `SEQUENCE:${event.sequence}`,
    ...whenOf(event),
    `SUMMARY:${title}`,
    ...(event.notes === '' ? [] : [`DESCRIPTION:${text(event.notes)}`]),
    `STATUS:${event.cancelled ? 'CANCELLED' : 'CONFIRMED'}`,
    'CLASS:PRIVATE',
    ...(event.alarm === null || event.cancelled || event.date !== undefined
      ? []
      : ['BEGIN:VALARM', 'ACTION:DISPLAY', `TRIGGER:-PT${event.alarm}M`, `DESCRIPTION:${title}`, 'END:VALARM']),
    'END:VEVENT',
  ]
}

/** A calendar file (RFC 5545): times in UTC, lines of at most 75 octets. Whatever a text is, it stays text. */
export const writeCalendar = (name: string, events: readonly CalendarEvent[]): string =>
  [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Tableward//Running order//EN',
    'CALSCALE:GREGORIAN',
    // By the first most programs call it, by the second (RFC 7986, 5.1) the others; how often to look again (RFC 7986, 5.7).
    `X-WR-CALNAME:${oneLine(name)}`,
    `NAME:${oneLine(name)}`,
    'REFRESH-INTERVAL;VALUE=DURATION:PT1H',
    'X-PUBLISHED-TTL:PT1H',
    ...events.flatMap(linesOf),
    'END:VCALENDAR',
  ]
    .map((line) => `${foldLine(line)}\r\n`)
    .join('')
