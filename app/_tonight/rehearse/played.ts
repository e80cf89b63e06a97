import type { Evening } from '#lib/domain/evening.ts'
import type { Cue, RunningOrder } from '#lib/domain/running-order.ts'
import { epochMsOf, msOfInstant } from '#lib/domain/time.ts'
import type { Say } from '#lib/plan/say.ts'

/** Something that is told, and when it happened. */
export interface Happened {
  readonly say: Say
  readonly atMs: number
}

const MINUTE_MS = 60_000
const LEAD_MS = 2 * MINUTE_MS
const EARLIEST_MS = 5 * 60 * MINUTE_MS

/** Where a rehearsal begins: shortly before the first thing to do in the last hours before all sit down. */
export const startOfRehearsal = (evening: Evening, order: RunningOrder): number => {
  const sitDown = epochMsOf(evening, evening.sitDown)
  const starts = order.cues.map(({ start }) => msOfInstant(start)).filter((start) => start >= sitDown - EARLIEST_MS)
  return Math.min(sitDown, ...starts) - LEAD_MS
}

interface Spell {
  readonly start: number
  readonly end: number
}

/** Each step from its first batch's start to its last one's end. */
const spellsOf = (cues: readonly Cue[]): ReadonlyMap<string, Spell> => {
  const spells = new Map<string, Spell>()
  for (const { step, start, end } of cues) {
    const before = spells.get(step)
    spells.set(step, {
      start: Math.min(before?.start ?? Number.POSITIVE_INFINITY, msOfInstant(start)),
      end: Math.max(before?.end ?? 0, msOfInstant(end)),
    })
  }
  return spells
}

/** What would have been told by now had everybody done their part as the order has it, and was not; in the order of the clock. */
export const dueBy = (evening: Evening, order: RunningOrder, nowMs: number): readonly Happened[] => {
  const told = new Set(
    evening.night.flatMap((fact) => {
      if ('step' in fact) return [fact.started ? `started ${fact.step}` : '', fact.done ? `done ${fact.step}` : '']
      if ('course' in fact)
        return [fact.toTable ? `to-table ${fact.course}` : '', fact.platesOff ? `plates-off ${fact.course}` : '']
      return []
    }),
  )
  const steps = [...spellsOf(order.cues)].flatMap(([step, { start, end }]): Happened[] =>
    told.has(`done ${step}`)
      ? []
      : [
          ...(told.has(`started ${step}`) ? [] : [{ say: { kind: 'started', step }, atMs: start } as const]),
          { say: { kind: 'done', step }, atMs: end },
        ],
  )
  const courses = order.courses.flatMap(({ course, toTable, platesOff }): Happened[] =>
    told.has(`plates-off ${course}`)
      ? []
      : [
          ...(told.has(`to-table ${course}`) ? [] : [{ say: { kind: 'to-table', course }, atMs: msOfInstant(toTable) } as const]),
          { say: { kind: 'plates-off', course }, atMs: msOfInstant(platesOff) },
        ],
  )
  return [...steps, ...courses].filter(({ atMs }) => atMs <= nowMs).toSorted((a, b) => a.atMs - b.atMs)
}

/** The next moment at which anybody is wanted or anything ends; null when all is over. */
export const nextMoment = (order: RunningOrder, nowMs: number): number | null => {
  const moments = [
    ...order.cues.flatMap(({ start, end, touches }) => [start, end, ...touches.map(({ at }) => at)]),
    ...order.courses.flatMap(({ toTable, platesOff }) => [toTable, platesOff]),
  ].map(msOfInstant)
  const next = Math.min(...moments.filter((moment) => moment > nowMs))
  return Number.isFinite(next) ? next : null
}
