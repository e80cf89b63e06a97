import { createEvents, type EventAttributes } from 'ics'
import { cleanText } from '#lib/domain/atoms.ts'
import { foldLines } from './fold-lines.ts'

/** One entry of a calendar file. Instants in ms since 1970. */
export interface CalendarEvent {
  readonly uid: string
  readonly sequence: number
  readonly changedAt: number
  readonly from: number
  readonly to: number
  readonly title: string
  readonly notes: string
  /** Minutes before; null: no alarm. */
  readonly alarm: number | null
  readonly cancelled: boolean
}

const MINUTE = 60_000
const PRODUCT = '-//Tableward//Running order//EN'

/** One line of text as a calendar may carry it: no control character stays in it. */
const lineOf = (text: string): string => cleanText(text, false)
const linesOf = (text: string): string => cleanText(text.replace(/\r\n?|[\u2028\u2029\u0085]/g, '\n').replace(/\t/g, ' '), true)

/** As RFC 5545, 3.3.11 wants TEXT: the library does it for what an event says and not for alarms and the calendar's name. */
const escaped = (text: string): string => text.replace(/[\\;,]/g, (sign) => `\\${sign}`)

const utc = (ms: number): string => new Date(Math.floor(ms / 1000) * 1000).toISOString().replace(/[-:]|\.\d{3}/g, '')

const eventOf = (event: CalendarEvent): EventAttributes & { readonly timestamp: string } => {
  const title = lineOf(event.title) || 'An entry'
  return {
    uid: event.uid,
    sequence: event.sequence,
    // Without a METHOD it is when what is said was last changed (RFC 5545, 3.8.7.2).
    timestamp: utc(event.changedAt),
    lastModified: utc(event.changedAt),
    start: utc(event.from),
    // It must be later than the start (RFC 5545, 3.8.2.2).
    end: utc(Math.max(event.to, event.from + MINUTE)),
    title,
    description: linesOf(event.notes),
    status: event.cancelled ? 'CANCELLED' : 'CONFIRMED',
    // Cooking at one's own dinner: nobody else's calendar need show it as taken.
    busyStatus: 'BUSY',
    classification: 'PRIVATE',
    ...(event.alarm === null || event.cancelled
      ? {}
      : {
          alarms: [
            {
              action: 'display',
              description: escaped(title),
              // A trigger of no length cannot be written as a duration by the library: the moment itself.
              trigger: event.alarm === 0 ? utc(event.from) : { minutes: event.alarm, before: true },
            },
          ],
        }),
  }
}

/** A calendar file (RFC 5545): times in UTC, lines of at most 75 octets. Whatever the text is, it is text. */
export const writeCalendar = (name: string, events: readonly CalendarEvent[]): string => {
  const { error, value } = createEvents(events.map(eventOf), {
    productId: PRODUCT,
    method: '',
    calName: escaped(lineOf(name)),
  })
  if (error || !value) throw new Error('the calendar could not be written', { cause: error })
  return foldLines(value)
}
