import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Step, Way } from '#lib/domain/menu.ts'
import { type Dice, dice } from './dice.ts'
import { min } from './evening-builders.ts'
import { randomEvening, type Size } from './random-evening.ts'

/** How big the kitchens of the bench are. */
export const BENCH_SIZES = {
  small: { steps: 30, courses: 3, cooks: 2 },
  middle: { steps: 60, courses: 4, cooks: 3 },
  large: { steps: 120, courses: 6, cooks: 5 },
} as const satisfies Record<string, Size>
export type BenchSize = keyof typeof BENCH_SIZES

/**
 * A random evening whose cost a solver can prove: the cooks eat with the guests, have the same pace and are friends of the
 * hosts, who do not cook; few steps need only an eye: the short ones are stirred all the time, the long ones are looked at
 * now and then. The rest is as it was: ovens and rings wanted at once, vessels, ahead windows, claims, two cooks plating, a
 * friend who brings a dish.
 */
export const benchEvening = (seed: number, size: BenchSize): Evening => {
  const evening = randomEvening(seed, BENCH_SIZES[size])
  const d = dice(seed + 7_777)
  return {
    ...evening,
    cooks: evening.cooks.map((cook) => ({ ...cook, host: false, eats: true, pace: 1 })),
    steps: evening.steps.map((step) => watched(d, step, EYES[size])),
  }
}

/** Every second thing that is being done while an eye is kept on another doubles a proof's work. */
const EYES: Readonly<Record<BenchSize, number>> = { small: 0, middle: 0, large: 0 }
const LONG_S = 15 * 60

const watched = (d: Dice, step: Step, eyes: number): Step => ({
  ...step,
  ways: step.ways.map((way): Way => {
    if (way.care !== 'eye' || d.chance(eyes)) return way
    if (secondsOf(way.takes.likely) < LONG_S) return { ...way, care: 'hands-on' }
    return { ...way, care: 'leave', touches: [{ when: { every: min(8) }, takes: min(1), lateBy: min(4) }] }
  }),
})
