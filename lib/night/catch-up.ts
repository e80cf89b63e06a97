import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { servedCourses } from '#lib/domain/served-courses.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import { isOpenEnded } from './duties.ts'
import { courseTold, GRACE, MINUTE, type Told, toldOf } from './told.ts'
import { type Work, workOf } from './work.ts'

/** Something that should have happened and of which nothing was told; since when, in ms. */
export type CatchUp =
  | { readonly kind: 'begin' | 'end'; readonly step: string; readonly batch: number; readonly due: number }
  | { readonly kind: 'to-table' | 'plates-off'; readonly course: string; readonly due: number }

/** What helps to say since when something is due; a new order pushes along with the clock what has not begun. */
export interface Since {
  /** The order as it was when something was told last. */
  readonly before?: RunningOrder
  /** When alerts fired, by their id. */
  readonly fired?: ReadonlyMap<string, number>
}

const begunAt = (work: Work, { before, fired }: Since): number => {
  const was = before?.cues.find(({ step, batch }) => step === work.step.id && batch === work.cue.batch)
  const rung = fired?.get(`begin:${work.step.id}:${work.cue.batch}`)
  return Math.min(work.start, was ? msOfInstant(was.start) : work.start, rung ?? work.start)
}

const stepsOf = (works: readonly Work[], at: number, since: Since): CatchUp[] =>
  works.flatMap((work): CatchUp[] => {
    const of = { step: work.step.id, batch: work.cue.batch }
    if (work.isBegun)
      return work.isLast && !isOpenEnded(work) && work.end + GRACE < at ? [{ kind: 'end', ...of, due: work.end }] : []
    // Made anew, an order begins what is overdue now.
    return work.isFirst && !work.beginsItself && work.start <= at + MINUTE
      ? [{ kind: 'begin', ...of, due: begunAt(work, since) }]
      : []
  })

const coursesOf = (evening: Evening, order: RunningOrder, told: Told, at: number, { before }: Since): CatchUp[] =>
  servedCourses(evening).flatMap(({ id: course }): CatchUp[] => {
    const { toTable, platesOff } = courseTold(told, course)
    if (platesOff !== null) return []
    const [kind, key] = toTable === null ? (['to-table', 'toTable'] as const) : (['plates-off', 'platesOff'] as const)
    const known = [order, before].flatMap((of) => of?.courses.filter((each) => each.course === course) ?? [])
    const due = Math.min(...known.map((planned) => msOfInstant(planned[key])))
    return due + GRACE < at ? [{ kind, course, due }] : []
  })

/**
 * What should have begun, ended, been at the table or come off it by now and was not told, the longest due first: for "where are we?" and for
 * what was done before the night began. What begins within a minute is among it.
 */
export const catchUpOf = (evening: Evening, order: RunningOrder, nowMs: number, since: Since = {}): readonly CatchUp[] => {
  const told = toldOf(evening)
  const works = workOf(evening, order, told)
  return [...stepsOf(works, nowMs, since), ...coursesOf(evening, order, told, nowMs, since)].sort((a, b) => a.due - b.due)
}
