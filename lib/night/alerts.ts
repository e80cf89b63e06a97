import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { servedCourses } from '#lib/domain/served-courses.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import { type Duty, dutiesOf, isLookedAt, isOpenEnded, lookersOf } from './duties.ts'
import { courseTold, GRACE, MINUTE, type Told, toldOf } from './told.ts'
import { type Work, workOf } from './work.ts'

export type AlertKind = 'begin' | 'touch' | 'look' | 'get-up' | 'plate' | 'serve' | 'overdue'

/**
 * A moment at which somebody is called. The id holds no time, so an order that moves an alert before it has fired moves it, and what has
 * fired is not fired again; a word that something needs longer makes a new one of it.
 */
export interface Alert {
  readonly id: string
  /** Milliseconds since 1970. */
  readonly at: number
  readonly kind: AlertKind
  /** Whom it calls; empty: everybody. */
  readonly cooks: readonly string[]
  readonly step?: string
  readonly batch?: number
  /** `out`, or which of the looks in between, from 1. */
  readonly touch?: 'out' | number
  readonly course?: string
}

/** Before hands are wanted for plating, more than one cook's, and before a cook must be up from the table; common practice, no source. */
const PLATE_AHEAD = 3 * MINUTE
const GET_UP_AHEAD = MINUTE

const stepKey = ({ step, cue }: Work): string => `${step.id}:${cue.batch}`

/** What has been rung for is to be rung for again once it was told to need longer. */
const longerKey = ({ extra }: Work): string => (extra > 0 ? `:longer-${Math.round(extra / MINUTE)}` : '')

/** When it is called to: put in, rested, begun. */
const beginAlerts = (work: Work): Alert[] => {
  if (work.isBegun || work.beginsItself) return []
  const of = { cooks: work.beginners, step: work.step.id, batch: work.cue.batch }
  return [
    { id: `begin:${stepKey(work)}`, at: work.start, kind: 'begin', ...of },
    ...(work.isFirst ? [{ id: `overdue:${stepKey(work)}:begin`, at: work.start + GRACE, kind: 'overdue' as const, ...of }] : []),
  ]
}

const touchAlerts = (work: Work, told: Told): Alert[] =>
  work.touches.flatMap(({ what, at, cook }): Alert[] => {
    if (what === 'in') return []
    const id = `touch:${stepKey(work)}:${what}${what === 'out' ? longerKey(work) : ''}`
    const cooks = told.away.has(cook) ? [] : [cook]
    return [{ id, at, kind: 'touch', cooks, step: work.step.id, batch: work.cue.batch, touch: what }]
  })

/** What follows at once, by the same hands, rings for both. */
const isRungForByNext = (work: Work, cooks: readonly string[], works: readonly Work[]): boolean =>
  works.some(
    (next) =>
      !next.isBegun &&
      !next.beginsItself &&
      Math.abs(next.start - work.end) < MINUTE &&
      next.step.after.some(({ step, from }) => step === work.step.id && from === 'end') &&
      cooks.every((cook) => next.beginners.includes(cook)),
  )

const endAlerts = (work: Work, works: readonly Work[], told: Told): Alert[] => {
  const cooks = lookersOf(work, told)
  const of = { cooks, step: work.step.id, batch: work.cue.batch }
  const longer = longerKey(work)
  return [
    ...(isLookedAt(work) && cooks.length > 0 && !isRungForByNext(work, cooks, works)
      ? [{ id: `look:${stepKey(work)}${longer}`, at: work.end, kind: 'look' as const, ...of }]
      : []),
    ...(work.isBegun && work.isLast && !isOpenEnded(work)
      ? [{ id: `overdue:${stepKey(work)}:end${longer}`, at: work.end + GRACE, kind: 'overdue' as const, ...of }]
      : []),
  ]
}

/** Who sits at the table is told a minute before the order wants them up. */
const getUpAlerts = (order: RunningOrder, duties: readonly Duty[], told: Told): Alert[] =>
  order.cooks.flatMap(({ cook, sits }) =>
    told.away.has(cook)
      ? []
      : sits.flatMap(({ to }): Alert[] => {
          const at = msOfInstant(to)
          const call = duties.find((duty) => duty.cook === cook && duty.at === at && duty.work.step.where !== 'table')
          if (!call) return []
          const { work } = call
          const touch = call.touch === null ? '' : `:${call.touch.what}`
          const id = `get-up:${cook}:${stepKey(work)}${touch}`
          return [{ id, at: at - GET_UP_AHEAD, kind: 'get-up', cooks: [cook], step: work.step.id, batch: work.cue.batch }]
        }),
  )

const courseAlerts = (evening: Evening, order: RunningOrder, works: readonly Work[], told: Told): Alert[] =>
  servedCourses(evening).flatMap(({ id: course, lead }): Alert[] => {
    const planned = order.courses.find((each) => each.course === course)
    if (!planned || courseTold(told, course).toTable !== null || courseTold(told, course).platesOff !== null) return []
    const plating = works.filter(({ step, dish }) => step.role === 'plate' && dish?.course === course)
    const platers = [...new Set(plating.flatMap(({ cooks }) => cooks))]
    const first = plating.reduce((earliest, { start }) => Math.min(earliest, start), Number.POSITIVE_INFINITY)
    const isToCome = platers.length > 1 && plating.every(({ isBegun }) => !isBegun)
    const leads = lead !== undefined && !told.away.has(lead) ? [lead] : platers
    return [
      ...(isToCome ? [{ id: `plate:${course}`, at: first - PLATE_AHEAD, kind: 'plate' as const, cooks: platers, course }] : []),
      { id: `serve:${course}`, at: msOfInstant(planned.toTable), kind: 'serve', cooks: leads, course },
    ]
  })

/**
 * Everything that the order will call somebody for, in order of time: what has not begun to begin, touches, what is left or watched to be
 * looked at, plating and serving, cooks up from the table, and what is overdue. Nothing of what is done, of a dish that is not on, to a cook
 * who has gone, or of a night that is closed.
 */
export const alertsOf = (evening: Evening, order: RunningOrder): readonly Alert[] => {
  const told = toldOf(evening)
  if (told.closed !== null) return []
  const works = workOf(evening, order, told)
  return [
    ...works.flatMap((work) => [...beginAlerts(work), ...touchAlerts(work, told), ...endAlerts(work, works, told)]),
    ...getUpAlerts(order, dutiesOf(works, told), told),
    ...courseAlerts(evening, order, works, told),
  ].sort((a, b) => a.at - b.at || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0))
}
