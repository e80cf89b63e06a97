import type { Evening } from '#lib/domain/evening.ts'
import { nightKey } from '#lib/domain/people.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import type { Fired } from '#lib/plan/wire.ts'
import type { Nights, Planner, Rooms } from '#server/live.ts'
import type { Clock } from '#server/sync/clock.ts'
import type { AlertStore } from './alert-store.ts'
import { isLive } from './is-live.ts'
import { type LiveNight, openLiveNight } from './live-night.ts'

interface Parts {
  readonly rooms: Pick<Rooms, 'hold' | 'release' | 'sendAlerts' | 'onPlan' | 'onClosed' | 'read'>
  readonly planner: Pick<Planner, 'again' | 'current' | 'onOrder'>
  readonly store: AlertStore
  readonly clock: Clock
  readonly log: (what: string, why: unknown) => void
}

/** An alarm that opens a night, or that a start of the server finds, is called for if it was told no longer ago. */
const FRESH = 60_000

/** The alarms that were not told yet when the evening read as before; null: when it was not followed. */
const newAlarms = (before: Evening | null, after: Evening, nowMs: number): readonly string[] => {
  const known = new Set(before?.night.map(nightKey))
  return after.night.flatMap((fact) =>
    'alarm' in fact && !known.has(nightKey(fact)) && (before !== null || msOfInstant(fact.at) > nowMs - FRESH)
      ? [nightKey(fact)]
      : [],
  )
}

/** An evening that has gone live: being opened while what has rung is looked up. */
interface Opened {
  night: LiveNight | null
  evening: Evening
}

export interface OpenNights extends Nights {
  /** Looks whether these evenings are live, as after a start. */
  look(eveningIds: readonly string[]): Promise<void>
}

/** Follows every evening of these rooms that is being cooked, from the first word of its night. */
export const startNights = ({ rooms, planner, store, clock, log }: Parts): OpenNights => {
  const nights = new Map<string, Opened>()
  const listeners: ((eveningId: string, fired: Fired) => void)[] = []
  const alarmListeners: Parameters<Nights['onAlarm']>[0][] = []
  let closed = false

  const ring = (eveningId: string, fired: readonly Fired[]) => {
    rooms.sendAlerts(eveningId, fired)
    for (const one of fired) for (const listener of listeners) passOn(eveningId, () => listener(eveningId, one))
  }

  const passOn = (eveningId: string, pass: () => void) => {
    try {
      pass()
    } catch (why) {
      log(`an alert of evening ${eveningId} was not passed on`, why)
    }
  }

  const callAlarms = (eveningId: string, before: Evening | null, after: Evening) => {
    for (const id of newAlarms(before, after, clock.now()))
      for (const listener of alarmListeners) passOn(eveningId, () => listener(eveningId, { id, cooks: [] }))
  }

  const end = (eveningId: string) => {
    nights.get(eveningId)?.night?.stop()
    nights.delete(eveningId)
    rooms.release(eveningId)
  }

  const open = async (eveningId: string, evening: Evening) => {
    const opened: Opened = { night: null, evening }
    nights.set(eveningId, opened)
    rooms.hold(eveningId)
    const rung = await store.load(eveningId).catch((why: unknown) => {
      log(`what has rung of evening ${eveningId} could not be read`, why)
      return []
    })
    if (closed || nights.get(eveningId) !== opened) return
    opened.night = openLiveNight(opened.evening, {
      eveningId,
      store,
      clock,
      rung,
      log,
      ring: (fired) => ring(eveningId, fired),
      again: () => planner.again(eveningId),
      ended: () => end(eveningId),
    })
    // Who came before this was looked up.
    const recent = opened.night.recent()
    if (recent.length > 0) rooms.sendAlerts(eveningId, recent)
    const message = await planner.current(eveningId, await rooms.read(eveningId))
    if (message.kind === 'order') opened.night.order(message.order)
  }

  const hear = (eveningId: string, evening: Evening) => {
    if (closed) return
    const known = nights.get(eveningId)
    if (known) {
      callAlarms(eveningId, known.evening, evening)
      known.evening = evening
      known.night?.tell(evening)
    } else if (isLive(evening, clock.now())) {
      callAlarms(eveningId, null, evening)
      open(eveningId, evening).catch((why: unknown) => log(`evening ${eveningId} is not followed`, why))
    }
  }

  rooms.onPlan(hear)
  rooms.onClosed(end)
  planner.onOrder((eveningId, order) => nights.get(eveningId)?.night?.order(order))

  return {
    isLive: (eveningId) => nights.has(eveningId),
    fired: (eveningId) => nights.get(eveningId)?.night?.recent() ?? [],
    onFire(listener) {
      listeners.push(listener)
    },
    onAlarm(listener) {
      alarmListeners.push(listener)
    },
    async look(eveningIds) {
      for (const eveningId of eveningIds) {
        if (closed || nights.has(eveningId)) continue
        try {
          hear(eveningId, await rooms.read(eveningId))
        } catch (why) {
          log(`whether evening ${eveningId} is being cooked could not be seen`, why)
        }
      }
    },
    async close() {
      closed = true
      for (const { night } of nights.values()) night?.stop()
    },
  }
}
