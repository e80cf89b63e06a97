import { firstWork, lastMinuteMinutes } from '#app/_order/last-minute.ts'
import { namesOf } from '#app/_words/names.ts'
import { type WarningWords, warningWords } from '#app/_words/warning.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { KnownNeed } from '#lib/domain/people.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { courseMinutes } from '#lib/table/last-minute.ts'
import type { Warning } from '#lib/table/warning.ts'
import { menuWarnings } from '#lib/table/warnings.ts'
import { dishAbout } from './dish-about.ts'
import type { DishRow } from './dish-line.tsx'

/** What the menu screen says of one course. */
export interface CourseRows {
  readonly rows: readonly DishRow[]
  readonly minutes: number | null
  readonly warnings: readonly WarningWords[]
}

export interface MenuRows {
  readonly courses: ReadonlyMap<string, CourseRows>
  /** Last-minute minutes of all courses; null when nothing is planned. */
  readonly minutes: number | null
  readonly warnings: number
}

/** What the menu screen says, course by course. `needs`: what guests have told, null for who may not know. */
export const menuRows = (evening: Evening, order: RunningOrder | null, needs: readonly KnownNeed[] | null): MenuRows => {
  const names = namesOf(evening)
  const minutes = order ? lastMinuteMinutes(order, names) : null
  const begins = order ? firstWork(order, names) : null
  const warnings = menuWarnings(evening, { order, minutes, needs })
  const courseOf = (warning: Warning): string | undefined => {
    if (warning.kind !== 'same-main') return warning.course
    return names.dish(warning.dishes[warning.dishes.length - 1]?.dish ?? null)?.course
  }
  const courses = new Map(
    evening.courses.map((course) => [
      course.id,
      {
        rows: evening.dishes
          .filter((dish) => dish.course === course.id)
          .map((dish) => ({
            dish,
            about: dishAbout(evening, dish, order, begins?.get(dish.id) ?? null),
            minutes: minutes === null ? null : (minutes.get(dish.id) ?? 0),
          })),
        minutes: minutes === null ? null : courseMinutes(evening, course.id, minutes),
        warnings: warnings.filter((one) => courseOf(one) === course.id).map((one) => warningWords(one, names)),
      },
    ]),
  )
  const all = [...courses.values()]
  return {
    courses,
    minutes: minutes === null ? null : all.reduce((sum, each) => sum + (each.minutes ?? 0), 0),
    warnings: all.reduce((sum, each) => sum + each.warnings.length, 0),
  }
}
