/** Time as the bridge knows it: the browser's own, or turned by hand in tests. */
export interface Timers {
  /** Runs once, `ms` from now, unless the answer is called before. */
  after(ms: number, run: () => void): () => void
  /** Milliseconds since 1970 by this device's clock. */
  now(): number
}

export const realTimers: Timers = {
  after(ms, run) {
    const timer = setTimeout(run, ms)
    return () => clearTimeout(timer)
  },
  now: () => Date.now(),
}
