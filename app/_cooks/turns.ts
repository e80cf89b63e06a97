import type { Evening } from '#lib/domain/evening.ts'
import type { Course } from '#lib/domain/menu.ts'
import { servedCourses } from '#lib/domain/served-courses.ts'

type Part = Pick<Course, 'lead' | 'hosts'>

/** The two who keep house together, in the evening's order; null when there are fewer or more. */
export const coupleIn = ({ cooks }: Evening): readonly [string, string] | null => {
  const [one, other, third] = cooks.filter(({ host }) => host)
  return one && other && !third ? [one.id, other.id] : null
}

/** One leads and the other hosts, turn by turn, over the courses at the table; a welcome is everybody's. */
export const takeTurns = (
  evening: Evening,
  [one, other]: readonly [string, string],
): readonly (readonly [course: string, Part])[] =>
  servedCourses(evening)
    .filter(({ welcome }) => !welcome)
    .map(({ id }, at) => [id, at % 2 === 0 ? { lead: one, hosts: other } : { lead: other, hosts: one }] as const)

/** Who led hosts, and who hosted leads. */
export const swapped = ({ lead, hosts }: Course): { readonly lead: string | undefined; readonly hosts: string | undefined } => ({
  lead: hosts,
  hosts: lead,
})
