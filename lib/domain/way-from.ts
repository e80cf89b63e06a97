import type { Span } from './atoms.ts'
import { durationOf, secondsOf } from './duration.ts'
import type { Evening } from './evening.ts'
import { spanFromUsual } from './usual-span.ts'

const HALF_HOUR = 1800

/** How long the way to the host's table is: as the kitchen says, on a good day and a bad one, half an hour where it says nothing. */
export const wayFrom = (evening: Pick<Evening, 'kitchens'>, kitchen: string | undefined): Span => {
  const found = evening.kitchens.find(({ id }) => id === kitchen)
  const usual = found ? secondsOf(found.toTable) : 0
  const span = spanFromUsual(usual > 0 ? usual : HALF_HOUR)
  if (found?.toTableMost === undefined) return span
  return { ...span, most: durationOf(Math.max(secondsOf(span.likely), secondsOf(found.toTableMost))) }
}
