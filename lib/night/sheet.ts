import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { servedCourses } from '#lib/domain/served-courses.ts'
import { epochMsOf, msOfInstant, wallTimeOfMs } from '#lib/domain/time.ts'
import type { Task } from './board.ts'
import { type Duty, dutiesOf } from './duties.ts'
import { type Moment, momentOf } from './moment.ts'
import { taskOf } from './now.ts'
import { ovenTurns } from './ovens.ts'
import type { Work } from './work.ts'

/** Who goes on with a dish, with what, and when. */
export interface Handed {
  readonly cooks: readonly string[]
  readonly step: string
  readonly at: number
}

/** One line of a cook's sheet. Instants in ms since 1970. */
export type SheetLine = { readonly at: number } & (
  | {
      readonly kind: 'do'
      readonly what: Duty['what']
      /** When this cook is free of it: the end of hands-on work, the next minute of a touch. */
      readonly to: number
      readonly task: Task
      /** What others do next with what is ready by this. */
      readonly next: readonly Handed[]
    }
  | { readonly kind: 'oven'; readonly oven: string; readonly turn: 'up' | 'down' | 'off'; readonly toC: number }
  | { readonly kind: 'sit'; readonly to: number }
  | { readonly kind: 'pour' | 'clear'; readonly course: string }
)

/** What a cook does on a day before, until the guests come, on the way to a course, or after the last. */
export type SheetBlock = { readonly lines: readonly SheetLine[] } & (
  | { readonly kind: 'day'; readonly day: number }
  | { readonly kind: 'before'; readonly until: number }
  | { readonly kind: 'course'; readonly course: string; readonly toTable: number; readonly platesOff: number }
  | { readonly kind: 'after' }
)

/** Every oven is turned by whoever puts the next thing in, or takes the last one out. */
const turnsOf = ({ order, works }: Moment): readonly { readonly cook: string; readonly line: SheetLine }[] =>
  order.ovens.flatMap(({ kit, line }) =>
    ovenTurns(line).flatMap(({ at, kind, toC }, index, turns) => {
      const inside = works.filter(({ cue }) => cue.kit.some(({ id }) => id === kit))
      const next = inside.find(({ start }) => start >= at)
      const last = inside.findLast(({ start }) => start < at)
      // Going down with nothing in it until it is turned up again is being off.
      const until = turns[index + 1]?.at ?? Number.POSITIVE_INFINITY
      const isEmpty = kind === 'down' && !inside.some(({ start, end }) => start < until && end > at)
      const cook = next && !isEmpty ? next.beginners[0] : (last?.touches.at(-1)?.cook ?? last?.beginners[0])
      const turn = isEmpty ? 'off' : kind
      return cook === undefined ? [] : [{ cook, line: { kind: 'oven', at, oven: kit, turn, toC } satisfies SheetLine }]
    }),
  )

const handedTo = (works: readonly Work[], { step }: Work, from: readonly string[]): readonly Handed[] =>
  works.flatMap((next) => {
    const follows = next.isFirst && next.step.after.some((after) => after.step === step.id && after.from === 'end')
    const cooks = next.beginners.filter((cook) => !from.includes(cook))
    return follows && cooks.length > 0 && cooks.length === next.beginners.length
      ? [{ cooks, step: next.step.id, at: next.start }]
      : []
  })

/** Whether a duty ends its step: what follows can go on. */
const isTheEnd = ({ work, what, touch }: Duty): boolean =>
  work.isLast && (touch?.what === 'out' || what === 'look' || (what === 'begin' && work.way.care !== 'leave'))

const lineOf = (moment: Moment, duty: Duty): SheetLine => {
  const { work, what, at, touch } = duty
  const into = work.way.care === 'leave' && what === 'begin'
  const from = work.cooks.length > 0 ? work.cooks : [duty.cook]
  return {
    kind: 'do',
    what,
    at,
    to: touch ? at + touch.takes : into || what === 'look' ? at : work.end,
    task: taskOf(moment, work, touch),
    next: isTheEnd(duty) ? handedTo(moment.works, work, from) : [],
  }
}

const RANK: Readonly<Record<SheetLine['kind'], number>> = { clear: 0, sit: 1, pour: 2, oven: 3, do: 4 }

/** As if nothing had been told yet: the whole of the order, done or not. */
const wholeOf = (evening: Evening, order: RunningOrder): Moment =>
  momentOf({ ...evening, night: [] }, order, Number.NEGATIVE_INFINITY)

const linesOf = (moment: Moment, cook: string): SheetLine[] => {
  const { evening, order } = moment
  const own = dutiesOf(moment.works, moment.told).filter((duty) => duty.cook === cook)
  const sits = order.cooks.find((each) => each.cook === cook)?.sits ?? []
  const served = servedCourses(evening)
  const planned = (course: string) => order.courses.find((each) => each.course === course)
  return [
    ...own.map((duty) => lineOf(moment, duty)),
    ...turnsOf(moment).flatMap((turn) => (turn.cook === cook ? [turn.line] : [])),
    ...sits.map(({ from, to }): SheetLine => ({ kind: 'sit', at: msOfInstant(from), to: msOfInstant(to) })),
    ...served.flatMap(({ id, pours, clears }, index): SheetLine[] => {
      const course = planned(id)
      if (!course) return []
      const isLast = index === served.length - 1
      const before = planned(served[index - 1]?.id ?? '')
      const filled = Math.max(msOfInstant(course.toTable) - POURING, before ? msOfInstant(before.platesOff) : 0)
      return [
        ...(pours === cook ? [{ kind: 'pour' as const, at: filled, course: id }] : []),
        ...(clears === cook && !isLast ? [{ kind: 'clear' as const, at: msOfInstant(course.platesOff), course: id }] : []),
      ]
    }),
  ].sort((a, b) => a.at - b.at || RANK[a.kind] - RANK[b.kind])
}

/** Glasses are filled before the plates come; common practice, no source. */
const POURING = 3 * 60_000

/**
 * All that one cook does, in order of time, in blocks: the days before, until the guests come, then up to each course's moment at the table,
 * then after. Whole: what was told of the night does not count. A course for which the cook does nothing is there all the same.
 */
export const sheetOf = (evening: Evening, order: RunningOrder, cook: string): readonly SheetBlock[] => {
  const moment = wholeOf(evening, order)
  const lines = linesOf(moment, cook)
  const dayOf = ({ at }: SheetLine) => Math.min(0, wallTimeOfMs(evening, at).day)
  const days = [...new Set(lines.map(dayOf))].filter((day) => day < 0).sort((a, b) => a - b)
  const courses = order.courses
    .map(({ course, toTable, platesOff }) => ({ course, toTable: msOfInstant(toTable), platesOff: msOfInstant(platesOff) }))
    .sort((a, b) => a.toTable - b.toTable)
  const today = lines.filter((line) => dayOf(line) === 0)
  const lastAt = courses.at(-1)?.toTable ?? Number.NEGATIVE_INFINITY
  const after = today.filter(({ at }) => at >= lastAt)
  const guestsFrom = epochMsOf(evening, evening.guestsFrom)
  const before = today.filter(({ at }) => at < Math.min(guestsFrom, courses[0]?.toTable ?? guestsFrom))
  return [
    ...days.map((day): SheetBlock => ({ kind: 'day', day, lines: lines.filter((line) => dayOf(line) === day) })),
    ...(before.length > 0 ? [{ kind: 'before' as const, until: guestsFrom, lines: before }] : []),
    ...courses.map(({ course, toTable, platesOff }, index): SheetBlock => {
      const since = courses[index - 1]?.toTable ?? Number.NEGATIVE_INFINITY
      const own = today.filter((line) => line.at >= since && line.at < toTable && !before.includes(line))
      return { kind: 'course', course, toTable, platesOff, lines: own }
    }),
    ...(after.length > 0 ? [{ kind: 'after' as const, lines: after }] : []),
  ]
}

/** What a cook does, without the courses around it: for a calendar. */
export const doingsOf = (evening: Evening, order: RunningOrder, cook: string): readonly Extract<SheetLine, { kind: 'do' }>[] =>
  linesOf(wholeOf(evening, order), cook).filter((line) => line.kind === 'do')
