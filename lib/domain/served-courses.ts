import { bySiblingOrder, type Evening } from './evening.ts'
import type { Course } from './menu.ts'

/** A course whose dishes have all been dropped is not served; one without a dish as yet is. */
const isServed = (evening: Evening, course: Course): boolean => {
  const dishes = evening.dishes.filter((dish) => dish.course === course.id)
  return dishes.length === 0 || dishes.some((dish) => dish.state === 'on')
}

/** The courses that are served, in their order, the welcome before all others. */
export const servedCourses = (evening: Evening): Course[] =>
  evening.courses
    .filter((course) => isServed(evening, course))
    .sort((a, b) => Number(b.welcome ?? false) - Number(a.welcome ?? false) || bySiblingOrder(a, b))
