import type { Kit } from '#lib/domain/kitchen.ts'
import type { Task } from '#lib/night/board.ts'
import { sentence } from './clock.ts'
import type { Names } from './names.ts'
import { type Moment, momentShort, momentTag, stepForms, thingOf } from './short-step.ts'

/** What the board says of a step: one line that is seen from across the kitchen, and the step's whole words, if there are more. */
export interface Verb {
  readonly line: string
  readonly rest: string | null
}

type Said = Pick<Task, 'does' | 'batch' | 'batches' | 'touch' | 'kit'>
type Place = Kit['kind'] | 'none'

/** More than this does not stand in two lines at two metres. */
const LONGEST = 34

const fits = (forms: readonly string[]): string =>
  (forms.find((form) => form.length <= LONGEST) ?? forms.at(-1) ?? '').replace(/[,;:]+$/, '')

/** Where a step happens, by the first kit that it occupies. */
const placeOf = (kit: Task['kit'], names: Names): Place => names.kit(kit[0]?.id ?? '')?.kit.kind ?? 'none'

const lineOf = (whole: string, touch: Task['touch'], place: Place): string => {
  if (whole === '') return 'A step without words'
  if (touch === null || touch.what === 'in') return fits(stepForms(whole))
  const moment: Moment = touch.what === 'out' ? { kind: 'out' } : { kind: 'every', does: touch.does ?? undefined }
  const [thing, tag] = [thingOf(whole), momentTag(moment, place)]
  if (touch.what === 'out' && thing !== null && (tag === 'out' || tag === 'off')) return `Take the ${thing} ${tag}`
  const { forms, tag: tail } = momentShort(whole, moment, place)
  return `${fits(forms)}${tail}`
}

/** "Turn the potato cake", "Take the potatoes out", "Baste the duck", "Fry the fritters (2 of 3)". */
export const verbOf = (task: Said, names: Names): Verb => {
  const whole = sentence(task.does.trim().replace(/[.;,]+$/, ''))
  const line = lineOf(whole, task.touch, placeOf(task.kit, names))
  return {
    line: task.batches > 1 ? `${line} (${task.batch + 1} of ${task.batches})` : line,
    rest: line === whole || whole === '' ? null : `${whole}.`,
  }
}

/** The tap that says that it has happened: what is put in is in, what is worked on is done. */
export const doneWords = ({ role, touch, kit }: Pick<Task, 'role' | 'touch' | 'kit'>, names: Names): string => {
  if (role === 'carry' && touch === null) return 'Arrived'
  const place = placeOf(kit, names)
  const inside = place === 'oven' || place === 'cold'
  if (touch?.what === 'in') return place === 'ring' ? 'It is on' : inside ? 'It is in' : 'Begun'
  if (touch?.what === 'out') return place === 'ring' ? 'It is off' : inside ? 'It is out' : 'Ready'
  return 'Done'
}

/** The tap that says that somebody is at it: on the way, of what is carried from another home. */
export const beginWords = ({ role }: Pick<Task, 'role'>): string => (role === 'carry' ? 'I have left' : 'I’ve got it')
