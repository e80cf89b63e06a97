import type { Evening } from '#lib/domain/evening.ts'
import { headsOf } from '#lib/domain/portions.ts'
import type { SheetBlock } from '#lib/night/sheet.ts'
import type { CardAllergens } from '#lib/table/card-allergens.ts'
import type { TableNeeds } from '#server/guests/needs.ts'
import { clockText, countOf, dayName, listText, longDate, sentence } from './clock.ts'
import type { Names } from './names.ts'
import { needText } from './need.ts'
import { traitWords } from './trait.ts'

/** What can be put on paper. */
export const SHEETS = ['menu', 'cooks', 'homes', 'wall', 'shopping'] as const
export type SheetKind = (typeof SHEETS)[number]

export const isSheet = (text: string): text is SheetKind => SHEETS.some((kind) => kind === text)

export const sheetNames: Readonly<Record<SheetKind, string>> = {
  menu: 'Menu card',
  cooks: 'A sheet for each cook',
  homes: 'A sheet for each home',
  wall: 'The whole order for the wall',
  shopping: 'Shopping list',
}

export const sheetAbout: Readonly<Record<SheetKind, string>> = {
  menu: 'What there is to eat and drink, for the table. With allergens if you want them there.',
  cooks:
    'What one cook does, when, where, how hot, until what sign, and who goes on with it: the evening works with the phone off.',
  homes: 'What is made at home and packed, when to leave, and where it goes on arrival.',
  wall: 'Everybody’s steps in order of time on one page, to hang up in the kitchen.',
  shopping: 'What to buy, with a box to tick.',
}

export type PaperSize = 'a4' | 'letter'
export const paperWords: Readonly<Record<PaperSize, string>> = { a4: 'A4', letter: 'US Letter' }

/** The paper that the evening's rules suggest. */
export const usualPaper = ({ rules }: Pick<Evening, 'rules'>): PaperSize => (rules === 'us' ? 'letter' : 'a4')

/** "for 8", "for 8, and three children before". */
export const peopleText = (evening: Pick<Evening, 'covers' | 'courses'>): string => {
  const children = headsOf(evening) - evening.covers
  return `for ${evening.covers}${children > 0 ? `, and ${countOf(children, 'child', 'children')} before` : ''}`
}

export interface BlockWords {
  readonly title: string
  readonly when: string
}

/** The head of a block of a cook's sheet: "Soup", "to the table 19:45". */
export const blockWords = (block: SheetBlock, evening: Evening, names: Names): BlockWords => {
  switch (block.kind) {
    case 'day':
      return { title: dayName(evening.date, block.day), when: '' }
    case 'before':
      return { title: 'Before the guests come', when: `from ${clockText(block.until, evening.zone)}` }
    case 'course':
      return { title: names.courseName(block.course), when: `to the table ${clockText(block.toTable, evening.zone)}` }
    case 'after':
      return { title: 'Then', when: '' }
  }
}

/** "Contains gluten, milk." and, where that may not be all, whom to ask. Nobody is told that a dish is free of anything. */
export const cardText = ({ has, isAll }: CardAllergens): string => {
  const known = has.length > 0 ? `Contains ${listText(has.map((trait) => traitWords[trait]))}.` : ''
  if (!isAll) return known === '' ? 'Please ask your hosts.' : `${known} There may be more: please ask your hosts.`
  return known === '' ? 'None of the listed allergens is noted.' : known
}

/** Below a menu card that names allergens. */
export const CARD_CARE =
  'By what the cooks wrote down and the labels they read, in home kitchens where everything is made side by side. If it matters to you, please ask.'

/** Who the guests are asked by, when. */
export const whenText = (evening: Evening): string =>
  sentence(`${longDate(evening.date)}, guests from ${evening.guestsFrom.time}, sit down at ${evening.sitDown.time}`)

/** At the foot of every page: how new it is. */
export const printedText = (atMs: number, zone: string, isOld: boolean): string =>
  `Printed ${new Intl.DateTimeFormat('en-GB', { weekday: 'short', day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit', hourCycle: 'h23', timeZone: zone }).format(atMs).replace(',', '')}${
    isOld ? ', from before the last change of the plan' : ''
  }. The order on the screens may be newer.`

/** What guests must not have, in sentences without names. */
export const needLines = ({ scope, needs, unknown }: Pick<TableNeeds, 'scope' | 'needs' | 'unknown'>): readonly string[] => [
  ...(scope === 'none'
    ? ['What guests must not have is not told to who comes from another kitchen: ask the hosts before you serve.']
    : []),
  ...needs.map((need) => `${sentence(countOf(need.guests, 'guest'))}: ${needText(need)}.`),
  ...(unknown > 0
    ? [`${sentence(countOf(unknown, 'guest has', 'guests have'))} not told what they eat: for them nothing counts as safe.`]
    : []),
]
