import { readClock } from '#app/_words/read-clock.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import { isDate } from '#lib/domain/time.ts'
import type { EveningFacts } from '#lib/recipes/evening-facts.ts'
import type { TimesDraft } from './first-draft.ts'

/** What the server wants to know of an evening's times. */
export interface Times {
  readonly name: string
  readonly date: string
  readonly guestsFrom: string
  readonly sitDown: string
  readonly covers: number
  readonly cooks: readonly string[]
}

const minutesOf = (clock: string): number => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3))
const clockOf = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`

/** Half an hour before, and never the day before. */
export const guestsBefore = (sitDown: string): string => clockOf(Math.max(0, minutesOf(sitDown) - 30))

const DAY_MS = 86_400_000
const daysAfter = (today: string, days: number): string =>
  new Date(Date.parse(`${today}T12:00:00Z`) + days * DAY_MS).toISOString().slice(0, 10)

/** The next such day of the week that is not today. */
const nextWeekday = (today: string, weekday: number): string =>
  daysAfter(today, ((weekday - new Date(`${today}T12:00:00Z`).getUTCDay() + 6) % 7) + 1)

export interface ShownTimes {
  readonly times: TimesDraft
  /** The blanks that say what was pasted. */
  readonly pasted: readonly ('covers' | 'sitDown' | 'date')[]
}

/** What a person wrote; where they wrote nothing, what they pasted; else a usual evening. */
export const timesShown = (written: Partial<TimesDraft>, facts: EveningFacts | null, today: string): ShownTimes => {
  const sitDown = written.sitDown ?? facts?.sitDown?.value ?? '19:30'
  const day = facts?.weekday ?? null
  return {
    times: {
      name: '',
      date: day ? nextWeekday(today, day.value) : daysAfter(today, 12),
      guestsFrom: guestsBefore(sitDown),
      covers: facts?.covers ? String(facts.covers.value) : '6',
      cooks: '',
      ...written,
      sitDown,
    },
    pasted: [
      ...(day && written.date === undefined ? ['date' as const] : []),
      ...(facts?.sitDown && written.sitDown === undefined ? ['sitDown' as const] : []),
      ...(facts?.covers && written.covers === undefined ? ['covers' as const] : []),
    ],
  }
}

export const CLOCK_WRONG = 'Write a time, such as 19:30.'
export const COVERS_WRONG = 'Write a number of people, 1 to 60.'

export const namesIn = (cooks: string): readonly string[] =>
  cooks
    .split(/,|\band\b|&/iu)
    .map((name) => name.trim().slice(0, 80))
    .filter(Boolean)

/** The times as they are to be made, or what is wrong with each word. */
export const readTimes = (draft: TimesDraft): Result<Times, Partial<Record<keyof TimesDraft, string>>> => {
  const wrong: Partial<Record<keyof TimesDraft, string>> = {}
  const name = draft.name.trim()
  if (name === '') wrong.name = 'Give the evening a name.'
  else if (name.length > 120) wrong.name = 'Give it a shorter name.'
  if (!isDate(draft.date)) wrong.date = 'Choose the day.'
  const sitDown = readClock(draft.sitDown)
  const guestsFrom = readClock(draft.guestsFrom)
  if (sitDown === null) wrong.sitDown = CLOCK_WRONG
  if (guestsFrom === null) wrong.guestsFrom = CLOCK_WRONG
  else if (sitDown !== null && minutesOf(guestsFrom) > minutesOf(sitDown))
    wrong.guestsFrom = `Guests come before you sit down at ${sitDown}.`
  const covers = Number(draft.covers.trim())
  if (!Number.isInteger(covers) || covers < 1 || covers > 60) wrong.covers = COVERS_WRONG
  const cooks = namesIn(draft.cooks)
  if (cooks.length > 23) wrong.cooks = 'That is more cooks than an evening holds: 24 with you.'
  if (Object.keys(wrong).length > 0 || sitDown === null || guestsFrom === null) return fail(wrong)
  return ok({ name, date: draft.date, guestsFrom, sitDown, covers, cooks })
}
