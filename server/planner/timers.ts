/** Time as the planner knows it: the server's own, or turned by hand in tests. */
export interface Timers {
  /** Runs once, `ms` from now, unless the answer is called before. */
  after(ms: number, run: () => void): () => void
  /** Milliseconds since some fixed moment, never backwards. */
  now(): number
}

export const realTimers: Timers = {
  after(ms, run) {
    const timer = setTimeout(run, ms)
    return () => clearTimeout(timer)
  },
  now: () => performance.now(),
}
