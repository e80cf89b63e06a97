import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import type { SheetLine } from '#lib/night/sheet.ts'
import type { Line } from '#lib/shopping/line.ts'
import type { FeedRefusal } from '#server/calendar/feed.ts'
import { clockText } from './clock.ts'
import type { Names } from './names.ts'
import { DEFER } from './safety.ts'
import { coreNotes, doHead, doNotes } from './sheet.ts'
import { lineText } from './shopping.ts'

type Do = Extract<SheetLine, { kind: 'do' }>

/** What an entry of a calendar says. */
export interface EntryWords {
  readonly title: string
  readonly notes: string
}

/** The evening as a whole: when the guests come, when one sits down, when each course is wanted. */
export const eveningEntry = (evening: Evening, order: RunningOrder | null, names: Names): EntryWords => {
  const courses = (order?.courses ?? []).map(
    ({ course, toTable }) => `${clockText(toTable, evening.zone)} ${names.courseName(course)}`,
  )
  return {
    title: evening.name || 'Dinner',
    notes: [
      `Guests from ${evening.guestsFrom.time}, sit down at ${evening.sitDown.time}.`,
      ...courses,
      ...(order === null ? ['The running order is not planned yet.'] : []),
    ].join('\n'),
  }
}

/** A step that keeps a plate apart says so, and not for what. */
export const APART = 'Keep a plate apart'

/** Something to do. */
export const doEntry = (line: Do, cook: string, evening: Evening, names: Names): EntryWords => {
  const core = coreNotes(line, evening)
  return {
    title: doHead(line, names),
    notes: [...doNotes(line, cook, evening, names), ...core, ...(core.length > 0 ? [DEFER] : [])].join('\n'),
  }
}

/** The way from one kitchen to another, where nothing is carried. */
export const leaveEntry = (to: string, by: number, evening: Evening, names: Names): EntryWords => ({
  title: `Leave for ${names.kitchenName(to)}`,
  notes: `To be there at ${clockText(by, evening.zone)}.`,
})

/** What is bought on a day, at the latest. */
export const shoppingEntry = (lines: readonly Line[]): EntryWords => ({
  title: 'Shopping for the evening',
  notes: lines.map(lineText).join('\n'),
})

/** What was in a calendar once and is not to be done any more. */
export const CANCELLED: EntryWords = { title: 'Not to be done any more', notes: 'The running order has changed.' }

/** Why something about one's calendar was not done. */
export const calendarRefusalText = (refusal: FeedRefusal): string => {
  switch (refusal.kind) {
    case 'not-found':
      return 'This evening is gone, or it is not yours.'
    case 'not-a-choice':
      return 'That is none of the choices: take another.'
    case 'over':
      return 'This evening is over: an address ends a week after it. Take it as a file.'
  }
}

/** When a calendar calls: "10 minutes before", "at the moment itself". */
export const alarmWords = (minutes: number | null): string =>
  minutes === null ? 'not at all' : minutes === 0 ? 'at the moment itself' : `${minutes} minutes before`
