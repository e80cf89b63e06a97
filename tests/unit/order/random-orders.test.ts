import { expect, test } from 'vitest'
import { planEvening } from '#lib/order/engine.ts'
import { wrongSlack } from '#tests/support/check-slack.ts'
import { faults } from '#tests/support/checked-plan.ts'
import { randomEvening, SIZES } from '#tests/support/random-evening.ts'
import { randomNight } from '#tests/support/random-night.ts'

const seeds = (count: number): number[] => Array.from({ length: count }, (_, index) => index)

test.each(seeds(20))('O9 the order of a random evening contradicts neither itself nor the evening: seed %i', (seed) => {
  const evening = randomEvening(seed)
  expect(faults(evening, planEvening(evening, { budget: { steps: 150, seed: 1 } }))).toEqual([])
})

test.each(seeds(3))('O9 nor does that of a bigger one: seed %i', (seed) => {
  const evening = randomEvening(seed, SIZES.middle)
  expect(faults(evening, planEvening(evening, { budget: { steps: 150, seed: 1 } }))).toEqual([])
})

test.each(seeds(4))('O9 its steps may start as much later as they say, and no more: seed %i', (seed) => {
  const evening = randomEvening(seed)
  expect(wrongSlack(evening, planEvening(evening, { budget: { steps: 150, seed: 1 } }))).toEqual([])
})

test.each(seeds(12))('O9 nor that of a night with slips, planned again: seed %i', (seed) => {
  const before = randomEvening(seed)
  const previous = planEvening(before, { budget: { steps: 100, seed: 1 } })
  const { evening, now } = randomNight(before, previous, seed)
  expect(faults(evening, planEvening(evening, { budget: { steps: 100, seed: 1 }, now, previous }), now)).toEqual([])
})
