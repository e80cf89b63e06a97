/** (F − 32) × 5/9. */
export const celsiusOf = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9
export const fahrenheitOf = (celsius: number): number => (celsius * 9) / 5 + 32

/** A fan oven is set about 20 °C lower (NSW Health, Conversion chart). */
export const FAN_LOWER_C = 20

/** One row of the gas dial. `printedC` is what British cookery prints; `exactC` follows from the °F. */
export interface OvenMark {
  readonly mark: string
  readonly fahrenheit: number
  readonly exactC: number
  readonly printedC: number
  readonly word: string
}

const mark = (name: string, fahrenheit: number, printedC: number, word: string): OvenMark => ({
  mark: name,
  fahrenheit,
  exactC: celsiusOf(fahrenheit),
  printedC,
  word,
})

/** Marks have no official standard; several cookery tables agree on these. Marks 1 to 9: °F = 250 + 25 × mark. */
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
