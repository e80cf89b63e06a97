import { unitText } from '#lib/domain/unit-words.ts'
import { type Exact, exact } from '#lib/quantities/exact.ts'
import type { Sensible } from '#lib/quantities/sensible.ts'
import { countPlural } from '#lib/recipes/count-units.ts'

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

/** A piece of a thing is one of it. */
const isPiece = (unit: string): boolean => /^(|pieces?)$/.test(unit)

const withUnit = (number: string, unit: string, isMany: boolean): string => {
  if (isPiece(unit)) return number
  if (isPack(unit)) return `${number} × ${unit}`
  return `${number} ${isMany ? countPlural(unit).replace(/\bcup$/, 'cups') : unit}`
}

/** "2 to 3 US cups", "½", "2 × 400 g tin"; what is read back as the same amount. */
export const amountText = (amount: { readonly n: string; readonly upTo?: string | undefined; readonly unit: string }): string => {
  const range = amount.upTo === undefined ? '' : ` to ${numberText(amount.upTo, amount.unit)}`
  return withUnit(`${numberText(amount.n, amount.unit)}${range}`, amount.unit, exact(amount.upTo ?? amount.n).compare(1) > 0)
}

/** An amount rounded to what one can measure, in its own unit or, where that is no measure, in `unit`. */
export const sensibleText = (least: Sensible, most: Sensible | null, unit: string): string => {
  const of = (each: Sensible) => (each.unit ? unitText(each.unit) : unit)
  const number = (each: Sensible) => numberText(each.value, of(each))
  const alone = (each: Sensible) => withUnit(number(each), of(each), each.value.compare(1) > 0)
  if (most === null) return alone(least)
  return of(least) === of(most)
    ? withUnit(`${number(least)} to ${number(most)}`, of(most), most.value.compare(1) > 0)
    : `${alone(least)} to ${alone(most)}`
}

/** "20 % more", "2 % less"; empty below half a per cent. */
export const shareText = (by: number): string => {
  const percent = Math.round(Math.abs(by) * 100)
  return percent === 0 ? '' : `${percent} % ${by > 0 ? 'more' : 'less'}`
}
