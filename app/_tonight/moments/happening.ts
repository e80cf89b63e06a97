import type { Evening } from '#lib/domain/evening.ts'
import type { Course, Dish, Step } from '#lib/domain/menu.ts'
import type { NightFact } from '#lib/domain/people.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { servedCourses } from '#lib/domain/served-courses.ts'
import { epochMsOf, instantOfMs, msOfInstant } from '#lib/domain/time.ts'
import type { Answer } from './answer.ts'

const MINUTE_MS = 60_000

type OfStep = Extract<NightFact, { step: string }>
type OfCourse = Extract<NightFact, { course: string }>
type OfCook = Extract<NightFact, { cook: string }>

const stepFact = (evening: Evening, step: string): OfStep | undefined =>
  evening.night.find((fact): fact is OfStep => 'step' in fact && fact.step === step)

/** Whether the course is on the table, as far as anybody has told. */
export const isOut = (evening: Evening, course: string): boolean =>
  evening.night.some((fact): fact is OfCourse => 'course' in fact && fact.course === course && fact.toTable !== undefined)

/** Courses that the guests sit down to and that are not out yet, the next one first. */
export const comingCourses = (evening: Evening): readonly Course[] =>
  servedCourses(evening).filter(({ id, welcome }) => !welcome && !isOut(evening, id))

/** When all sit down: as last told, else as planned. */
const sitDownMs = (evening: Evening): { readonly ms: number; readonly moved: boolean } => {
  const told = evening.night.find((fact): fact is Extract<NightFact, { sitDown: string }> => 'sitDown' in fact)
  return told ? { ms: msOfInstant(told.sitDown), moved: true } : { ms: epochMsOf(evening, evening.sitDown), moved: false }
}

/** Guests come `minutes` late: wait for them, begin without them, or let them miss the first course only. */
export const lateGuestAnswers = (evening: Evening, nowMs: number, minutes: number): readonly Answer[] => {
  const [next, second] = comingCourses(evening)
  if (!next) return []
  const seated = servedCourses(evening).some(({ id, welcome }) => !welcome && isOut(evening, id))
  // At the table already: only the course that comes can wait for them.
  if (seated) return [{ kind: 'later', course: next.id, minutes }]
  const { ms, moved } = sitDownMs(evening)
  const sitDown = instantOfMs(evening, Math.ceil(Math.max(ms, nowMs) / MINUTE_MS + minutes) * MINUTE_MS)
  return [
    { kind: 'wait', minutes, sitDown },
    { kind: 'begin', course: next.id, moved },
    ...(second ? [{ kind: 'later', course: second.id, minutes } as const] : []),
  ]
}

/** Dishes that are still to come, those of the next course first. */
export const comingDishes = (evening: Evening): readonly Dish[] =>
  servedCourses(evening)
    .filter(({ id }) => !isOut(evening, id))
    .flatMap(({ id }) => evening.dishes.filter(({ course, state }) => course === id && state === 'on'))

/** Every dish that somebody may be eating or about to: the next course's first, what is out after them. */
export const alarmDishes = (evening: Evening): readonly Dish[] => {
  const coming = comingDishes(evening)
  return [...coming, ...evening.dishes.filter((dish) => dish.state === 'on' && !coming.includes(dish))]
}

/** Steps that make or finish what is still to come and that nobody has told to be done: what is under way first, then by the clock. */
export const openSteps = (evening: Evening, order: RunningOrder): readonly Step[] => {
  const coming = new Set(comingDishes(evening).map(({ id }) => id))
  const starts = new Map<string, number>()
  for (const { step, start } of order.cues)
    starts.set(step, Math.min(starts.get(step) ?? Number.POSITIVE_INFINITY, msOfInstant(start)))
  const startOf = (step: Step): number => starts.get(step.id) ?? Number.POSITIVE_INFINITY
  const waits = (step: Step): number => (stepFact(evening, step.id)?.started === undefined ? 1 : 0)
  return evening.steps
    .filter(
      (step) =>
        step.dish !== null &&
        coming.has(step.dish) &&
        (step.role === 'make' || step.role === 'finish') &&
        starts.has(step.id) &&
        stepFact(evening, step.id)?.done === undefined,
    )
    .toSorted((a, b) => waits(a) - waits(b) || startOf(a) - startOf(b))
}

/** Something is not ready when its course is: give it longer, let its dish follow the rest, do it another way, or go without the dish. */
export const rawAnswers = (evening: Evening, order: RunningOrder, step: Step, minutes: number): readonly Answer[] => {
  const dish = evening.dishes.find(({ id }) => id === step.dish)
  const others = evening.dishes.filter(({ id, course, state }) => state === 'on' && course === dish?.course && id !== dish.id)
  const begun = stepFact(evening, step.id)?.started !== undefined
  const used = order.cues.find((cue) => cue.step === step.id)?.way ?? 0
  const way = step.ways.findIndex((_, index) => index !== used)
  return [
    { kind: 'longer', step: step.id, minutes },
    ...(dish && others.length > 0 ? [{ kind: 'follow', dish: dish.id, step: step.id, minutes } as const] : []),
    ...(way >= 0 && !begun ? [{ kind: 'other-way', step: step.id, way } as const] : []),
    ...(dish ? [{ kind: 'without', dish: dish.id, why: 'dropped' } as const] : []),
  ]
}

/** A dish has failed: what stands ready in its place, its own stand-in first and those of its course before others; or nothing. */
export const failedAnswers = (evening: Evening, dish: string): readonly Answer[] => {
  const found = evening.dishes.find(({ id }) => id === dish)
  const rank = (spare: Dish) => (spare.id === found?.standIn ? 0 : spare.course === found?.course ? 1 : 2)
  const spares = evening.dishes.filter(({ state }) => state === 'spare').toSorted((a, b) => rank(a) - rank(b))
  return [
    ...spares.slice(0, 3).map(({ id }): Answer => ({ kind: 'stand-in', dish, instead: id })),
    { kind: 'without', dish, why: 'failed' },
  ]
}

/** Who has gone and is not back. */
export const goneCooks = (evening: Evening): readonly string[] =>
  evening.night.flatMap((fact) => (isOfCook(fact) && fact.back === undefined ? [fact.cook] : []))

const isOfCook = (fact: NightFact): fact is OfCook => 'cook' in fact
