import { isOpen, nameUnit } from '#lib/domain/unit-words.ts'
import type { BareScale, IngredientLine, MeasuresGuess } from './preview.ts'

const SIGNS: readonly (readonly [MeasuresGuess['measures'], RegExp])[] = [
  ['uk', /\bgas (?:mark )?\d|\b(?:caster sugar|plain flour|self-raising|cornflour|double cream|courgette|aubergine|hob)\b/iu],
  [
    'us',
    /\d{3}\s?°\s?F\b|\bdegrees F\b|\b\d{3}F\b|\b(?:all-purpose flour|heavy cream|sticks? (?:of )?butter|kosher salt|skillet|broiler|confectioners)\b/iu,
  ],
]

/** Whose measures a text seems to be in, by words that only some countries use. Both or neither: no guess. */
export const guessMeasures = (text: string): MeasuresGuess | null => {
  const found = SIGNS.flatMap(([measures, sign]) => {
    const match = sign.exec(text.slice(0, 20_000))
    return match ? [{ measures, because: match[0] }] : []
  })
  return found.length === 1 ? (found[0] ?? null) : null
}

/** What a heat without a scale most likely is: °F where the text writes °F and nothing else. */
export const bareScaleOf = (text: string): BareScale => {
  const start = text.slice(0, 20_000)
  const celsius = /\d\s?[°º˚]?\s?C\b|\bgas (?:mark )?\d|\bcelsius\b/iu.test(start)
  return !celsius && (/\d\s?[°º˚]?\s?F\b|\bfahrenheit\b/iu.test(start) || guessMeasures(start)?.measures === 'us') ? 'F' : 'C'
}

/** Whether an amount is in a word that is another measure elsewhere. */
export const hasOpenMeasure = (lines: readonly IngredientLine[]): boolean =>
  lines.some((line) =>
    [line.amount, line.pack].some((amount) => {
      const named = amount ? nameUnit(amount.unit) : null
      return named !== null && named.owner === null && isOpen(named.word)
    }),
  )
