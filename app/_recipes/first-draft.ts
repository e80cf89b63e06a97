import type { EveningFacts } from '#lib/recipes/evening-facts.ts'
import type { DecimalMark } from '#lib/recipes/preview.ts'
import type { MenuDraft } from './menu-draft.ts'

/** The times of an evening as they were written; read when the evening is made. */
export interface TimesDraft {
  readonly name: string
  readonly date: string
  readonly guestsFrom: string
  readonly sitDown: string
  readonly covers: string
  /** Who cooks as well, with commas between. */
  readonly cooks: string
}

/** Everything that stands on the page of a new evening. */
export interface FirstDraft {
  readonly paste: string
  /** null: as the text itself seems to have it. */
  readonly decimal: DecimalMark | null
  readonly menu: MenuDraft | null
  /** The paste that the menu was read from. */
  readonly readFrom: string
  /** What the paste says of the evening itself: suggested until a person writes another. */
  readonly facts?: EveningFacts | null
  /** Whether a person changed the menu: it is not read again then until they ask for it. */
  readonly isCorrected: boolean
  /** null: half an hour before sit-down, and so on; what was never touched. */
  readonly times: Partial<TimesDraft>
}

export const FIRST_VERSION = 1
export const FIRST_START: FirstDraft = {
  paste: '',
  decimal: null,
  menu: null,
  readFrom: '',
  isCorrected: false,
  times: {},
}

/** Of an older page's draft, the words that a person typed. */
export const rescueFirst = (old: unknown): FirstDraft => {
  const paste: unknown = typeof old === 'object' && old !== null ? Reflect.get(old, 'paste') : null
  return typeof paste === 'string' ? { ...FIRST_START, paste } : FIRST_START
}

const DECIMAL_COMMA = /(?<![\d.,])\d{1,3},\d{1,2}(?![\d,])/u
const DECIMAL_POINT = /(?<![\d.,])\d{1,3}\.\d{1,2}(?![\d.])/u

const countIn = (text: string, number: RegExp): number => text.match(new RegExp(number, 'gu'))?.length ?? 0

/** What a text's numbers seem to have between whole and part: a comma only where more have it than a point ("at 19.30" has one too). */
export const guessDecimal = (text: string): DecimalMark => {
  const start = text.slice(0, 20_000)
  return countIn(start, DECIMAL_COMMA) > countIn(start, DECIMAL_POINT) ? ',' : '.'
}

/** Whether the question of the decimal mark arises at all. */
export const hasDecimals = (text: string): boolean => {
  const start = text.slice(0, 20_000)
  return DECIMAL_COMMA.test(start) || DECIMAL_POINT.test(start)
}
