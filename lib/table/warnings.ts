import type { Evening } from '#lib/domain/evening.ts'
import type { KnownNeed } from '#lib/domain/people.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { busyCourses } from './last-minute.ts'
import { nothingFor } from './nothing-for.ts'
import { ovenHeats } from './oven-heat.ts'
import { sameMain } from './same-main.ts'
import type { Warning } from './warning.ts'

/** What is known beside the evening itself. */
export interface Known {
  readonly order: RunningOrder | null
  /** Dish → last-minute minutes; null when nothing is planned. */
  readonly minutes: ReadonlyMap<string, number> | null
  /** What guests have told; null for those who may not know. */
  readonly needs: readonly KnownNeed[] | null
}

/** Everything about the menu that is worth a warning: needs first, then minutes, oven and repetition. */
export const menuWarnings = (evening: Evening, { order, minutes, needs }: Known): readonly Warning[] => [
  ...(needs === null ? [] : nothingFor(evening, needs)),
  ...(minutes === null ? [] : busyCourses(evening, minutes)),
  ...ovenHeats(evening, order),
  ...sameMain(evening),
]
