import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { type Alert, alertsOf } from '#lib/night/alerts.ts'
import { GRACE } from '#lib/night/told.ts'
import type { Fired } from '#lib/plan/wire.ts'
import type { Clock } from '#server/sync/clock.ts'
import type { AlertStore } from './alert-store.ts'
import { gracesOf } from './graces.ts'
import { isLive } from './is-live.ts'

const MINUTE = 60_000

/** The clock is looked at no later than after so many milliseconds: it may have been set, or the machine have slept. */
const WAKE = 30_000

/** What fell due longer ago, while nobody was there to ring it, is not rung any more. */
const STALE = 10 * MINUTE

/** What fell due before this server looked waits so long for the devices that come back: their words may have settled it. */
const RETURN = 5_000

/** What rang in that time is told to who comes. */
const RECENT = 60 * MINUTE

/** Planned again so often without a word in between, it is planned again only now and then: nobody follows it. */
const UNHEARD = 5
const SILENT_PAUSE = 10 * MINUTE

/** One evening while it is being cooked. */
export interface LiveNight {
  /** The plan as it stands. */
  tell(evening: Evening): void
  /** The order that people are shown. */
  order(order: RunningOrder): void
  /** What has rung in the last hour, in the order in which it rang. */
  recent(): readonly Fired[]
  stop(): void
}

interface Parts {
  readonly eveningId: string
  readonly store: Pick<AlertStore, 'save'>
  readonly clock: Clock
  readonly rung: readonly Fired[]
  readonly log: (what: string, why: unknown) => void
  /** Rings: once for each alert, when it is stored. */
  readonly ring: (fired: readonly Fired[]) => void
  /** The order does not hold any more. */
  readonly again: () => void
  /** It is closed, or over. */
  readonly ended: () => void
}

/** The clock was set back when it shows so much less than before. */
const BACK = MINUTE

/** Rings what falls due and has the rest planned again when something passes its grace, with one timer to the next moment. */
export const openLiveNight = (begun: Evening, parts: Parts): LiveNight => {
  const { eveningId, store, clock, log } = parts
  const rung = new Map(parts.rung.map((fired) => [fired.id, fired]))
  const ringing = new Set<string>()
  let evening = begun
  /** The order that people are shown, and the plan that it is of. */
  let shown: { readonly order: RunningOrder; readonly of: Evening } | null = null
  /** What this plan and this order come to; null until it is looked at. */
  let moments: { readonly alerts: readonly Alert[]; readonly graces: readonly number[] } | null = null
  const openedAt = clock.now()
  let lookedAt = openedAt
  /** When planning again was last asked for, and how often without a word since. */
  let asked: { readonly at: number; readonly of: RunningOrder; readonly times: number } | null = null
  let stopped = false
  let cancel: () => void = () => undefined

  const momentsNow = () => {
    if (!moments && shown) moments = { alerts: alertsNow(shown), graces: gracesOf(evening, shown.order) }
    return moments
  }

  /** What was told since the order was made takes alerts away at once; what it adds waits for the order that knows of it. */
  const alertsNow = ({ order, of }: NonNullable<typeof shown>): readonly Alert[] => {
    const alerts = alertsOf(evening, order)
    if (of === evening) return alerts
    const known = new Set(alertsOf(of, order).map(({ id }) => id))
    return alerts.filter(({ id }) => known.has(id))
  }

  const ring = async (due: readonly Alert[], firedAt: number) => {
    const fired = due.map((alert): Fired => ({ ...alert, cooks: [...alert.cooks], firedAt }))
    for (const { id } of fired) ringing.add(id)
    // What cannot be stored rings all the same: a pan that boils over does not wait for a disk.
    await store.save(eveningId, fired).catch((why: unknown) => log(`alerts of evening ${eveningId} were not stored`, why))
    for (const one of fired) {
      ringing.delete(one.id)
      rung.set(one.id, one)
    }
    if (!stopped) parts.ring(fired)
  }

  const dueAt = ({ at }: Alert): number => (at < openedAt - 1000 ? openedAt + RETURN : at)

  const isOpen = ({ id, at }: Alert, now: number) => !rung.has(id) && !ringing.has(id) && at > now - STALE

  /** When planning again may be asked for; it brings nothing to ask twice of the same order in one grace. */
  const askFrom = (now: number): number => {
    if (!asked || asked.at > now) return now
    if (asked.times >= UNHEARD) return asked.at + SILENT_PAUSE
    return asked.of === shown?.order ? asked.at + GRACE : now
  }

  /** Does what is due and gives the next moment at which there is something to do. */
  const work = (now: number): number => {
    const found = momentsNow()
    if (!found || !shown) return Number.POSITIVE_INFINITY
    const open = found.alerts.filter((alert) => isOpen(alert, now))
    const due = open.filter((alert) => dueAt(alert) <= now)
    if (due.length > 0) void ring(due, now)
    const next = Math.min(...open.map(dueAt).filter((at) => at > now))
    const [first = Number.POSITIVE_INFINITY] = found.graces
    const from = askFrom(now)
    // An order that was planned from a later moment leaves out what there is time for after all.
    const setBack = now < lookedAt - BACK
    if (setBack || (first <= now && from <= now)) {
      asked = { at: now, of: shown.order, times: (asked?.times ?? 0) + 1 }
      parts.again()
      return next
    }
    return Math.min(next, Math.max(first, from))
  }

  const look = () => {
    if (stopped) return
    cancel()
    const now = clock.now()
    if (!isLive(evening, now)) {
      stop()
      parts.ended()
      return
    }
    let next = Number.POSITIVE_INFINITY
    try {
      next = work(now)
    } catch (why) {
      log(`evening ${eveningId} could not be followed`, why)
    }
    lookedAt = now
    cancel = clock.after(Math.min(WAKE, Math.max(1, next - now)), look)
  }

  const stop = () => {
    stopped = true
    cancel()
  }

  cancel = clock.after(0, look)

  return {
    tell(next) {
      if (asked && JSON.stringify(next.night) !== JSON.stringify(evening.night)) asked = { ...asked, times: 0 }
      evening = next
      moments = null
      look()
    },
    order(next) {
      shown = { order: next, of: evening }
      moments = null
      look()
    },
    recent: () => {
      const since = clock.now() - RECENT
      return [...rung.values()].filter(({ firedAt }) => firedAt > since)
    },
    stop,
  }
}
