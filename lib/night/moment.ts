import type { At } from '#lib/domain/atoms.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { epochMsOf } from '#lib/domain/time.ts'
import { type Told, toldOf } from './told.ts'
import { type Work, workOf } from './work.ts'

/** What is needed to say how it is at one moment. */
export interface Moment {
  readonly evening: Evening
  readonly order: RunningOrder
  readonly told: Told
  readonly works: readonly Work[]
  /** Now. */
  readonly at: number
  /** When alerts fired. */
  readonly fired: ReadonlyMap<string, number>
}

/** What of it says who is there. */
export type Presence = Pick<Moment, 'evening' | 'told' | 'at'>

const NOTHING_FIRED: ReadonlyMap<string, number> = new Map()

/** Gathers what was told and what is still to be done. */
export const momentOf = (evening: Evening, order: RunningOrder, at: number, fired = NOTHING_FIRED): Moment => {
  const told = toldOf(evening)
  return { evening, order, told, works: workOf(evening, order, told), at, fired }
}

/** By their hours, not busy, and not told to have gone. */
export const isThere = ({ evening, told, at }: Presence, cook: string): boolean => {
  const found = evening.cooks.find(({ id }) => id === cook)
  if (!found || told.away.has(cook)) return false
  const isIn = ({ from, to }: { from: At; to: At }) => epochMsOf(evening, from) <= at && at < epochMsOf(evening, to)
  return found.presence.some(isIn) && !found.busy?.some(isIn)
}

/** The cooks who are there; when none is by their hours, whoever has not gone. */
export const cooksHere = (moment: Presence): readonly string[] => {
  const here = moment.evening.cooks.filter(({ id }) => isThere(moment, id)).map(({ id }) => id)
  return here.length > 0 ? here : moment.evening.cooks.filter(({ id }) => !moment.told.away.has(id)).map(({ id }) => id)
}
