import { FAN_LOWER_C, fahrenheitOf, OVEN_MARKS, type OvenMark } from '#lib/domain/oven-marks.ts'
import type { Source } from '#lib/domain/source.ts'

export const MARK_SOURCE: Source = {
  publisher: 'cookery tables',
  title: 'gas marks; several agree, no official standard',
  year: null,
  standing: 'quoted',
}
export const FAN_SOURCE: Source = { publisher: 'NSW Health', title: 'Conversion chart', year: null, standing: 'read' }

/** The mark nearest to a temperature without fan; null more than 15 °C away from every mark. */
export const markNear = (celsius: number): OvenMark | null => {
  const near = OVEN_MARKS.reduce<OvenMark | null>(
    (best, row) => (best && Math.abs(best.printedC - celsius) <= Math.abs(row.printedC - celsius) ? best : row),
    null,
  )
  return near && Math.abs(near.printedC - celsius) <= 15 ? near : null
}

/** One oven heat as dials have it: without fan, with fan, by mark, and in °F to the nearest 5. */
export interface Dial {
  readonly still: number
  readonly fan: number
  readonly mark: string | null
  readonly fahrenheit: number
}

/** How a dial is set for a temperature without fan. */
export const dialFor = (celsius: number): Dial => ({
  still: celsius,
  fan: celsius - FAN_LOWER_C,
  mark: markNear(celsius)?.mark ?? null,
  fahrenheit: Math.round(fahrenheitOf(celsius) / 5) * 5,
})
