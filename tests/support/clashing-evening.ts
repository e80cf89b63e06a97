import { durationOf, secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Kit } from '#lib/domain/kitchen.ts'
import type { After } from '#lib/domain/menu.ts'
import { dice } from './dice.ts'
import { randomEvening } from './random-evening.ts'

/**
 * A small random dinner in which wishes often fight: little waits, little keeps, and there is less kit than one would like.
 * The same seed gives the same evening; it passes `parseEvening`. Not every one has a clash.
 */
export const clashingEvening = (seed: number): Evening => {
  const d = dice(seed * 7919 + 13)
  const of = randomEvening(seed, { steps: d.int(9, 14), courses: d.int(1, 2), cooks: d.pick([1, 1, 2, 3]) })
  const tight = d.pick([0, 0, 0.15])
  const shorter = (most: string): string => durationOf(Math.floor((secondsOf(most) * tight) / 60) * 60)
  const tightened = (after: After): After => {
    if (after.most === undefined || after.kind === 'safety' || secondsOf(after.most) > 3 * 3600) return after
    return { ...after, most: secondsOf(shorter(after.most)) < secondsOf(after.least) ? after.least : shorter(after.most) }
  }
  const kitOf = (kit: Kit): Kit[] => {
    if (kit.kind === 'ring') return kit.size === 'small' && d.chance(0.5) ? [] : [{ ...kit, count: 1 }]
    if (kit.kind === 'oven') return [{ ...kit, shelves: d.int(1, 2), maxC: d.pick([200, 250]) }]
    return [kit]
  }
  return {
    ...of,
    id: `clashing-${seed}`,
    kitchens: of.kitchens.map((kitchen) => ({ ...kitchen, kit: kitchen.kit.flatMap(kitOf) })),
    courses: of.courses.map((course) => ({ ...course, wait: { ideal: ['PT0S', 'PT5M'], most: 'PT8M' } })),
    dishes: of.dishes.map((dish) => ({
      ...dish,
      toTable: { early: 'PT0S', late: 'PT0S' },
      keeps: dish.keeps.kind === 'safety' ? dish.keeps : { ...dish.keeps, most: shorter(dish.keeps.most) },
    })),
    steps: of.steps.map((step) => ({ ...step, after: step.after.map(tightened) })),
  }
}
