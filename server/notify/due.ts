import type { Evening } from '#lib/domain/evening.ts'
import type { Cue } from '#lib/domain/running-order.ts'
import { dateAt, epochMsOf } from '#lib/domain/time.ts'
import type { NoticeKind } from './kinds.ts'

/** What somebody has changed: who, where, when. */
export interface Changed {
  readonly memberId: string | null
  readonly root: string
  readonly entry: string
  readonly field: string
  readonly atMs: number
}

/** All that is looked at to see whether somebody is to be told something. */
export interface Scene {
  readonly evening: Evening
  readonly changes: readonly Changed[]
  /** When households have answered. */
  readonly answers: readonly number[]
  /** Of the order that people are shown. */
  readonly cues: readonly Pick<Cue, 'cooks' | 'start'>[]
}

export interface Listener {
  readonly memberId: string
  readonly cook: string | null
  readonly kind: NoticeKind
  /** What was before this has been told. */
  readonly toldMs: number
}

/** When the day is told of: people look at what is for tomorrow then. */
const TELL_AT = '18:00'

/** How many things there are to tell somebody now; 0: nothing. */
export const dueNow = (scene: Scene, listener: Listener, nowMs: number): number => {
  const { memberId, toldMs, kind } = listener
  const others = scene.changes.filter((change) => change.memberId !== memberId && change.atMs > toldMs)
  switch (kind) {
    case 'asked':
      return asked(scene.evening, others, listener.cook)
    case 'reply':
      return scene.answers.filter((at) => at > toldMs).length
    case 'changed':
      return isTime(scene.evening, toldMs, nowMs) ? others.filter(({ root }) => !SMALL.has(root)).length : 0
    case 'ahead':
      return isTime(scene.evening, toldMs, nowMs) ? ahead(scene, listener.cook, nowMs) : 0
  }
}

/** What happens all the time, and what is told apart. */
const SMALL: ReadonlySet<string> = new Set(['ticks', 'night', 'guests'])

/** Once a day from its hour on, on the days before the evening. */
const isTime = ({ date, zone }: Evening, toldMs: number, nowMs: number): boolean => {
  const today = dateAt(zone, nowMs)
  const hour = epochMsOf({ date: today, zone }, { day: 0, time: TELL_AT })
  return today < date && nowMs >= hour && toldMs < hour
}

/** What others have given this cook: something to do, a course to lead, an answer to an offer. */
const asked = (evening: Evening, others: readonly Changed[], cook: string | null): number => {
  if (cook === null) return 0
  const isMine = ({ root, entry, field }: Changed): boolean => {
    if (root === 'claims')
      return evening.claims.some((claim) => claim.target === entry && (claim.cook === cook || claim.also?.includes(cook)))
    if (root === 'courses') return field === 'lead' && evening.courses.some(({ id, lead }) => id === entry && lead === cook)
    if (root === 'offers')
      return field === 'state' && (evening.offers ?? []).some((offer) => offer.id === entry && offer.cook === cook)
    return false
  }
  return new Set(others.filter(isMine).map(({ entry }) => entry)).size
}

/** What this cook begins tomorrow, when that is not the evening's own day. */
const ahead = ({ evening, cues }: Scene, cook: string | null, nowMs: number): number => {
  const tomorrow = dateAt(evening.zone, nowMs, 1)
  if (cook === null || tomorrow >= evening.date) return 0
  return cues.filter(({ cooks, start }) => cooks.includes(cook) && dateAt(evening.zone, Date.parse(start)) === tomorrow).length
}
