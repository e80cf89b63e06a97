/** A clock that runs at a chosen speed beside a real one. */
export interface PlayClock {
  /** Milliseconds since 1970, as the evening that is played has it. */
  readonly now: () => number
  readonly speed: () => number
  readonly isPaused: () => boolean
  readonly setSpeed: (speed: number) => void
  readonly pause: (isPaused: boolean) => void
  /** Goes on from another moment. */
  readonly jump: (toMs: number) => void
}

export const openPlayClock = (real: () => number, startMs: number, firstSpeed: number): PlayClock => {
  let [fromMs, sinceReal, speed, isPaused] = [startMs, real(), firstSpeed, false]
  const now = () => (isPaused ? fromMs : fromMs + (real() - sinceReal) * speed)
  const goOn = (ms: number) => {
    fromMs = ms
    sinceReal = real()
  }
  return {
    now,
    speed: () => speed,
    isPaused: () => isPaused,
    setSpeed(next) {
      goOn(now())
      speed = next
    },
    pause(next) {
      goOn(now())
      isPaused = next
    },
    jump: goOn,
  }
}
