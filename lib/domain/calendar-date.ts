/** A calendar date as a number: days from 1970-01-01, in the Gregorian calendar also before it was there. */
export type DayNumber = number

const DATE = /^(\d{4})-(\d{2})-(\d{2})$/
/** Days of an era of 400 years, after which the calendar repeats, and from 0000-03-01 to 1970-01-01. */
const ERA = 146_097
const TO_1970 = 719_468

/**
 * Years are counted from March, so that the odd day comes last: H. Hinnant, "chrono-Compatible Low-Level Date Algorithms".
 * Month from 1; a day beyond its month runs on into the next.
 */
export const dayNumberOf = (year: number, month: number, day: number): DayNumber => {
  const from = month > 2 ? year : year - 1
  const era = Math.floor(from / 400)
  const ofEra = from - era * 400
  const ofYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + day - 1
  return era * ERA + ofEra * 365 + Math.floor(ofEra / 4) - Math.floor(ofEra / 100) + ofYear - TO_1970
}

/** yyyy-mm-dd, of the years 0000 to 9999. */
export const dateOf = (number: DayNumber): string => {
  const at = number + TO_1970
  const era = Math.floor(at / ERA)
  const ofEra = at - era * ERA
  const yearOfEra = Math.floor(
    (ofEra - Math.floor(ofEra / 1460) + Math.floor(ofEra / 36_524) - Math.floor(ofEra / (ERA - 1))) / 365,
  )
  const ofYear = ofEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100))
  const fromMarch = Math.floor((5 * ofYear + 2) / 153)
  const day = ofYear - Math.floor((153 * fromMarch + 2) / 5) + 1
  const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9
  return `${padded(era * 400 + yearOfEra + (month > 2 ? 0 : 1), 4)}-${padded(month, 2)}-${padded(day, 2)}`
}

/** The number of a date yyyy-mm-dd; null where there is no such day. */
export const readDate = (date: string): DayNumber | null => {
  const [, year, month, day] = DATE.exec(date) ?? []
  if (year === undefined) return null
  const number = dayNumberOf(Number(year), Number(month), Number(day))
  return dateOf(number) === date ? number : null
}

/** As `readDate`. Throws where there is no such day: check first. */
export const dayNumber = (date: string): DayNumber => {
  const number = readDate(date)
  if (number === null) throw new RangeError(`no date: ${date}`)
  return number
}

export const padded = (number: number, digits: number): string => String(number).padStart(digits, '0')
