/** The server's clock and alarms; tests crank their own by hand. */
export interface Clock {
  /** Milliseconds since 1970. */
  now(): number
  /** Calls back once; gives what calls it off. */
  after(ms: number, work: () => void): () => void
  every(ms: number, work: () => void): () => void
}

export const systemClock: Clock = {
  now: () => Date.now(),
  after: (ms, work) => {
    const timer = setTimeout(work, ms)
    timer.unref()
    return () => clearTimeout(timer)
  },
  every: (ms, work) => {
    const timer = setInterval(work, ms)
    timer.unref()
    return () => clearInterval(timer)
  },
}
