import { type DishColour, dishColour } from '#app/_ui/plate.tsx'
import { bySiblingOrder, type Evening } from '#lib/domain/evening.ts'
import type { Board } from '#lib/night/board.ts'

/** The courses that were told to be on the table. */
export const outCourses = (evening: Pick<Evening, 'night'>): ReadonlySet<string> =>
  new Set(evening.night.flatMap((fact) => ('course' in fact && fact.toTable !== undefined ? [fact.course] : [])))

/** The colour of a course, by its place in the menu. */
export const colourOf = (evening: Pick<Evening, 'courses'>, course: string): DishColour | null => {
  const at = evening.courses.toSorted(bySiblingOrder).findIndex(({ id }) => id === course)
  return at < 0 ? null : dishColour(at)
}

/** The colour of what is eaten now; null when nothing is. */
export const courseColour = (evening: Pick<Evening, 'courses'>, board: Board | null): DishColour | null =>
  board?.guests.kind === 'eating' ? colourOf(evening, board.guests.course) : null
