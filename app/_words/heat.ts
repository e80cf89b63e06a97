import { celsiusOf, FAN_LOWER_C, fahrenheitOf, ovenMark } from '#lib/domain/oven-marks.ts'
import { markNear } from '#lib/quantities/heat.ts'

/** The coldest and the hottest that can be written down. */
export const LOWEST_C = -40
export const HIGHEST_C = 500

const shown = (celsius: number): string => String(Math.round(celsius * 10) / 10)

/** "190 to 200°", or "200°" when both ends are the same. */
export const heatText = (lowC: number, highC: number): string =>
  lowC === highC ? `${shown(lowC)}°` : `${shown(lowC)} to ${shown(highC)}°`

const TO = String.raw`\s*(?:–|—|-|to)\s*`
const DEGREE = String.raw`\s*(?:°|degrees?|deg)?\s*`
const SCALE = '(c|f|celsius|fahrenheit)?'
const NUMBER = String.raw`(-?\d{1,3}(?:[.,]\d)?)`
const FAN = String.raw`\(?\s*fan(?:\s+oven)?\s*\)?`
const DEGREES = new RegExp(`^(${FAN})?\\s*${NUMBER}${DEGREE}${SCALE}(?:${TO}${NUMBER}${DEGREE}${SCALE})?\\s*(${FAN})?$`, 'i')
const MARK = String.raw`(¼|½|1/4|1/2|\d)`
const MARKS = new RegExp(`^(?:gas(?:\\s+mark)?|mark)\\s*${MARK}(?:${TO}${MARK})?$`, 'i')

const markC = (name: string): number | null => ovenMark(name.replace('¼', '1/4').replace('½', '1/2'))?.printedC ?? null

const ordered = (low: number, high: number): readonly [lowC: number, highC: number] | null =>
  low >= LOWEST_C && high <= HIGHEST_C && low <= high ? [low, high] : null

/**
 * Reads "190 to 200°", "375 F", "gas 5", "mark 4 to 5", "180 fan": degrees Celsius without fan, the lower first. °F come out
 * in whole °C, marks as cookery prints them. Null when it is none of these.
 */
export const readHeat = (text: string): readonly [lowC: number, highC: number] | null => {
  const trimmed = text.trim().replace(/[º˚]/g, '°')
  const marks = MARKS.exec(trimmed)
  if (marks) {
    const [low, high] = [markC(marks[1] ?? ''), markC(marks[2] ?? marks[1] ?? '')]
    return low === null || high === null ? null : ordered(low, high)
  }
  const found = DEGREES.exec(trimmed)
  if (!found) return null
  const [, fanBefore, from = '', firstScale, to, secondScale, fanAfter] = found
  const scale = (secondScale ?? firstScale ?? 'c').toLowerCase().slice(0, 1)
  if (firstScale && secondScale && firstScale.slice(0, 1).toLowerCase() !== scale) return null
  const fan = fanBefore || fanAfter ? FAN_LOWER_C : 0
  const celsius = (number: string) => {
    const value = Number(number.replace(',', '.'))
    return (scale === 'f' ? Math.round(celsiusOf(value)) : value) + fan
  }
  return ordered(celsius(from), celsius(to ?? from))
}

const span = (low: string, high: string): string => (low === high ? low : `${low} to ${high}`)
const toFive = (value: number): string => String(Math.round(value / 5) * 5)

/** The same heat on other dials: "fan 170 to 180°, gas 5 to 6, 375 to 390 °F". Common practice: a fan oven is set 20° lower. */
export const heatMeans = (lowC: number, highC: number): string => {
  const [lowMark, highMark] = [markNear(lowC), markNear(highC)]
  return [
    `fan ${heatText(lowC - FAN_LOWER_C, highC - FAN_LOWER_C)}`,
    ...(lowMark && highMark ? [`gas ${span(lowMark.mark, highMark.mark)}`] : []),
    `${span(toFive(fahrenheitOf(lowC)), toFive(fahrenheitOf(highC)))} °F`,
  ].join(', ')
}

/** Reads one temperature, "74°" or "165 F", in °C to a tenth; null when it is none. */
export const readDegrees = (text: string): number | null => {
  const found = new RegExp(`^${NUMBER}${DEGREE}${SCALE}$`, 'i').exec(text.trim().replace(/[º˚]/g, '°'))
  if (!found) return null
  const value = Number((found[1] ?? '').replace(',', '.'))
  const celsius = /^f/i.test(found[2] ?? '') ? Math.round(celsiusOf(value) * 10) / 10 : value
  return celsius >= LOWEST_C && celsius <= HIGHEST_C ? celsius : null
}
