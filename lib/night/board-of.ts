import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { openAlarms, plateNear } from './alarms.ts'
import { alertsOf } from './alerts.ts'
import type { Board, Call, Whose } from './board.ts'
import { catchUpOf } from './catch-up.ts'
import { guestsNow, nextCourse, phaseOf } from './courses-now.ts'
import { type Moment, momentOf } from './moment.ts'
import { cookNow } from './now.ts'
import { ovensNow } from './ovens.ts'
import { GRACE, MINUTE } from './told.ts'

/** So long may nobody tell anything though something should have happened. */
const SILENT = 20 * MINUTE
const CALLS = 6

const callsOf = ({ evening, order, at }: Moment): readonly Call[] =>
  alertsOf(evening, order)
    .filter((alert) => alert.at > at && alert.kind !== 'overdue')
    .slice(0, CALLS)
    .map(({ id, at: due, kind, cooks, step, course, touch }) => ({
      id,
      at: due,
      kind,
      cooks,
      step: step ?? null,
      course: course ?? null,
      touch: touch ?? null,
    }))

const silentOf = (moment: Moment): Board['silent'] => {
  const { evening, order, told, at, fired } = moment
  const since = told.last
  if (since === null || told.begun === null || at - since < SILENT) return null
  const isDue = catchUpOf(evening, order, at, { fired }).some(({ due }) => due + GRACE < at)
  return isDue ? { since, minutes: Math.floor((at - since) / MINUTE) } : null
}

/** The board at a moment of the night, for one cook or for all. Total: never throws on an evening and an order that parse. */
export const boardOf = (evening: Evening, order: RunningOrder, nowMs: number, { cook, fired }: Whose): Board => {
  const moment = momentOf(evening, order, nowMs, fired)
  const phase = phaseOf(moment)
  const cooks = evening.cooks.map(({ id }) => cookNow(moment, id, phase === 'table'))
  const course = nextCourse(moment)
  return {
    at: nowMs,
    phase,
    now: cook === null ? cooks : cooks.filter((one) => one.cook === cook),
    others: cook === null ? [] : cooks.filter((one) => one.cook !== cook),
    course,
    calls: callsOf(moment),
    ovens: ovensNow(moment),
    guests: guestsNow(moment),
    plateNear: plateNear(moment, course),
    alarms: openAlarms(evening, nowMs),
    silent: phase === 'after' ? null : silentOf(moment),
  }
}
