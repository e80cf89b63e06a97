import type { Evening } from '#lib/domain/evening.ts'
import { epochMsOf, msOfInstant, originMsOf } from '#lib/domain/time.ts'
import type { Asker } from './decide-claim.ts'
import type { Said } from './say.ts'
import { refused, type TellDecision } from './tell-decision.ts'

type Speaker = { readonly kind: 'cook'; readonly cook: string } | (TellDecision & { readonly kind: 'refused' })

/**
 * The cook who is taken to have told something: the member's own; else whoever they say tells it, on a tablet that belongs to
 * all; else, of a host, the first host who cooks.
 */
export const speakerOf = ({ cooks }: Evening, asker: Asker, as: string | undefined): Speaker => {
  const own = cooks.find(({ id }) => id === asker.cook)
  if (own) return { kind: 'cook', cook: own.id }
  if (as !== undefined) return cooks.some(({ id }) => id === as) ? { kind: 'cook', cook: as } : refused('unknown-cook')
  const host = cooks.find((cook) => cook.host) ?? cooks[0]
  return asker.role === 'host' && host ? { kind: 'cook', cook: host.id } : refused('no-seat')
}

/** From the day before the evening until the day after it is over. */
export const isNight = (evening: Evening, ms: number): boolean => isBetween(evening, ms, epochMsOf(evening, at(-1)))

/** From the first day on which something of it may be done ahead. */
export const isNearEvening = (evening: Evening, ms: number): boolean => isBetween(evening, ms, originMsOf(evening))

const at = (day: number) => ({ day, time: '00:00' })

const isBetween = (evening: Evening, ms: number, from: number): boolean => ms >= from && ms < epochMsOf(evening, at(2))

const MOST_BACK_MS = 60_000

/** Whether something may still be taken back; `told` is the moment that was written, which may lie some minutes before the telling. */
export const isInTime = (said: Said, told: string, atMs: number): boolean => {
  const ago = 'ago' in said ? (said.ago ?? 0) * 60_000 : 0
  return atMs - (msOfInstant(told) + ago) <= MOST_BACK_MS
}

/** How long a word may have been on its way. */
const LONGEST_WAY_MS = 12 * 3_600_000

/**
 * When something was told, by the server's clock. `at` and `sent` are the device's own clock, right or wrong, as it was told and as it
 * went; without `sent` it was told now.
 */
export const toldAt = (at: number, sent: number | null, nowMs: number): number =>
  nowMs - Math.min(LONGEST_WAY_MS, Math.max(0, (sent ?? at) - at))
