import type { Presence } from '#lib/domain/kitchen.ts'
import { presenceFault } from '#lib/domain/presence.ts'
import type { EveningClock } from '#lib/domain/time.ts'

const TRIES = [
  [0, '09:00', '12:00'],
  [-1, '17:00', '22:00'],
  [-1, '09:00', '12:00'],
  [0, '13:00', '23:00'],
  [-2, '17:00', '22:00'],
  [-3, '17:00', '22:00'],
  [-4, '17:00', '22:00'],
  [-5, '17:00', '22:00'],
  [-6, '17:00', '22:00'],
  [-7, '17:00', '22:00'],
  [1, '09:00', '12:00'],
] as const

/** Likely hours in which a cook is not there yet: on the day, then the evenings before it. Null when there are none. */
export const freeHours = (clock: EveningClock, kitchen: string, presence: readonly Presence[]): Presence | null => {
  for (const [day, from, to] of TRIES) {
    const hours = { kitchen, from: { day, time: from }, to: { day, time: to } }
    if (presenceFault(clock, [...presence, hours]) === null) return hours
  }
  return null
}
