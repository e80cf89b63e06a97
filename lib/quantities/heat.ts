import type { Source } from './source.ts'

/** (F − 32) × 5/9, exactly as floating point can. */
export const celsiusOf = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9
export const fahrenheitOf = (celsius: number): number => (celsius * 9) / 5 + 32

/** One row of the oven dial. `printedC` is what British cookery prints; `exactC` follows from the °F. */
export interface OvenMark {
  readonly mark: string
  readonly fahrenheit: number
  readonly exactC: number
  readonly printedC: number
  readonly word: string
}

/** Marks have no official standard: several tables agree on these. Marks 1 to 9: °F = 250 + 25 × mark. */
export const MARK_SOURCE: Source = {
  publisher: 'cookery tables',
  title: 'gas marks; several agree, no official standard',
  year: null,
  standing: 'quoted',
}

/** A fan oven is set about 20 °C lower. */
export const FAN_SOURCE: Source = { publisher: 'NSW Health', title: 'Conversion chart', year: null, standing: 'read' }
export const FAN_LOWER_C = 20

const mark = (name: string, fahrenheit: number, printedC: number, word: string): OvenMark => ({
  mark: name,
  fahrenheit,
  exactC: celsiusOf(fahrenheit),
  printedC,
  word,
})

export const OVEN_MARKS: readonly OvenMark[] = [
  mark('1/4', 225, 110, 'very cool'),
  mark('1/2', 250, 120, 'very cool'),
  mark('1', 275, 140, 'cool'),
  mark('2', 300, 150, 'cool'),
  mark('3', 325, 170, 'warm'),
  mark('4', 350, 180, 'moderate'),
  mark('5', 375, 190, 'moderately hot'),
  mark('6', 400, 200, 'fairly hot'),
  mark('7', 425, 220, 'hot'),
  mark('8', 450, 230, 'very hot'),
  mark('9', 475, 240, 'very hot'),
]

/** The row of a mark ("4", "1/2"); null when there is no such mark. */
export const ovenMark = (name: string): OvenMark | null => OVEN_MARKS.find((row) => row.mark === name) ?? null

/** The mark nearest to a temperature without fan; null more than 15 °C away from every mark. */
export const markNear = (celsius: number): OvenMark | null => {
  const near = OVEN_MARKS.reduce<OvenMark | null>(
    (best, row) => (best && Math.abs(best.printedC - celsius) <= Math.abs(row.printedC - celsius) ? best : row),
    null,
  )
  return near && Math.abs(near.printedC - celsius) <= 15 ? near : null
}

/** How a dial is set: without fan, with fan, by mark and in °F (nearest 5, as dials go). */
export const dialFor = (celsius: number) => ({
  still: celsius,
  fan: celsius - FAN_LOWER_C,
  mark: markNear(celsius)?.mark ?? null,
  fahrenheit: Math.round(fahrenheitOf(celsius) / 5) * 5,
})
