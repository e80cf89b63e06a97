import type { At } from '#lib/domain/atoms.ts'
import type { Busy, Presence } from '#lib/domain/kitchen.ts'
import type { PresenceFault } from '#lib/domain/presence.ts'
import { DAYS, dayWords, readDay } from './day.ts'
import { readClock } from './read-clock.ts'

/** When hours end: "22:00", or "02:00 on Sunday" when that is another day than they begin on. */
export const untilText = (date: string, { from, to }: Pick<Presence, 'from' | 'to'>): string =>
  to.day === from.day ? to.time : `${to.time} on ${dayWords(date, to.day)}`

/** "Friday 17:00 to 22:00". */
export const hoursText = (date: string, hours: Pick<Presence, 'from' | 'to'>): string =>
  `${dayWords(date, hours.from.day)} ${hours.from.time} to ${untilText(date, hours)}`

/** "not 19:00 to 19:30 (bedtime)". */
export const busyText = (date: string, busy: Busy): string =>
  `not ${busy.from.day === 0 && busy.to.day === 0 ? `${busy.from.time} to ${busy.to.time}` : hoursText(date, busy)}${busy.name ? ` (${busy.name.toLowerCase()})` : ''}`

const LAST_DAY = Math.max(...DAYS)
/** "To 01:00" after an evening's work is the night that follows. */
const NIGHT_ENDS = '06:00'
const AFTERNOON = '12:00'

/**
 * Reads when hours end that begin at `from`: "22:00", "01:00" (that night), "1 am next day", "Sunday 11:00". Null when it
 * is no time, or on no day of the plan.
 */
export const readUntil = (text: string, date: string, from: At): At | null => {
  const said = text.trim().replace(/\s+/g, ' ')
  const alone = readClock(said)
  if (alone !== null) {
    const isNight = alone <= NIGHT_ENDS && from.time >= AFTERNOON && alone < from.time
    return isNight && from.day < LAST_DAY ? { day: from.day + 1, time: alone } : { day: from.day, time: alone }
  }
  const words = said.split(' ')
  for (let cut = 1; cut < words.length; cut += 1) {
    const [head, tail] = [words.slice(0, cut).join(' '), words.slice(cut).join(' ')]
    const timeFirst = readAt(head, tail, date, from)
    if (timeFirst) return timeFirst
    const dayFirst = readAt(tail, head, date, from)
    if (dayFirst) return dayFirst
  }
  return null
}

const readAt = (clock: string, day: string, date: string, from: At): At | null => {
  const time = readClock(clock)
  if (time === null) return null
  const said = day.toLowerCase().replace(/^on /, '')
  if (/^(?:the )?(?:next day|day after)$/.test(said)) return from.day < LAST_DAY ? { day: from.day + 1, time } : null
  const found = readDay(said, date, from.day)
  return found === null ? null : { day: found, time }
}

/** What is wrong with a cook's hours, and what to do about it. */
export const presenceFaultText = (
  fault: PresenceFault,
  presence: readonly Pick<Presence, 'from' | 'to'>[],
  date: string,
): string => {
  switch (fault.kind) {
    case 'backwards':
      return 'These hours would end before they begin. Write a later end, such as 22:00, or 01:00 next day.'
    case 'overlap': {
      const other = presence[fault.other]
      return `They would overlap the hours on ${other ? hoursText(date, other) : 'another line'}. Nobody is in two places: change those first, or choose other hours.`
    }
  }
}
