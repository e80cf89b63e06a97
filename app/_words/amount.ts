import { unitText } from '#lib/domain/unit-words.ts'
import { type Exact, exact } from '#lib/quantities/exact.ts'
import type { Sensible } from '#lib/quantities/sensible.ts'

const GLYPHS: Readonly<Record<string, string>> = {
  '1/2': '½',
  '1/3': '⅓',
  '2/3': '⅔',
  '1/4': '¼',
  '3/4': '¾',
  '1/8': '⅛',
  '3/8': '⅜',
  '5/8': '⅝',
  '7/8': '⅞',
}

const SCALE = /^(g|kg|mg|ml|cl|dl|l)$/

/** "2½", "3 2/5", "266⅔": an exact number as one writes it; "1.25" for what scales and jugs show, where decimals say it exactly. */
export const numberText = (n: Exact | string, unit = ''): string => {
  const value = typeof n === 'string' ? exact(n) : n
  const decimal = value.valueOf()
  if (SCALE.test(unit) && exact(decimal.toFixed(3)).equals(value)) return String(Number(decimal.toFixed(3)))
  const whole = value.floor()
  const part = value.sub(whole).toFraction()
  if (part === '0') return whole.toFraction()
  const glyph = GLYPHS[part]
  const ahead = whole.equals(0) ? '' : whole.toFraction()
  return glyph ? `${ahead}${glyph}` : `${ahead}${ahead ? ' ' : ''}${part}`
}

/** "400 g tin" is counted: "2 × 400 g tin". */
const isPack = (unit: string): boolean => /^\d/.test(unit)

const withUnit = (number: string, unit: string): string =>
  unit === '' ? number : isPack(unit) ? `${number} × ${unit}` : `${number} ${unit}`

/** "2 to 3 US cup", "½", "2 × 400 g tin"; what is read back as the same amount. */
export const amountText = (amount: { readonly n: string; readonly upTo?: string | undefined; readonly unit: string }): string => {
  const range = amount.upTo === undefined ? '' : ` to ${numberText(amount.upTo, amount.unit)}`
  return withUnit(`${numberText(amount.n, amount.unit)}${range}`, amount.unit)
}

/** An amount rounded to what one can measure, in its own unit or, where that is no measure, in `unit`. */
export const sensibleText = (least: Sensible, most: Sensible | null, unit: string): string => {
  const of = (each: Sensible) => (each.unit ? unitText(each.unit) : unit)
  if (most === null) return withUnit(numberText(least.value, of(least)), of(least))
  if (of(least) === of(most))
    return withUnit(`${numberText(least.value, of(least))} to ${numberText(most.value, of(most))}`, of(most))
  return `${withUnit(numberText(least.value, of(least)), of(least))} to ${withUnit(numberText(most.value, of(most)), of(most))}`
}

/** "20 % more", "2 % less"; empty below half a per cent. */
export const shareText = (by: number): string => {
  const percent = Math.round(Math.abs(by) * 100)
  return percent === 0 ? '' : `${percent} % ${by > 0 ? 'more' : 'less'}`
}
