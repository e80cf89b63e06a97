import type { Clock } from '#server/sync/clock.ts'

interface Alarm {
  at: number
  readonly every: number | null
  readonly work: () => void
}

/** A clock that stands still until it is cranked. */
export interface HandClock extends Clock {
  /** Moves on by so many milliseconds and rings what is due, in order. */
  advance(ms: number): void
  /** Somebody sets it: no time passes, and alarms ring as long after as they would have. */
  set(ms: number): void
  /** The process that set the alarms has died. */
  forget(): void
}

/** When it begins, in milliseconds since 1970. */
export const START = 1_800_000_000_000

export const handClock = (start = START): HandClock => {
  const alarms = new Set<Alarm>()
  let now = start
  const arm = (alarm: Alarm) => {
    alarms.add(alarm)
    return () => void alarms.delete(alarm)
  }
  return {
    now: () => now,
    after: (ms, work) => arm({ at: now + ms, every: null, work }),
    every: (ms, work) => arm({ at: now + ms, every: ms, work }),
    set(ms) {
      const by = ms - now
      now = ms
      for (const alarm of alarms) alarm.at += by
    },
    forget: () => alarms.clear(),
    advance(ms) {
      const end = now + ms
      for (;;) {
        const due = [...alarms].filter((alarm) => alarm.at <= end).toSorted((a, b) => a.at - b.at)[0]
        if (!due) break
        now = Math.max(now, due.at)
        if (due.every === null) alarms.delete(due)
        else due.at += due.every
        due.work()
      }
      now = end
    },
  }
}
