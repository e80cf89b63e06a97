import type { Evening } from '#lib/domain/evening.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import type { Alert } from '#lib/night/alerts.ts'
import { cookOf, courseOf, nightOf, stepOf } from '#lib/plan/night-facts.ts'

/** Something that must not be served, told to all until every cook has confirmed. */
interface AlarmCall {
  readonly id: string
  readonly kind: 'alarm'
  readonly at: number
  readonly cooks: readonly string[]
  readonly dish: string
}
export type Call = Alert | AlarmCall
/** A call, and when it rang, or should have, on the server's clock. */
export type Due = Call & { readonly firedAt: number }

/** Later than this it is told in words: it would ring for what somebody else has long seen to. */
const FRESH_MS = 60_000

/** What this device has told its cook already, and since when it takes part in the night. */
export interface Known {
  readonly told: ReadonlySet<string>
  readonly since: number
}

const isHere = (evening: Evening, cook: string): boolean => {
  const fact = cookOf(evening, cook)
  return fact === undefined || fact.back !== undefined
}

/** What an open alarm calls for, as long as a cook who is there has not confirmed it; also before the evening is begun. */
export const alarmCalls = (evening: Evening): readonly Due[] =>
  evening.night.flatMap((fact): Due[] => {
    if (!('alarm' in fact) || nightOf(evening)?.closed !== undefined) return []
    const confirmed = new Set(fact.confirmed?.map(({ cook }) => cook))
    if (evening.cooks.every(({ id }) => confirmed.has(id) || !isHere(evening, id))) return []
    const at = msOfInstant(fact.at)
    return [{ id: `alarm:${fact.alarm}`, kind: 'alarm', at, firedAt: at, cooks: [], dish: fact.dish }]
  })

/** Whether the evening is being cooked: begun and not closed. */
export const isLive = (evening: Evening): boolean => {
  const night = nightOf(evening)
  return night !== undefined && night.closed === undefined
}

/** Of what the order calls for, what is due by now: for a device that hears nothing of the server. */
export const dueOf = (alerts: readonly Alert[], nowMs: number): readonly Due[] =>
  alerts.filter(({ at }) => at <= nowMs).map((alert) => ({ ...alert, firedAt: alert.at }))

const concerns = ({ cooks }: Call, cook: string | null): boolean => cook === null || cooks.length === 0 || cooks.includes(cook)

/** Whether there is still something to do about it: what was seen to meanwhile need not be told. */
export const isOpen = (evening: Evening, call: Call): boolean => {
  const step = call.kind !== 'alarm' && call.step !== undefined ? stepOf(evening, call.step) : undefined
  if (step?.done !== undefined) return false
  switch (call.kind) {
    case 'alarm':
      return true
    case 'begin':
      return step?.started === undefined
    case 'overdue':
      return !(call.id.endsWith(':begin') && step?.started !== undefined)
    case 'touch':
    case 'look':
      return true
    case 'get-up':
      return false
    case 'plate':
    case 'serve': {
      const course = call.course === undefined ? undefined : courseOf(evening, call.course)
      return course?.toTable === undefined && course?.platesOff === undefined
    }
  }
}

export interface Rings {
  /** To be rung for now. */
  readonly ring: readonly Due[]
  /** What rang while this device was away and is still to be seen to. */
  readonly missed: readonly Due[]
  /** All that need not be looked at again. */
  readonly settled: readonly string[]
}

/**
 * What a device does about what is due: each id once, for its own cook (null: all of them), at once when it is fresh and in words
 * when it is not. What rang before the device took part is not for it.
 */
export const ringsOf = (due: readonly Due[], evening: Evening, known: Known, cook: string | null, nowMs: number): Rings => {
  const isNew = new Map(due.filter(({ id }) => !known.told.has(id)).map((call) => [call.id, call]))
  const mine = [...isNew.values()].filter((call) => concerns(call, cook))
  const isFresh = ({ firedAt, kind }: Due) => kind === 'alarm' || nowMs - firedAt <= FRESH_MS
  return {
    ring: mine.filter(isFresh),
    missed: mine.filter((call) => !isFresh(call) && call.firedAt >= known.since && isOpen(evening, call)),
    settled: [...isNew.keys()],
  }
}
