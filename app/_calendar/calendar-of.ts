import { CANCELLED } from '#app/_words/calendar.ts'
import { mediumDate } from '#app/_words/clock.ts'
import { digestOf } from '#server/calendar/digest.ts'
import { numberEntries } from '#server/calendar/number-entries.ts'
import type { Fed } from '#server/calendar/open-feed.ts'
import { type CalendarEvent, writeCalendar } from '#server/calendar/write-calendar.ts'
import { entriesOf } from './entries.ts'

/**
 * A calendar file for one seat. What a calendar follows simply leaves out what is not to be done any more; `withGone`: a file, which is
 * brought in beside what was brought in before, says that it is off.
 */
export const calendarOf = async (fed: Fed, withGone: boolean): Promise<string> => {
  const { evening, order, memberId, alarm } = fed
  const entries = entriesOf(evening, order, fed)
  const said = entries.map(({ uid, title, notes, from, to }) => ({
    uid,
    digest: digestOf([title, notes, from, to, alarm]),
    startsAt: from,
  }))
  const numbers = await numberEntries(memberId, said)
  const events = entries.map((entry): CalendarEvent => {
    const { sequence = 0, changedAt = 0 } = numbers.entries.get(entry.uid) ?? {}
    return { ...entry, sequence, changedAt, alarm, cancelled: false }
  })
  const gone = numbers.gone.map(
    ({ uid, sequence, changedAt, startsAt }): CalendarEvent => ({
      uid,
      sequence,
      changedAt,
      from: startsAt,
      to: startsAt,
      ...CANCELLED,
      alarm: null,
      cancelled: true,
    }),
  )
  return writeCalendar(`${evening.name || 'Dinner'}, ${mediumDate(evening.date)}`, [...events, ...(withGone ? gone : [])])
}
