import { dayOf } from '#app/_words/clock.ts'
import type { Names } from '#app/_words/names.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Cue, RunningOrder } from '#lib/domain/running-order.ts'
import { epochMsOf } from '#lib/domain/time.ts'
import { type Doing, doings } from './picture/doings.ts'

/** One line of the running order as a list. */
export type Row =
  | {
      readonly kind: 'doing'
      readonly key: string
      readonly at: number
      readonly doing: Doing
      readonly cooks: readonly string[]
    }
  | { readonly kind: 'course'; readonly key: string; readonly at: number; readonly course: string }
  | { readonly kind: 'off'; readonly key: string; readonly at: number; readonly course: string; readonly next: string }
  | { readonly kind: 'guests'; readonly key: string; readonly at: number }
  /** A step that is left alone and that nobody touches. */
  | { readonly kind: 'alone'; readonly key: string; readonly at: number; readonly cue: Cue }

export interface Day {
  readonly day: number
  readonly rows: readonly Row[]
}

const RANK: Readonly<Record<Row['kind'], number>> = { guests: 0, off: 1, course: 2, alone: 3, doing: 4 }

/** The running order as the picture shows it, line by line: each day, each moment, each step once. */
export const daysOf = (evening: Evening, order: RunningOrder, names: Names): readonly Day[] => {
  const rows: Row[] = []
  const shared = new Map<string, { doing: Doing; cooks: string[] }>()
  for (const doing of doings(order, names)) {
    const key = doing.touch === null ? `${doing.cue.step}.${doing.cue.batch}` : doing.key
    const found = shared.get(key)
    if (found) found.cooks.push(doing.cook)
    else shared.set(key, { doing, cooks: [doing.cook] })
  }
  for (const { doing, cooks } of shared.values()) rows.push({ kind: 'doing', key: doing.key, at: doing.from, doing, cooks })
  for (const cue of order.cues)
    if (cue.cooks.length === 0 && cue.touches.length === 0)
      rows.push({ kind: 'alone', key: `${cue.step}.${cue.batch}.alone`, at: Date.parse(cue.start), cue })
  const courses = [...order.courses].sort((a, b) => Date.parse(a.toTable) - Date.parse(b.toTable))
  for (const [index, course] of courses.entries()) {
    rows.push({ kind: 'course', key: `course.${course.course}`, at: Date.parse(course.toTable), course: course.course })
    const next = courses[index + 1]
    if (next)
      rows.push({
        kind: 'off',
        key: `off.${course.course}`,
        at: Date.parse(course.platesOff),
        course: course.course,
        next: next.course,
      })
  }
  rows.push({ kind: 'guests', key: 'guests', at: epochMsOf(evening, evening.guestsFrom) })
  rows.sort((a, b) => a.at - b.at || RANK[a.kind] - RANK[b.kind] || (a.key < b.key ? -1 : 1))
  const days = new Map<number, Row[]>()
  for (const row of rows) {
    const day = dayOf(evening, row.at)
    days.set(day, [...(days.get(day) ?? []), row])
  }
  return [...days].sort(([a], [b]) => a - b).map(([day, list]) => ({ day, rows: list }))
}
