import type * as Y from 'yjs'
import { durationOf, secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { fail } from '#lib/domain/result.ts'
import { servedCourses } from '#lib/domain/served-courses.ts'
import { epochMsOf, wallTimeOfMs } from '#lib/domain/time.ts'
import { readPlan } from '#lib/plan/read.ts'
import { type Edited, setEvening, setFields } from './set.ts'

/** Whether the guests sit down to this course. */
export const isFirst = (evening: Evening, course: string): boolean =>
  servedCourses(evening).find(({ welcome }) => !welcome)?.id === course

/**
 * Serves a course so many seconds later, or sooner when below zero. With the first course all sit down then, which is a host's
 * to say; any other is wanted so long after the plates before it, never before they are off.
 */
export const serveCourse = (doc: Y.Doc, course: string, seconds: number): Edited => {
  const { evening } = readPlan(doc)
  if (isFirst(evening, course))
    return setEvening(doc, { sitDown: wallTimeOfMs(evening, epochMsOf(evening, evening.sitDown) + seconds * 1000) })
  const wait = evening.courses.find(({ id }) => id === course)?.wait
  if (!wait) return fail({ kind: 'unknown-entry', root: 'courses', id: course })
  const moved = (limit: string): string => durationOf(Math.max(0, secondsOf(limit) + seconds))
  return setFields(doc, 'courses', course, {
    wait: { ideal: [moved(wait.ideal[0]), moved(wait.ideal[1])], most: moved(wait.most) },
  })
}
