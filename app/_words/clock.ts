import type { At } from '#lib/domain/atoms.ts'
import type { EveningClock } from '#lib/domain/time.ts'

const LOCALE = 'en-GB'

const formatters = new Map<string, Intl.DateTimeFormat>()
const formatter = (key: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat => {
  const found = formatters.get(key)
  if (found) return found
  const made = new Intl.DateTimeFormat(LOCALE, options)
  formatters.set(key, made)
  return made
}

/** A screen says the same few hundred moments again and again, and each takes the browser 5 to 20 µs to work out. */
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

/** "19:22" in the evening's zone. */
export const clockText = rememberedBy((instant, zone) =>
  formatter(`clock ${zone}`, { hour: '2-digit', minute: '2-digit', hourCycle: 'h23', timeZone: zone }).format(new Date(instant)),
)

/** yyyy-mm-dd of an instant in a zone. */
export const dateText = rememberedBy((instant, zone) => {
  const parts = formatter(`date ${zone}`, { year: 'numeric', month: '2-digit', day: '2-digit', timeZone: zone }).formatToParts(
    new Date(instant),
  )
  const part = (type: string) => parts.find((piece) => piece.type === type)?.value ?? ''
  return `${part('year')}-${part('month')}-${part('day')}`
})

const noon = (date: string, day = 0): number => Date.parse(`${date}T12:00:00Z`) + day * 86_400_000

/** Days from the evening's date to the date an instant falls on: −1 is the day before. */
export const dayOf = (clock: EveningClock, instant: string | number): number =>
  Math.round((noon(dateText(instant, clock.zone)) - noon(clock.date)) / 86_400_000)

/** "Saturday", by the day counted from the evening's date. */
export const dayName = (date: string, day: number): string =>
  formatter('weekday', { weekday: 'long', timeZone: 'UTC' }).format(noon(date, day))

/** "Sat". */
export const shortDay = (date: string, day: number): string => dayName(date, day).slice(0, 3)

/** "Saturday 5 December". */
export const longDate = (date: string): string =>
  formatter('long', { weekday: 'long', day: 'numeric', month: 'long', timeZone: 'UTC' }).format(noon(date)).replace(',', '')

/** "Sat 5 December". */
export const mediumDate = (date: string): string =>
  formatter('medium', { weekday: 'short', day: 'numeric', month: 'long', timeZone: 'UTC' }).format(noon(date)).replace(',', '')

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
