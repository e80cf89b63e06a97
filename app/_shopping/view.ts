import { dayName } from '#app/_words/clock.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { isFor } from '#lib/shopping/groups.ts'
import type { Line } from '#lib/shopping/line.ts'

/** Whose lines are shown: everybody's, one's own, those that nobody has taken, or those of one home or cook. */
export type Whose = 'all' | 'mine' | 'nobody' | `home:${string}` | `cook:${string}`
/** For which day's shopping: any, or one counted from the evening's. */
export type Errand = 'any' | `${number}`

export const whoseChoices = (evening: Evening, mine: string | null): readonly (readonly [Whose, string])[] => [
  ['all', 'everything'],
  ...(mine === null ? [] : ([['mine', 'what I get']] as const)),
  ['nobody', 'what nobody has taken'],
  ...evening.kitchens
    .filter(({ id }) => id !== evening.host)
    .map(({ id, name }) => [`home:${id}`, `what ${name || 'another home'} shops for`] as const),
  ...evening.cooks
    .filter(({ id }) => id !== mine)
    .map(({ id, name }) => [`cook:${id}`, `what ${name || 'a cook'} gets`] as const),
]

/** The days on which there is something that is bought on no other, and the evening's own. */
export const errandChoices = (evening: Evening, lines: readonly Line[]): readonly (readonly [Errand, string])[] => {
  const days = [...new Set(lines.flatMap(({ when }) => (when.kind === 'any' ? [] : [when.day])))].toSorted((a, b) => a - b)
  return [['any', 'any day'], ...days.map((day) => [`${day}`, dayName(evening.date, day)] as const)]
}

/** The cooks who are in a home and in no other: its lines are theirs unless somebody else takes one. */
const homesOf = (evening: Evening, cook: string | null): ReadonlySet<string> => {
  const stays = evening.cooks.find(({ id }) => id === cook)?.presence ?? []
  return new Set(stays.map(({ kitchen }) => kitchen).filter((kitchen) => kitchen !== evening.host))
}

export const isShown = (line: Line, evening: Evening, mine: string | null, whose: Whose, errand: Errand): boolean => {
  if (errand !== 'any' && !isFor(line, Number(errand))) return false
  const isOf = (cook: string | null) =>
    line.by === cook || (line.by === null && line.home !== null && homesOf(evening, cook).has(line.home))
  if (whose === 'all') return true
  if (whose === 'mine') return isOf(mine)
  if (whose === 'nobody') return line.by === null && line.home === null
  if (whose.startsWith('home:')) return line.home === whose.slice('home:'.length)
  return isOf(whose.slice('cook:'.length))
}
