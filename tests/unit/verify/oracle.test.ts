import { expect, test } from 'vitest'
import type { Problem } from '#lib/scheduling/problem.ts'
import type { Keeping, Placement, Schedule } from '#lib/scheduling/schedule.ts'
import { sceneOf } from '#lib/scheduling/verify/scene.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { fits } from '#tests/support/brute-fits.ts'
import { bruteForce, TOO_BIG } from '#tests/support/brute-force.ts'
import { momentsOf } from '#tests/support/brute-moments.ts'
import { optionOf } from '#tests/support/brute-option.ts'
import { kitChoices, placementsOf, product } from '#tests/support/brute-options.ts'
import { dice } from '#tests/support/dice.ts'
import { randomProblem } from '#tests/support/random-problem.ts'
import { schedule } from '#tests/support/small-problem.ts'

const inOrder = (a: Placement, b: Placement): number => a.start - b.start || (a.activity < b.activity ? -1 : 1)

/** The minimum by trying everything, without any cutting: for the smallest problems. Null when there is too much. */
const plainMinimum = (problem: Problem, most: number): number | null => {
  const choices = problem.activities.map((activity) => [
    ...placementsOf(problem, activity),
    ...(activity.fact ? [] : [{ left: activity.id }]),
  ])
  const moments = momentsOf(problem)
  if (choices.reduce((count, list) => count * list.length, moments.length) > most) return null
  let least = Number.POSITIVE_INFINITY
  for (const { servings } of moments)
    for (const chosen of product(choices)) {
      const bare: Schedule = schedule(chosen.flatMap((one) => ('left' in one ? [] : [one])).sort(inOrder), {
        servings,
        left: chosen.flatMap((one) => ('left' in one ? [{ activity: one.left, because: 'safety' as const }] : [])),
      })
      const { cost } = verify(problem, bare)
      if (cost.total < least && keepings(problem, bare).some((keeping) => isGood(problem, { ...bare, keeping })))
        least = cost.total
    }
  return least
}

const isGood = (problem: Problem, of: Schedule): boolean => verify(problem, of).violations.length === 0

const keepings = (problem: Problem, bare: Schedule): Keeping[][] =>
  product(
    sceneOf(problem, bare)
      .delivered.filter(({ ready, arrival }) => ready < arrival)
      .map(({ delivery, ready: from, arrival: to, happened, served }) => {
        const kits = kitChoices(problem.kit, delivery.keeps.uses, delivery.keeps.place)
        const orNone = kits.length === 0 && (happened || !served.planned) ? [[]] : kits
        return orNone.map((kit) => ({ delivery: delivery.id, from, to, kit }))
      }),
  )

test('brute force finds what trying everything without cutting finds', () => {
  let compared = 0
  for (let seed = 5000; seed < 5120; seed += 1) {
    const problem = randomProblem(seed, 2)
    const plain = plainMinimum(problem, 2_500)
    if (plain === null) continue
    const best = bruteForce(problem)
    if (best === TOO_BIG) throw new Error(`seed ${seed} is too big`)
    expect(best.cost.total, `seed ${seed}`).toBeCloseTo(plain, 6)
    compared += 1
  }
  expect(compared).toBeGreaterThan(30)
})

test('two options that brute force will not put together are refused together by the verifier', () => {
  let refused = 0
  for (let seed = 6000; seed < 6150; seed += 1) {
    const problem = randomProblem(seed)
    const [a, b] = dice(seed).some(problem.activities, 2)
    if (!a || !b) continue
    const options = [a, b].map((activity, of) =>
      placementsOf(problem, activity).map((placement) => optionOf(problem, of, activity, placement)),
    )
    const d = dice(seed)
    for (let pair = 0; pair < 20; pair += 1) {
      const [one, two] = options.map((list) => (list.length > 0 ? d.pick(list) : undefined))
      if (!one?.placement || !two?.placement || fits(problem, one, two)) continue
      const both = { ...problem, activities: [a, b], servings: [], deliveries: [] }
      const { violations } = verify(both, schedule([one.placement, two.placement].sort(inOrder)))
      const told = violations.filter(({ activities, why }) => activities.length === 2 || why.what === 'ramp')
      expect(told.length, `seed ${seed} ${JSON.stringify([one.placement, two.placement])}`).toBeGreaterThan(0)
      refused += 1
    }
  }
  expect(refused).toBeGreaterThan(300)
})
