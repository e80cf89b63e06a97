import type { Evening } from '#lib/domain/evening.ts'
import type { Warning } from './warning.ts'

/** More last-minute minutes than these in one course keep its cooks from the table; common practice, no source. */
export const MANY_MINUTES = 10

/** A course's last-minute minutes, the sum of its dishes'. `minutes`: dish → minutes that cooks are at it. */
export const courseMinutes = ({ dishes }: Evening, course: string, minutes: ReadonlyMap<string, number>): number =>
  dishes.filter((dish) => dish.course === course).reduce((sum, dish) => sum + (minutes.get(dish.id) ?? 0), 0)

/** The courses with more last-minute minutes than `MANY_MINUTES`. */
export const busyCourses = (evening: Evening, minutes: ReadonlyMap<string, number>): Warning[] =>
  evening.courses.flatMap((course) => {
    const sum = courseMinutes(evening, course.id, minutes)
    // What would be shown as ten is ten.
    if (Math.round(sum) <= MANY_MINUTES) return []
    const dishes = evening.dishes
      .filter((dish) => dish.course === course.id && (minutes.get(dish.id) ?? 0) > 0)
      .map((dish) => ({ dish: dish.id, minutes: minutes.get(dish.id) ?? 0 }))
      .sort((a, b) => b.minutes - a.minutes)
    return [{ kind: 'last-minute' as const, course: course.id, minutes: sum, dishes }]
  })
