import type { At } from '#lib/domain/atoms.ts'
import { type EveningClock, tickOf } from '#lib/domain/time.ts'

export type TickOf = (at: At, round: 'up' | 'down') => number

/** Calendar arithmetic takes 0.1 ms a time, a plan names few different times, and every edit asks for all of them again. */
const known = new Map<string, number>()
const MOST_KNOWN = 20_000

/** `tickOf` of one evening's clock. */
export const tickReader =
  (clock: EveningClock): TickOf =>
  (at, round) => {
    const key = `${clock.date} ${clock.zone} ${at.day} ${at.time} ${round}`
    const found = known.get(key)
    if (found !== undefined) return found
    const tick = tickOf(clock, at, round)
    if (known.size >= MOST_KNOWN) known.clear()
    known.set(key, tick)
    return tick
  }
