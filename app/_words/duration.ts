import { durationOf, secondsOf } from '#lib/domain/duration.ts'

const HALF = '½'

const plain = (minutes: number): string => {
  const whole = Math.floor(minutes)
  return minutes - whole >= 0.25 ? `${whole || ''}${HALF}` : String(whole)
}

/** "25 min", "1 h 30", "3 h", "2 days". Half minutes are said, shorter ones are rounded up to them. */
export const minutesText = (minutes: number): string => {
  const half = Math.ceil(minutes * 2) / 2
  if (half < 90) return `${plain(half)} min`
  const whole = Math.ceil(half)
  if (whole >= 2880 && whole % 1440 === 0) return `${whole / 1440} days`
  const hours = Math.floor(whole / 60)
  const rest = whole % 60
  return rest === 0 ? `${hours} h` : `${hours} h ${String(rest).padStart(2, '0')}`
}

/** As `minutesText`, of an ISO 8601 duration. */
export const durationText = (duration: string): string => minutesText(secondsOf(duration) / 60)

/** "55 to 70 min": the unit once where both ends share it. */
export const spanText = (least: string, most: string): string => {
  const [from, to] = [durationText(least), durationText(most)]
  return from.endsWith(' min') && to.endsWith(' min') ? `${from.slice(0, -4)} to ${to}` : `${from} to ${to}`
}

const LONGEST_SECONDS = 10 * 86_400
const WRITTEN =
  /^(?:(\d{1,2}(?:[.,]5)?)\s*(?:d|days?))?\s*(?:(\d{1,3}(?:[.,]\d{1,2})?)\s*(?:h|hr|hrs|hours?))?\s*(?:(\d{1,4}(?:[.,]5)?|½)\s*(½)?\s*(?:m|min|mins|minutes?)?)?$/i

/** Reads minutes as people write them: "25", "25 min", "1 h 30", "1:30", "1.5 h", "2 days". Null when it is none of these. */
export const readDuration = (text: string): string | null => {
  const trimmed = text.trim()
  const colon = /^(\d{1,3}):([0-5]\d)$/.exec(trimmed)
  if (colon) return durationOf(Number(colon[1]) * 3600 + Number(colon[2]) * 60)
  const found = WRITTEN.exec(trimmed)
  if (!found || trimmed === '') return null
  const number = (part: string | undefined) => (part === HALF ? 0.5 : Number((part ?? '0').replace(',', '.')))
  const minutes = number(found[3]) + (found[4] ? 0.5 : 0)
  const seconds = Math.round(number(found[1]) * 86_400 + number(found[2]) * 3600 + minutes * 60)
  return seconds <= LONGEST_SECONDS ? durationOf(seconds) : null
}

const DASH = /\s*(?:–|—|-|to|…)\s*/i

/** Reads "55 to 70", "55-70 min", "1 h to 1 h 30"; one figure alone is both ends. */
export const readSpan = (text: string): readonly [least: string, most: string] | null => {
  const parts = text.trim().split(DASH)
  if (parts.length > 2) return null
  const [first = '', second = first] = parts
  const unit =
    /[a-z]/i.exec(second) && !/[a-z]/i.exec(first) && /h|d/i.test(second) && !/m/i.test(second)
      ? second.replace(/[\d\s.,½]/g, '')
      : ''
  const [least, most] = [readDuration(unit ? `${first} ${unit}` : first), readDuration(second)]
  return least !== null && most !== null && secondsOf(least) <= secondsOf(most) ? [least, most] : null
}
