import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Way } from '#lib/domain/menu.ts'
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
 * A random evening whose cost a solver can prove. The cooks eat with the guests, have the same pace and are friends of the
 * hosts, who do not cook; every course is wanted eight minutes after the plates of the one before; nothing needs only an eye:
 * what is short is stirred all the time, what is long is left alone. The rest is as it was: ovens and rings wanted at once,
 * vessels, ahead windows, claims, two cooks plating, a friend who brings a dish.
 */
export const benchEvening = (seed: number, size: BenchSize): Evening => {
  const evening = randomEvening(seed, BENCH_SIZES[size])
  return {
    ...evening,
    cooks: evening.cooks.map((cook) => ({ ...cook, host: false, eats: true, pace: 1 })),
    courses: evening.courses.map((course) => ({ ...course, wait: { ...course.wait, ideal: [min(8), min(8)] } })),
    steps: evening.steps.map((step) => ({ ...step, ways: step.ways.map(simple) })),
  }
}

const LONG_S = 15 * 60

const simple = (way: Way): Way => {
  if (way.care === 'hands-on') return way
  if (way.care === 'eye' && secondsOf(way.takes.likely) < LONG_S) return { ...way, care: 'hands-on' }
  return { ...way, care: 'leave', touches: way.touches.filter(({ when }) => typeof when === 'string') }
}
