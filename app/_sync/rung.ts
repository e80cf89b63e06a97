import type { Fired } from '#lib/plan/wire.ts'

type Listener = (alerts: readonly Fired[]) => void

/** What the server says has rung. */
export interface Rung {
  readonly hear: (alerts: readonly Fired[]) => void
  /** Calls at once with what is known already, then with what is new; gives what ends it. */
  readonly listen: (listener: Listener) => () => void
}

/** Each alert is told once, also when a connection that comes back brings it again. */
export const openRung = (): Rung => {
  const known = new Map<string, Fired>()
  const listeners = new Set<Listener>()
  return {
    hear(alerts) {
      const fresh = alerts.filter(({ id }) => !known.has(id))
      for (const alert of fresh) known.set(alert.id, alert)
      if (fresh.length > 0) for (const listener of listeners) listener(fresh)
    },
    listen(listener) {
      listeners.add(listener)
      if (known.size > 0) listener([...known.values()])
      return () => void listeners.delete(listener)
    },
  }
}
