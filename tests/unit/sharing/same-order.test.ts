import { expect, test } from 'vitest'
import type { Evening } from '#lib/domain/evening.ts'
import type { Claim } from '#lib/domain/people.ts'
import { planEvening } from '#lib/order/engine.ts'
import { claimsAfter } from '#lib/plan/claims-after.ts'
import { mostHands, orderKeeps } from '#lib/sharing/same-order.ts'
import { fixedSeeds } from '#tests/laws/seeds.ts'
import { claim, cook, cooks, course, dish, evening, follows, leave, step } from '#tests/support/evening-builders.ts'
import { randomEvening } from '#tests/support/random-evening.ts'

const dinner: Evening = evening(
  { cooks: ['ann', 'ben', 'cas'].map((id) => cook(id)) },
  course(
    'main',
    dish('pie', step('rest', 60, leave), step('cut', 10, follows('rest')), step('plate', 5, cooks(2), follows('cut'))),
  ),
)
const order = planEvening(dinner, { budget: { steps: 200, seed: 1 }, quick: true })
const cuts = order.cues.find((cue) => cue.step === 'cut')?.cooks[0] ?? ''
const plates = order.cues.find((cue) => cue.step === 'plate')?.cooks ?? []
const without = (those: readonly string[]): string => dinner.cooks.map(({ id }) => id).find((id) => !those.includes(id)) ?? ''
const keeps = (...claims: Claim[]): boolean => orderKeeps(dinner, order, claims)

test('U34 an order keeps what it gives to a cook anyway, and nothing else', () => {
  expect(plates).toHaveLength(2)
  expect(keeps(claim('cut', cuts))).toBe(true)
  expect(keeps(claim('cut', without([cuts])))).toBe(false)
  expect(keeps(claim('rest', without([cuts])))).toBe(true)
  expect(keeps(claim('plate', plates[1] ?? '', plates[0] ?? ''))).toBe(true)
  expect(keeps(claim('plate', plates[0] ?? '', without(plates)))).toBe(false)
  // The nearest claim counts: what the pie's cook does not do is somebody else's.
  expect(keeps(claim('pie', without(plates)), claim('cut', cuts), claim('plate', plates[0] ?? ''))).toBe(true)
})

test('U34 planning again from an order that keeps a claim is no dearer', () => {
  let kept = 0
  const broken = fixedSeeds(1, 4).flatMap((seed) => {
    const made = randomEvening(seed)
    const before = planEvening(made, { budget: { steps: 300, seed: 1 }, quick: true })
    const asker = { role: 'host' as const, cook: null }
    return made.dishes.flatMap(({ id: target }) => {
      if (made.claims.some((each) => each.target === target)) return []
      const wish = made.cooks
        .map(({ id }) => ({ kind: 'claim' as const, target, cook: id }))
        .find((each) => orderKeeps(made, before, claimsAfter(made, asker, [each])))
      if (!wish) return []
      kept++
      const claimed = { ...made, claims: [...claimsAfter(made, asker, [wish])] }
      const after = planEvening(claimed, { budget: { steps: 1, seed: 1 }, quick: true, hint: before })
      return after.total > before.total + 1e-6 ? [`seed ${seed}: ${target} costs ${after.total - before.total}`] : []
    })
  })
  expect(kept).toBeGreaterThan(5)
  expect(broken).toEqual([])
})

test('U33 as many as ever stand at one of its steps may have a thing together', () => {
  expect(['rest', 'cut', 'plate', 'pie', 'main'].map((target) => mostHands(dinner, target))).toEqual([1, 1, 2, 2, 2])
})
