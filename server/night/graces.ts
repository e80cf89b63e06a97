import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import { GRACE } from '#lib/night/told.ts'

/**
 * The moments at which the order no longer holds unless something is told meanwhile, in order: what should have begun, ended,
 * come to the table or come back from it has passed by its grace. Batches of a step follow each other by themselves.
 */
export const gracesOf = (evening: Evening, order: RunningOrder): readonly number[] =>
  [...new Set([...ofSteps(evening, order), ...ofCourses(evening, order)].map((ms) => ms + GRACE))].sort((a, b) => a - b)

const ofSteps = (evening: Evening, order: RunningOrder): number[] => {
  const told = new Map(evening.night.flatMap((fact) => ('step' in fact ? [[fact.step, fact] as const] : [])))
  const moments = new Map<string, number>()
  for (const { step, start, end } of order.cues) {
    const fact = told.get(step)
    if (fact?.done !== undefined) continue
    const known = moments.get(step)
    if (fact?.started === undefined) moments.set(step, Math.min(known ?? Number.POSITIVE_INFINITY, msOfInstant(start)))
    else moments.set(step, Math.max(known ?? Number.NEGATIVE_INFINITY, msOfInstant(end)))
  }
  return [...moments.values()]
}

/** The last course's plates decide nothing any more. */
const ofCourses = (evening: Evening, order: RunningOrder): number[] => {
  const told = new Map(evening.night.flatMap((fact) => ('course' in fact ? [[fact.course, fact] as const] : [])))
  return order.courses.flatMap(({ course, toTable, platesOff }, place) => {
    const fact = told.get(course)
    if (fact?.toTable === undefined) return [msOfInstant(toTable)]
    return fact.platesOff === undefined && place < order.courses.length - 1 ? [msOfInstant(platesOff)] : []
  })
}
