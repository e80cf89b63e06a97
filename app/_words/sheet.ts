import type { Evening } from '#lib/domain/evening.ts'
import type { Task } from '#lib/night/board.ts'
import type { SheetLine } from '#lib/night/sheet.ts'
import { donenessOf } from '#lib/safety/doneness.ts'
import { clockText, listText, sentence } from './clock.ts'
import { minutesText } from './duration.ts'
import type { Names } from './names.ts'
import { guardHead } from './night-alarm.ts'
import { verbOf } from './night-verb.ts'
import { whereText } from './night-where.ts'
import { donenessText } from './safety.ts'

/** A line of a cook's sheet in words: what to do, then all that one has to know to do it without asking anybody. */
export interface SheetWords {
  readonly head: string
  readonly notes: readonly string[]
}

type Do = Extract<SheetLine, { kind: 'do' }>

const small = (text: string): string => `${text.slice(0, 1).toLowerCase()}${text.slice(1)}`

/** "Turn the potato cake", "Take the potatoes out", "See whether they are done: roast potatoes". */
export const doHead = ({ task, what }: Pick<Do, 'task' | 'what'>, names: Names): string => {
  const { line } = verbOf(task, names)
  return what === 'look' ? `See whether it is done: ${small(line)}` : line
}

/** What stands there to end, not to begin: nothing of how long it takes. */
const asEnd = (task: Task): Task => ({ ...task, touch: { what: 'out', at: task.end, does: null } })

/** "Until the juices run clear, 74° inside." */
const signText = ({ sign, coreC }: Pick<Task, 'sign' | 'coreC'>): string | null => {
  const core = coreC === null ? '' : `${Math.round(coreC * 10) / 10}° inside`
  const said = [
    sign?.trim()
      ? `until ${small(
          sign
            .trim()
            .replace(/^until /i, '')
            .replace(/\.$/, ''),
        )}`
      : '',
    core,
  ].filter(Boolean)
  return said.length === 0 ? null : `${sentence(said.join(', '))}.`
}

/** "Then Lou: turn the potatoes, 19:38." */
const nextText = (next: Do['next'], names: Names, zone: string): readonly string[] =>
  next.map(
    ({ cooks, step, at }) =>
      `Then ${listText(cooks.map(names.cookName))}: ${small(names.stepName(step))}, ${clockText(at, zone)}.`,
  )

/** Everything that there is to know of something to do, without what food safety says of it. */
export const doNotes = (line: Do, cook: string, evening: Evening, names: Names): readonly string[] => {
  const { task, what } = line
  const { rest } = verbOf(task, names)
  const dish = task.dish === null ? null : names.dishName(task.dish)
  const isEnd = what === 'look' || task.touch?.what === 'out'
  const isIn = task.touch?.what === 'in'
  return [
    ...(rest === null ? [] : [rest]),
    ...(task.guard ? [`${guardHead(task.guard.for)}.`] : []),
    [
      ...(dish === null ? [] : [`For ${dish}.`]),
      whereText(what === 'look' ? asEnd(task) : task, cook, evening.host, names, evening.zone),
      ...(task.care === 'eye' && what === 'begin' ? ['Keep an eye on it.'] : []),
    ]
      .filter(Boolean)
      .join(' '),
    // What it is to be like stands where it is taken off, and where it is put on, so that both know.
    ...(isEnd || isIn || task.touch === null ? [signText(task)].filter((text) => text !== null) : []),
    ...nextText(line.next, names, evening.zone),
  ].filter(Boolean)
}

/** How warm it is to be inside, where it is taken from the heat; nothing anywhere else. */
export const coreNotes = ({ task, what }: Do, evening: Evening): readonly string[] => {
  const isEnd = what === 'look' || task.touch?.what === 'out' || (task.touch === null && task.care !== 'leave')
  const found = isEnd ? donenessOf(evening, task.step) : null
  return found ? [donenessText(found)] : []
}

const TURNS: Readonly<Record<Extract<SheetLine, { kind: 'oven' }>['turn'], (oven: string, c: number) => string>> = {
  up: (oven, c) => `Set ${oven} to ${c}°`,
  down: (oven, c) => `Turn ${oven} down to ${c}°`,
  off: (oven) => `Turn ${oven} off`,
}

/** A line of a cook's sheet. */
export const sheetWords = (line: SheetLine, cook: string, evening: Evening, names: Names): SheetWords => {
  switch (line.kind) {
    case 'do':
      return { head: doHead(line, names), notes: [...doNotes(line, cook, evening, names), ...coreNotes(line, evening)] }
    case 'oven':
      return { head: TURNS[line.turn](names.kitName(line.oven), line.toC), notes: [] }
    case 'sit':
      return {
        head: `Sit until ${clockText(line.to, evening.zone)}`,
        notes: [`${minutesText((line.to - line.at) / 60_000)} at the table.`],
      }
    case 'pour':
      return { head: `Pour for ${names.courseName(line.course)}`, notes: [] }
    case 'clear':
      return { head: `Plates off: ${names.courseName(line.course)}`, notes: [] }
  }
}
