import type { At } from '#lib/domain/atoms.ts'
import { dateAt, type EveningClock } from '#lib/domain/time.ts'
import { offsetAt } from '#lib/domain/zone.ts'

const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday']
const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
]

/** A screen says the same few hundred moments again and again, and each takes the browser some µs to work out. */
const rememberedBy = (say: (instant: string | number, zone: string) => string) => {
  const zones = new Map<string, Map<string | number, string>>()
  return (instant: string | number, zone: string): string => {
    const known = zones.get(zone) ?? new Map<string | number, string>()
    zones.set(zone, known)
    const found = known.get(instant)
    if (found !== undefined) return found
    const said = say(instant, zone)
    if (known.size >= MOST_REMEMBERED) known.clear()
    known.set(instant, said)
    return said
  }
}
const MOST_REMEMBERED = 5_000

const msOf = (instant: string | number): number => new Date(instant).getTime()

/** "19:22" in the evening's zone. */
export const clockText = rememberedBy((instant, zone) => {
  const at = msOf(instant)
  return new Date(at + offsetAt(zone, at)).toISOString().slice(11, 16)
})

/** yyyy-mm-dd of an instant in a zone. */
export const dateText = rememberedBy((instant, zone) => dateAt(zone, msOf(instant)))

const noon = (date: string, day = 0): number => Date.parse(`${date}T12:00:00Z`) + day * 86_400_000

/** Days from the evening's date to the date an instant falls on: −1 is the day before. */
export const dayOf = (clock: EveningClock, instant: string | number): number =>
  Math.round((noon(dateText(instant, clock.zone)) - noon(clock.date)) / 86_400_000)

/** "Saturday", by the day counted from the evening's date. */
export const dayName = (date: string, day: number): string => WEEKDAYS[new Date(noon(date, day)).getUTCDay()] ?? ''

/** "Sat". */
export const shortDay = (date: string, day: number): string => dayName(date, day).slice(0, 3)

/** "5 December" */
const dayAndMonth = (date: string): string => {
  const at = new Date(noon(date))
  return `${at.getUTCDate()} ${MONTHS[at.getUTCMonth()]}`
}

/** "Saturday 5 December". */
export const longDate = (date: string): string => `${dayName(date, 0)} ${dayAndMonth(date)}`

/** "Sat 5 December". */
export const mediumDate = (date: string): string => `${shortDay(date, 0)} ${dayAndMonth(date)}`

/** "19:30" on the evening's own day, "Thursday 17:00" on another. */
export const atText = (date: string, at: At): string => (at.day === 0 ? at.time : `${dayName(date, at.day)} ${at.time}`)

/** "Today", "Tomorrow", "In two days", "Yesterday": how far off a date is. */
export const distanceText = (days: number): string => {
  if (days === 0) return 'Today'
  if (days === 1) return 'Tomorrow'
  if (days === -1) return 'Yesterday'
  const count = Math.abs(days)
  const words = count < 14 ? `${countText(count)} days` : `${countText(Math.round(count / 7))} weeks`
  return days > 0 ? `In ${words}` : `${words[0]?.toUpperCase()}${words.slice(1)} ago`
}

const SMALL = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve']

/** "three", "14": small numbers as words. */
export const countText = (count: number): string => SMALL[count] ?? String(count)

/** "one dish", "eleven dishes". */
export const countOf = (count: number, one: string, many = `${one}s`): string => `${countText(count)} ${count === 1 ? one : many}`

/** "Kim", "Kim and Lou", "Kim, Lou and Noor". */
export const listText = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`

/** The first letter as a capital. */
export const sentence = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`
