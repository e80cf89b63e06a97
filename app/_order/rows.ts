import { dayOf } from '#app/_words/clock.ts'
import type { Names } from '#app/_words/names.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Clash, Cue, RunningOrder } from '#lib/domain/running-order.ts'
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
  /** A finished dish waits for the table. */
  | { readonly kind: 'keep'; readonly key: string; readonly at: number; readonly keep: RunningOrder['keeping'][number] }
  /** An oven is on its way to another heat. */
  | { readonly kind: 'heat'; readonly key: string; readonly at: number; readonly oven: string; readonly c: number }
  | { readonly kind: 'sits'; readonly key: string; readonly at: number; readonly to: number; readonly cooks: readonly string[] }
  | { readonly kind: 'clash'; readonly key: string; readonly at: number; readonly clash: Clash }

export interface Day {
  readonly day: number
  readonly rows: readonly Row[]
}

const RANK: Readonly<Record<Row['kind'], number>> = {
  clash: 0,
  guests: 1,
  off: 2,
  course: 3,
  sits: 4,
  heat: 5,
  alone: 6,
  doing: 7,
  keep: 8,
}

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
  for (const [index, keep] of order.keeping.entries())
    if (keep.to > keep.from) rows.push({ kind: 'keep', key: `keep.${index}`, at: Date.parse(keep.from), keep })
  for (const [index, clash] of order.clashes.entries())
    rows.push({ kind: 'clash', key: `clash.${index}`, at: Date.parse(clash.from), clash })
  rows.push(...heatRows(order), ...sitRows(order))
  rows.push({ kind: 'guests', key: 'guests', at: epochMsOf(evening, evening.guestsFrom) })
  rows.sort((a, b) => a.at - b.at || RANK[a.kind] - RANK[b.kind] || (a.key < b.key ? -1 : 1))
  const days = new Map<number, Row[]>()
  for (const row of rows) {
    const day = dayOf(evening, row.at)
    days.set(day, [...(days.get(day) ?? []), row])
  }
  return [...days].sort(([a], [b]) => a - b).map(([day, list]) => ({ day, rows: list }))
}

/** Each time an oven is set, and to what. */
const heatRows = (order: RunningOrder): readonly Row[] =>
  order.ovens.flatMap(({ kit, line, preheats }) =>
    preheats.flatMap((instant): Row[] => {
      const at = Date.parse(instant)
      const rest = line.filter((point) => Date.parse(point.at) > at)
      const set = rest.find((point, index) => (rest[index + 1]?.c ?? 0) <= point.c)
      return set ? [{ kind: 'heat', key: `heat.${kit}.${at}`, at, oven: kit, c: Math.round(set.c) }] : []
    }),
  )

/** Who sits from when to when; those who sit at the same time together. */
const sitRows = (order: RunningOrder): readonly Row[] => {
  const cooks = new Map<string, { at: number; to: number; cooks: string[] }>()
  for (const { cook, sits } of order.cooks)
    for (const { from, to } of sits) {
      const key = `${from} ${to}`
      const found = cooks.get(key)
      if (found) found.cooks.push(cook)
      else cooks.set(key, { at: Date.parse(from), to: Date.parse(to), cooks: [cook] })
    }
  return [...cooks].map(([key, sit]) => ({ kind: 'sits', key: `sits.${key}`, ...sit }))
}
