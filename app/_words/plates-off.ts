import { minutesOf } from '#lib/domain/duration.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { durationText } from './duration.ts'
import type { Names } from './names.ts'

/** "Plates off, then wait 8 min for Main"; "no wait" where it comes at once, and nothing of a course that is not planned. */
export const platesOffText = (next: RunningOrder['courses'][number] | undefined, names: Names): string => {
  if (!next) return 'Plates off'
  const wait = minutesOf(next.wait) < 0.5 ? 'no wait' : `wait ${durationText(next.wait)}`
  return `Plates off, then ${wait} for ${names.courseName(next.course)}`
}
