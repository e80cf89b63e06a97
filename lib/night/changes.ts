import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import { courseTold, MINUTE, type Told, toldOf } from './told.ts'
import { type Work, workOf } from './work.ts'

/** What a new order changes for one cook, or for the courses: a line each. Instants are milliseconds since 1970. */
export type Change =
  | { readonly kind: 'moved'; readonly step: string; readonly batch: number; readonly from: number; readonly to: number }
  /** Taking it out, or a look in between. */
  | {
      readonly kind: 'touch-moved'
      readonly step: string
      readonly batch: number
      readonly touch: 'out' | number
      readonly from: number
      readonly to: number
    }
  | { readonly kind: 'given'; readonly step: string; readonly batch: number; readonly at: number; readonly by: readonly string[] }
  | { readonly kind: 'taken'; readonly step: string; readonly batch: number; readonly to: readonly string[] }
  /** It is not made any more. */
  | { readonly kind: 'gone'; readonly step: string; readonly batch: number }
  /** It is done another way, at its time or another. */
  | { readonly kind: 'other-way'; readonly step: string; readonly batch: number; readonly way: number; readonly at: number }
  | { readonly kind: 'course-moved'; readonly course: string; readonly from: number; readonly to: number }
  | { readonly kind: 'course-gone'; readonly course: string }

/** Less than this nobody notices. */
const NOTICED = MINUTE

const keyOf = ({ step, cue }: Work): string => `${step.id}:${cue.batch}`
/** Everybody who has a hand in it. */
const handsOf = (work: Work): readonly string[] => [
  ...new Set([...work.cooks, ...work.beginners, ...work.touches.map(({ cook }) => cook)]),
]

const touchChanges = (was: Work, is: Work, isOf: (cooks: readonly string[]) => boolean): Change[] =>
  is.touches.flatMap((touch): Change[] => {
    if (touch.what === 'in' || !isOf([touch.cook])) return []
    const before = was.touches.find(({ what }) => what === touch.what)
    if (!before || Math.abs(before.at - touch.at) < NOTICED) return []
    const { step, cue } = is
    return [{ kind: 'touch-moved', step: step.id, batch: cue.batch, touch: touch.what, from: before.at, to: touch.at }]
  })

const changesOf = (was: Work | undefined, is: Work, cook: string | null): Change[] => {
  const of = { step: is.step.id, batch: is.cue.batch }
  const isOf = (cooks: readonly string[]) => cook === null || cooks.includes(cook)
  if (!was) return isOf(handsOf(is)) && !is.isBegun ? [{ kind: 'given', ...of, at: is.start, by: [] }] : []
  const isTheirs = isOf(handsOf(is))
  const wasTheirs = isOf(handsOf(was))
  if (cook !== null && isTheirs && !wasTheirs) return [{ kind: 'given', ...of, at: is.start, by: handsOf(was) }]
  if (cook !== null && wasTheirs && !isTheirs) return [{ kind: 'taken', ...of, to: handsOf(is) }]
  if (!isTheirs) return []
  if (was.cue.way !== is.cue.way) return [{ kind: 'other-way', ...of, way: is.cue.way, at: is.start }]
  const isMoved = !is.isBegun && isOf(is.beginners) && Math.abs(is.start - was.start) >= NOTICED
  // What moves as a whole takes its touches along.
  return isMoved ? [{ kind: 'moved', ...of, from: was.start, to: is.start }] : touchChanges(was, is, isOf)
}

const courseChanges = (before: RunningOrder, after: RunningOrder, told: Told): Change[] =>
  before.courses.flatMap(({ course, toTable }): Change[] => {
    const { toTable: served, platesOff } = courseTold(told, course)
    if (served !== null || platesOff !== null) return []
    const now = after.courses.find((each) => each.course === course)
    if (!now) return [{ kind: 'course-gone', course }]
    const [from, to] = [msOfInstant(toTable), msOfInstant(now.toTable)]
    return Math.abs(to - from) < NOTICED ? [] : [{ kind: 'course-moved', course, from, to }]
  })

const whenOf = (change: Change): number =>
  change.kind === 'given' || change.kind === 'other-way'
    ? change.at
    : 'to' in change && typeof change.to === 'number'
      ? change.to
      : 0

/**
 * What a new order changes for a cook (null: for everybody) and for the courses, one line a thing, the courses first and then by time. Only
 * what is still to come; a minute is the least that counts. `evening` is as it is now: what is done or dropped since is no move.
 */
export const changesFor = (
  before: RunningOrder,
  after: RunningOrder,
  evening: Evening,
  cook: string | null,
): readonly Change[] => {
  const told = toldOf(evening)
  const was = new Map(workOf(evening, before, told).map((work) => [keyOf(work), work]))
  const works = workOf(evening, after, told)
  const is = new Set(works.map(keyOf))
  return [
    ...courseChanges(before, after, told),
    ...[...works.flatMap((work) => changesOf(was.get(keyOf(work)), work, cook)), ...goneOf(evening, before, told, is, cook)].sort(
      (a, b) => whenOf(a) - whenOf(b),
    ),
  ]
}

/** What the order had for them and has no more, without having been done: its dish was dropped, or it has no place. */
const goneOf = (evening: Evening, before: RunningOrder, told: Told, is: ReadonlySet<string>, cook: string | null): Change[] => {
  const asIfOn: Evening = { ...evening, dishes: evening.dishes.map((dish) => ({ ...dish, state: 'on' })) }
  return workOf(asIfOn, before, told)
    .filter((work) => !is.has(keyOf(work)) && work.cue.state !== 'done' && (cook === null || handsOf(work).includes(cook)))
    .map(({ step, cue }) => ({ kind: 'gone', step: step.id, batch: cue.batch }))
}
