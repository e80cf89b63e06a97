import type { Change } from '#lib/night/changes.ts'
import { clockText, listText } from './clock.ts'
import type { Names } from './names.ts'

const touchText = (touch: 'out' | number): string => (touch === 'out' ? 'ends' : 'wants a look')

/** What a new order changes, a sentence each: "“Potatoes in” at 19:22, not 19:10." */
export const changeText = (change: Change, names: Names, zone: string): string => {
  const clock = (ms: number) => clockText(ms, zone)
  const step = 'step' in change ? `“${names.stepName(change.step)}”${change.batch > 0 ? ` (${change.batch + 1})` : ''}` : ''
  switch (change.kind) {
    case 'moved':
      return `${step} at ${clock(change.to)}, not ${clock(change.from)}.`
    case 'touch-moved':
      return `${step} ${touchText(change.touch)} at ${clock(change.to)}, not ${clock(change.from)}.`
    case 'given':
      return `New at ${clock(change.at)}: ${step}${
        change.by.length > 0 ? `, from ${listText(change.by.map(names.cookName))}` : ''
      }.`
    case 'taken':
      return `No longer: ${step}${change.to.length > 0 ? `, ${listText(change.to.map(names.cookName))} has it` : ''}.`
    case 'gone':
      return `Not made any more: ${step}.`
    case 'other-way':
      return `${step} the ${['first', 'second', 'third'][change.way] ?? 'other'} way, at ${clock(change.at)}.`
    case 'course-moved':
      return `${names.courseName(change.course)} to table ${clock(change.to)}, not ${clock(change.from)}.`
    case 'course-gone':
      return `${names.courseName(change.course)} is not served.`
  }
}

/** So many stand in one line. */
const TOLD = 2
/** With more of them nobody reads which: it is told that much is new. */
const MANY = 4

export const isMuch = (changes: readonly Change[]): boolean => changes.length > MANY

/** All of it in one line; when it is much, in a calm one. */
export const changesText = (changes: readonly Change[], names: Names, zone: string): string => {
  if (isMuch(changes)) return 'Most of your evening has changed: look at what is next.'
  const told = changes.slice(0, TOLD).map((change) => changeText(change, names, zone))
  const more = changes.length - told.length
  return [...told, ...(more > 0 ? [`And ${more} more.`] : [])].join(' ')
}

/** The same on a board that is everybody's. */
export const muchText = (cooks: readonly string[], names: Names): string =>
  `Much has changed for ${listText(cooks.map(names.cookName))}: look at what is next.`
