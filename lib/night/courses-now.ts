import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Course } from '#lib/domain/menu.ts'
import { servedCourses } from '#lib/domain/served-courses.ts'
import { epochMsOf, msOfInstant } from '#lib/domain/time.ts'
import type { GuestsNow, NextCourse, Phase } from './board.ts'
import type { Moment } from './moment.ts'
import { courseTold, GRACE, MINUTE, type Told } from './told.ts'

const isServed = (told: Told, { id }: Course): boolean => {
  const { toTable, platesOff } = courseTold(told, id)
  return toTable !== null || platesOff !== null
}

export const sitDownOf = (evening: Evening, told: Told): number => told.sitDown ?? epochMsOf(evening, evening.sitDown)

/** The first course that was not told to be at the table; null when there is none left. */
const nextOf = ({ evening, told }: Moment): Course | null =>
  servedCourses(evening).find((course) => !isServed(told, course)) ?? null

const plannedOf = ({ order }: Moment, { id }: Course) => order.courses.find(({ course }) => course === id)

/** When the plates of a course come off: as told, a clearing after nearly done, or as the order says. */
const platesOffOf = (moment: Moment, course: Course): number => {
  const { platesOff, nearlyDone, toTable } = courseTold(moment.told, course.id)
  const planned = plannedOf(moment, course)
  const clearing = secondsOf(course.clearing) * 1000
  if (platesOff !== null) return platesOff
  if (nearlyDone !== null) return nearlyDone + clearing
  if (toTable !== null) return toTable + secondsOf(course.eating.likely) * 1000 + clearing
  return planned ? msOfInstant(planned.platesOff) : moment.at
}

/** From when to when a course is wanted at the table. */
const wantedOf = (moment: Moment, course: Course): NextCourse['wanted'] => {
  const { evening, told } = moment
  const courses = servedCourses(evening)
  const notBefore = course.notBefore ? epochMsOf(evening, course.notBefore) : Number.NEGATIVE_INFINITY
  const sitDown = sitDownOf(evening, told)
  if (course.welcome) {
    const from = Math.max(notBefore, Math.min(sitDown, epochMsOf(evening, evening.guestsFrom)))
    return { from, to: Math.max(from, sitDown) }
  }
  const before = courses[courses.indexOf(course) - 1]
  if (!before || before.welcome) {
    const from = Math.max(notBefore, sitDown)
    return { from, to: from }
  }
  const off = platesOffOf(moment, before)
  const [least, most] = course.wait.ideal.map((wait) => secondsOf(wait) * 1000) as [number, number]
  const from = Math.max(notBefore, off + least)
  return { from, to: Math.max(from, off + most) }
}

/**
 * What holds a course back: what the order says decides it while that is undone; or else, of what is under way for it, what ends last; or what
 * comes last before it is plated.
 */
const becauseOf = ({ works }: Moment, course: Course, decidedBy: string | null): string | null => {
  if (decidedBy !== null && works.some(({ step }) => step.id === decidedBy)) return decidedBy
  const own = works.filter(({ dish }) => dish?.course === course.id).toSorted((a, b) => b.end - a.end)
  const makes = own.filter(({ step }) => step.role !== 'plate' && step.role !== 'carry')
  return (makes.find(({ isBegun }) => isBegun) ?? makes[0] ?? own[0])?.step.id ?? null
}

/** The next course to the table, in how many minutes, and whether that is in time; null when all have been served. */
export const nextCourse = (moment: Moment): NextCourse | null => {
  const course = nextOf(moment)
  const planned = course ? plannedOf(moment, course) : undefined
  if (!course || !planned) return null
  const { at, works } = moment
  const toTable = Math.max(at, msOfInstant(planned.toTable))
  const wanted = wantedOf(moment, course)
  const late = toTable - wanted.to
  const lateBy = late > GRACE ? Math.floor(late / MINUTE) : 0
  const freeUntil = planned.waitFreeUntil === null ? null : msOfInstant(planned.waitFreeUntil)
  return {
    course: course.id,
    toTable,
    inMinutes: Math.ceil((toTable - at) / MINUTE),
    wanted,
    isReady: !works.some(({ dish }) => dish?.course === course.id),
    lateBy,
    because: lateBy > 0 ? becauseOf(moment, course, planned.decidedBy) : null,
    freeUntil: freeUntil !== null && freeUntil > at ? freeUntil : null,
    onTime: planned.onTime,
  }
}

/** How it is with the guests, as far as it was told. */
export const guestsNow = (moment: Moment): GuestsNow => {
  const { evening, told, at } = moment
  const { covers } = evening
  const courses = servedCourses(evening)
  const last = courses.findLast((course) => isServed(told, course))
  const sitDown = sitDownOf(evening, told)
  if (!last || last.welcome) {
    const from = epochMsOf(evening, evening.guestsFrom)
    const first = courses.find((course) => !course.welcome)
    if (at >= sitDown && first) return { covers, kind: 'waiting', since: sitDown, course: first.id }
    return at < from && !last ? { covers, kind: 'to-come', from, sitDown } : { covers, kind: 'arriving', sitDown }
  }
  const { toTable, platesOff, nearlyDone } = courseTold(told, last.id)
  if (platesOff === null)
    return {
      covers,
      kind: 'eating',
      course: last.id,
      since: toTable ?? at,
      platesOff: platesOffOf(moment, last),
      isNearlyDone: nearlyDone !== null,
      clears: last.clears ?? null,
    }
  const next = courses[courses.indexOf(last) + 1]
  return next ? { covers, kind: 'waiting', since: platesOff, course: next.id } : { covers, kind: 'done', since: platesOff }
}

/** Before it was begun, until the first course is at the table, at the table, and when the last plates are off or the night is closed. */
export const phaseOf = ({ evening, told }: Moment): Phase => {
  const courses = servedCourses(evening)
  const last = courses.at(-1)
  if (told.closed !== null || (last && courseTold(told, last.id).platesOff !== null)) return 'after'
  if (courses.some((course) => !course.welcome && isServed(told, course))) return 'table'
  return told.begun === null ? 'before' : 'cooking'
}
