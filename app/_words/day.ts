import { dayName } from './clock.ts'

/** The days of an evening's plan, counted from its date. */
export const DAYS = [-7, -6, -5, -4, -3, -2, -1, 0, 1] as const

/** "Friday"; two days have the names of the last two, and say so: "Saturday the week before". */
export const dayWords = (date: string, day: number): string => `${dayName(date, day)}${day < -5 ? ' the week before' : ''}`

/** The days to choose from, for `WordChoice`. */
export const dayChoices = (date: string): readonly (readonly [value: string, words: string])[] =>
  DAYS.map((day) => [String(day), dayWords(date, day)] as const)

/** Reads a day's name, whole or its first letters, as the first such day that is not before `from`. Null when it is none. */
export const readDay = (text: string, date: string, from: number): number | null => {
  const said = text.trim().toLowerCase()
  if (said.length < 3) return null
  const days = DAYS.filter((day) => day >= from)
  const called = (isIt: (words: string) => boolean) => days.find((day) => isIt(dayWords(date, day).toLowerCase()))
  return called((words) => words === said) ?? called((words) => words.startsWith(said)) ?? null
}
