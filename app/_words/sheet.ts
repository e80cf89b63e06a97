import type { Evening } from '#lib/domain/evening.ts'
import type { Task } from '#lib/night/board.ts'
import type { SheetLine } from '#lib/night/sheet.ts'
import { donenessOf } from '#lib/safety/doneness.ts'
import { clockText, dayName, dayOf, listText, sentence } from './clock.ts'
import { minutesText } from './duration.ts'
import type { Names } from './names.ts'
import { guardHead } from './night-alarm.ts'
import { verbOf } from './night-verb.ts'
import { placeText } from './night-where.ts'
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
  if (task.role === 'carry' && what === 'begin') return `Leave: ${small(line)}`
  return what === 'look' ? `See whether it is done: ${small(line)}` : line
}

/** How hot it may be: what the oven is set to stands in a line of its own. */
const asWindow = (task: Task): Task => ({ ...task, oven: task.oven && { ...task.oven, setC: null } })

/** "12 min, until 17:42."; "Leave it until 18:12."; on another day with its name. */
const timeText = ({ task, what }: Do, evening: Evening): string => {
  const day = dayOf(evening, task.end)
  const end = `${day === dayOf(evening, task.start) ? '' : `${dayName(evening.date, day)} `}${clockText(task.end, evening.zone)}`
  if (what === 'look' || task.touch?.what === 'out') return ''
  if (task.role === 'carry') return `On the way ${minutesText((task.end - task.start) / 60_000)}, there by ${end}.`
  if (task.touch?.what === 'in') return `Then leave it until ${end}.`
  if (task.touch !== null) return `It stays until ${end}.`
  if (task.care === 'leave') return `Leave it until ${end}.`
  return `${minutesText((task.end - task.start) / 60_000)}, until ${end}.`
}

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
  const isEnd = what === 'look' || task.touch?.what === 'out'
  const isBegin = task.touch === null || task.touch.what === 'in'
  const rest = isBegin && !isEnd ? verbOf(task, names).rest : null
  return [
    ...(rest === null ? [] : [rest]),
    ...(task.guard ? [`${guardHead(task.guard.for)}.`] : []),
    ...(task.dish === null ? [] : [`For ${names.dishName(task.dish)}.`]),
    task.role === 'carry' ? '' : placeText(asWindow(task), cook, evening.host, names),
    timeText(line, evening),
    ...(task.care === 'eye' && what === 'begin' ? ['Keep an eye on it.'] : []),
    // What it is to be like stands where it is put on and where it is taken off, so that both know.
    ...(isEnd || isBegin ? [signText(task) ?? ''] : []),
    ...nextText(line.next, names, evening.zone),
  ].filter(Boolean)
}

/** How warm it is to be inside, where it is taken from the heat; nothing anywhere else. */
export const coreNotes = ({ task, what }: Do, evening: Evening): readonly string[] => {
  const isEnd = what === 'look' || task.touch?.what === 'out' || (task.touch === null && task.care !== 'leave')
  const found = isEnd ? donenessOf(evening, task.step) : null
  return found ? [donenessText(found)] : []
}

const ovenName = (oven: string, { host }: Evening, names: Names): string => {
  const kitchen = names.kit(oven)?.kitchen.id ?? host
  return `${names.kitName(oven)}${kitchen === host ? '' : ` in ${names.kitchenName(kitchen)}`}`
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
      return { head: TURNS[line.turn](ovenName(line.oven, evening, names), line.toC), notes: [] }
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
