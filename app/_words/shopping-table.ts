import type { Evening } from '#lib/domain/evening.ts'
import type { Line } from '#lib/shopping/line.ts'
import { listText } from './clock.ts'
import type { Names } from './names.ts'
import { aisleText, dishesText, labelText, moneyText, toBuyText, wantedText, whenText, whoText } from './shopping.ts'

export const TABLE_HEAD = [
  'Shop',
  'Aisle',
  'What',
  'To buy',
  'Wanted',
  'When',
  'Who',
  'For',
  'Label',
  'Price',
  'State',
  'Bought by',
] as const

const STATE: Readonly<Record<Line['standing']['kind'], string>> = {
  open: 'to buy',
  have: 'in the house',
  got: 'bought',
  more: 'more is wanted',
}

/** A line as the row of a table. */
export const tableRow = (line: Line, evening: Evening, names: Names): readonly string[] => {
  const { standing } = line
  return [
    line.shop ?? '',
    aisleText(line.aisle),
    line.food,
    toBuyText(line),
    wantedText(line),
    whenText(line.when, evening.date),
    whoText(line, names),
    dishesText(line, names),
    labelText(line),
    line.price === null ? '' : moneyText(line.price),
    STATE[standing.kind],
    standing.kind === 'got' || standing.kind === 'more' ? listText(standing.by.map(names.cookName)) : '',
  ]
}
