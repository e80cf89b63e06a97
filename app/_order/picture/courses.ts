import { clockText } from '#app/_words/clock.ts'
import type { Names } from '#app/_words/names.ts'
import { bySiblingOrder, type Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import type { Columns, Shape } from './columns.ts'
import type { Frame } from './frame.ts'
import { MINUTE } from './frame.ts'
import type { Demand, Scale } from './scale.ts'
import { fitText, textWidth } from './text.ts'

export interface Plate {
  readonly x: number
  readonly r: number
}

export interface CourseRow {
  readonly id: string
  readonly y: number
  readonly clock: string
  /** One or two lines of its name. */
  readonly name: readonly string[]
  /** Which of the four dish colours fills its plates. */
  readonly colour: 1 | 2 | 3 | 4
  readonly plates: readonly Plate[]
  readonly cookPlates: readonly Plate[]
  /** When its plates come off, and how long guests then wait. Null after the last. */
  readonly off: { readonly y: number; readonly minutes: number } | null
}

/** Room for the words about a wait, above the plates of the next course. */
const WAIT = { wide: 36, phone: 42 } as const

/** What the course lines ask of the scale: room for a name, and for the words about the wait. */
export const courseDemands = (order: RunningOrder, frame: Frame, shape: Shape): readonly Demand[] => {
  const sorted = sortedCourses(order)
  const name = shape === 'wide' ? 46 : 66
  const wait = WAIT[shape]
  const first = sorted[0]
  const demands: Demand[] = first
    ? [{ from: frame.guestsFrom, to: Date.parse(first.toTable), px: shape === 'wide' ? 58 : 66 }]
    : []
  for (const [index, course] of sorted.entries()) {
    const [at, off] = [Date.parse(course.toTable), Date.parse(course.platesOff)]
    const next = sorted[index + 1]
    if (!next) {
      demands.push({ from: at, to: frame.to, px: name + 24 })
      continue
    }
    const moment = Date.parse(next.toTable)
    if (off > at && off + MINUTE <= moment) demands.push({ from: at, to: off, px: name }, { from: off, to: moment, px: wait })
    else demands.push({ from: at, to: moment, px: name + wait })
  }
  return demands
}

const sortedCourses = (order: RunningOrder) => [...order.courses].sort((a, b) => Date.parse(a.toTable) - Date.parse(b.toTable))

/** The course lines with their plates: one for each guest in the table's column, one for each cook in theirs. */
export const courseRows = (
  evening: Evening,
  order: RunningOrder,
  names: Names,
  columns: Columns,
  scale: Scale,
  shape: Shape,
): readonly CourseRow[] => {
  const siblings = evening.courses.toSorted(bySiblingOrder).map((course) => course.id)
  const eating = evening.cooks.filter((cook) => cook.eats)
  const guests = Math.max(1, evening.covers - eating.length)
  const sorted = sortedCourses(order)
  return sorted.map((course, index) => {
    const next = sorted[index + 1]
    const off = Date.parse(course.platesOff)
    const minutes = next ? Math.max(0, (Date.parse(next.toTable) - off) / MINUTE) : 0
    const colour = (((siblings.indexOf(course.course) % 4) + 4) % 4) + 1
    return {
      id: course.course,
      y: scale.y(Date.parse(course.toTable)),
      clock: clockText(course.toTable, evening.zone),
      name: nameLines(names.courseName(course.course), columns.table.width - 16, shape),
      colour: colour === 1 ? 1 : colour === 2 ? 2 : colour === 3 ? 3 : 4,
      plates: platesAcross(columns.table.x, columns.table.width, guests, shape),
      cookPlates: columns.cooks.flatMap((column) =>
        eating
          .filter((cook) => column.cooks.includes(cook.id))
          .map((_, place) => ({ x: column.x + column.width - 20 - place * 26, r: 10.5 })),
      ),
      off:
        next && off <= Date.parse(next.toTable)
          ? { y: Math.min(scale.y(off), scale.y(Date.parse(next.toTable)) - WAIT[shape] + 2), minutes }
          : null,
    }
  })
}

/** Plates of one row: as large as there is room for, at most 15; beyond 16 guests a row stands for more than it shows. */
export const platesAcross = (x: number, width: number, guests: number, shape: Shape): readonly Plate[] => {
  const most = shape === 'wide' ? 16 : 6
  const shown = Math.min(guests, most)
  const step = Math.min(shape === 'wide' ? 46 : 31, (width - 18) / shown)
  const r = Math.max(3.5, Math.min(shape === 'wide' ? 15 : 12.5, step / 2 - 2))
  return Array.from({ length: shown }, (_, index) => ({ x: x + width / 2 + (index - (shown - 1) / 2) * step, r }))
}

const nameLines = (name: string, width: number, shape: Shape): readonly string[] => {
  const size = shape === 'wide' ? 18 : 15.5
  if (textWidth(name, size) <= width) return [name]
  const words = name.split(' ')
  const first: string[] = []
  while (words.length > 0 && textWidth([...first, words[0]].join(' '), size) <= width) first.push(words.shift() ?? '')
  return first.length === 0 || words.length === 0
    ? [fitText(name, size, width)]
    : [first.join(' '), fitText(words.join(' '), size, width)]
}
