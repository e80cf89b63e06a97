import type { Evening } from '#lib/domain/evening.ts'
import type { Course } from '#lib/domain/menu.ts'
import type { KnownNeed } from '#lib/domain/people.ts'

/** A kind of food that would help; never a dish. */
export interface Idea {
  /** A bite, a beginning, the middle of the meal, something beside it, the sweet end. */
  readonly part: 'bite' | 'beginning' | 'middle' | 'beside' | 'end'
  /** Cold where the host's heat is wanted by others already. */
  readonly heat: 'cold' | 'either'
  /** What it might be made of; plain: few things, each of them known. */
  readonly base: 'anything' | 'vegetables' | 'pulses' | 'plain'
}

/** Whether the host's oven is wanted for another dish of the course already: there is mostly one, and it has one heat at a time. */
const isOvenTaken = (evening: Evening, course: string): boolean => {
  const dishes = new Set(evening.dishes.filter((dish) => dish.course === course && dish.state === 'on').map(({ id }) => id))
  return evening.steps.some(
    ({ dish, role, ways }) =>
      dish !== null &&
      dishes.has(dish) &&
      (role === 'finish' || evening.dishes.find(({ id }) => id === dish)?.kitchen === evening.host) &&
      ways.every(({ uses }) => uses.some(({ kind }) => kind === 'oven')),
  )
}

const partOf = (evening: Evening, course: Course): Idea['part'] => {
  if (course.welcome) return 'bite'
  if (evening.dishes.some((dish) => dish.course === course.id && dish.state === 'on')) return 'beside'
  const served = evening.courses.filter(({ welcome }) => !welcome)
  if (served.length > 1 && served.at(-1)?.id === course.id) return 'end'
  return served.length > 1 && served[0]?.id === course.id ? 'beginning' : 'middle'
}

/** A kind of food for a course. Common practice, no source: what can wait cold troubles nobody's oven; vegetables go with most things. */
export const ideaFor = (evening: Evening, course: Course): Idea => {
  const part = partOf(evening, course)
  const cold = part === 'bite' || part === 'beginning' || part === 'end' || isOvenTaken(evening, course.id)
  return { part, heat: cold ? 'cold' : 'either', base: part === 'beside' || part === 'beginning' ? 'vegetables' : 'anything' }
}

const PLANTS: ReadonlySet<string> = new Set(['vegan', 'vegetarian', 'pescatarian', 'meat', 'pork', 'halal', 'kosher'])

/** A kind of food for needs: plants for who eats no meat, and where there is an allergy few things whose every part is known. */
export const ideaForNeeds = (evening: Evening, course: Course, needs: readonly KnownNeed[]): Idea => {
  const idea = ideaFor(evening, course)
  if (needs.some(({ need }) => !PLANTS.has(need))) return { ...idea, base: 'plain' }
  return { ...idea, base: idea.part === 'bite' || idea.part === 'end' ? 'vegetables' : 'pulses' }
}
