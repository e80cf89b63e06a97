import { ticksUp } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { hardWork } from '#lib/domain/hard-work.ts'
import type { Spare } from '#lib/scheduling/problem.ts'
import type { TickOf } from './clock.ts'
import { activityId, byText } from './ids.ts'
import type { PlannedStep } from './steps-to-problem.ts'

/** Below a minute at the table, far above an hour in which something is made too early. */
const QUIET = 8
/** Twice a minute at the table: rather somebody else, even if that is less fair. */
const SOBER = 20
/** Less than being unfair, and than any wait: who hosts a course sits where it makes no odds to the two together. */
const HOSTING = 4

const idsOf = (steps: readonly PlannedStep[], is: (planned: PlannedStep) => boolean): string[] =>
  steps
    .filter(is)
    .flatMap(({ step, batches }) => Array.from({ length: batches }, (_, batch) => activityId(step.id, batch, batches)))

/**
 * When cooks would rather not be asked (decision 031): hosts so long before the guests come, who drinks for hard work from then on, who
 * hosts a course for its last work. Empty when nobody asked for it.
 */
export const sparesToProblem = (evening: Evening, steps: readonly PlannedStep[], tickOf: TickOf): Spare[] => {
  const guests = Math.min(tickOf(evening.guestsFrom, 'up'), tickOf(evening.sitDown, 'up'))
  const whole = { from: 0, to: FAR }
  const quiet = evening.quietBefore === undefined ? 0 : ticksUp(evening.quietBefore)
  const cooks = evening.cooks.toSorted((a, b) => byText(a.id, b.id))
  const hard = cooks.some(({ drinks }) => drinks)
    ? idsOf(steps, ({ step, dish }) => hardWork(step, step.ways, dish) !== null)
    : []
  return cooks.flatMap(({ id, host, drinks }): Spare[] => {
    const courses = new Set(evening.courses.filter(({ hosts }) => hosts === id).map((course) => course.id))
    const last = idsOf(steps, ({ step, dish }) => dish !== null && courses.has(dish.course) && isLast(step.role))
    return [
      ...(host && quiet > 0 ? [{ cook: id, from: guests - quiet, to: guests, price: QUIET }] : []),
      ...(drinks && hard.length > 0 ? [{ cook: id, ...whole, from: guests, price: SOBER, activities: hard }] : []),
      ...(last.length > 0 ? [{ cook: id, ...whole, price: HOSTING, activities: last }] : []),
    ]
  })
}

/** Three weeks: beyond every evening. */
const FAR = 60_480

const isLast = (role: PlannedStep['step']['role']): boolean => role === 'finish' || role === 'plate'
