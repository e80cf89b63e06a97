import { bySiblingOrder, type Evening } from './evening.ts'
import type { Course } from './menu.ts'
import { epochMsOf } from './time.ts'

/** A course whose dishes have all been dropped is not served; one without a dish as yet is. */
const isServed = (evening: Evening, course: Course): boolean => {
  const dishes = evening.dishes.filter((dish) => dish.course === course.id)
  return dishes.length === 0 || dishes.some((dish) => dish.state === 'on')
}

/** When a course before sit-down is wanted, in milliseconds since 1970. */
const wantedAt = (evening: Evening, { children }: Course): number => epochMsOf(evening, children?.at ?? evening.guestsFrom)

/** The courses that are served, in their order; the welcome and what the children eat come before all others, by the clock. */
export const servedCourses = (evening: Evening): Course[] => {
  const served = evening.courses.filter((course) => isServed(evening, course)).sort(bySiblingOrder)
  const early = served.filter(({ welcome }) => welcome)
  const at = new Map(early.length > 1 ? early.map((course) => [course.id, wantedAt(evening, course)]) : [])
  const first = early.sort((a, b) => (at.get(a.id) ?? 0) - (at.get(b.id) ?? 0))
  return [...first, ...served.filter(({ welcome }) => !welcome)]
}
