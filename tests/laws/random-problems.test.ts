import { isDeepStrictEqual } from 'node:util'
import { expect, test } from 'vitest'
import type { Problem } from '#lib/scheduling/problem.ts'
import { solve } from '#lib/scheduling/solve.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { bruteForce, TOO_BIG } from '#tests/support/brute-force.ts'
import { randomProblem } from '#tests/support/random-problem.ts'
import { activity, cook, mode, problem, serving } from '#tests/support/small-problem.ts'
import { complaint } from './accepted.ts'
import { holdsOnAll, seeds } from './seeds.ts'

test('S1 the verifier accepts every schedule of a random problem, and finds the same cost and broken wishes', () => {
  holdsOnAll(seeds(1, 900), (seed) => {
    const of = randomProblem(seed)
    return complaint(of, solve(of, { steps: 60, seed }))
  })
})

test('S1 a schedule that was kept, and a stop after any number of steps, are accepted too', () => {
  holdsOnAll(seeds(2001, 150), (seed) => {
    const of = randomProblem(seed)
    const before = solve(randomProblem(seed, 4), { steps: 30, seed })
    let asked = 0
    const stop = () => {
      asked += 1
      return asked > seed % 7
    }
    return complaint(of, solve(of, { steps: 60, seed, stop }, before))
  })
})

test('S2 the same problem, seed and steps give the same schedule', () => {
  holdsOnAll(seeds(1, 100), (seed) => {
    const of = randomProblem(seed)
    const again: Problem = JSON.parse(JSON.stringify(of))
    if (!isDeepStrictEqual(of, again)) return 'the problem changes when it is stored'
    const [one, two] = [solve(of, { steps: 80, seed }), solve(again, { steps: 80, seed })]
    if (!isDeepStrictEqual(JSON.parse(JSON.stringify(one)), one)) return 'the schedule changes when it is stored'
    return isDeepStrictEqual(one, two) ? null : 'two schedules'
  })
})

test('S3 there is always a schedule, however hopeless the problem', () => {
  const leave = mode('leave', 5)
  const hopeless: Record<string, Problem> = {
    empty: problem({}),
    'nobody there': problem({ activities: [activity('a', mode('hands-on', 3)), activity('b', mode('eye', 3))] }),
    'no kit': problem({ activities: [activity('a', mode('leave', 3, { uses: [{ kind: 'ring', size: 3 }] }))] }),
    'too many cooks wanted': problem({ cooks: [cook('ann')], activities: [activity('a', mode('hands-on', 3, { cooks: 3 }))] }),
    'a window too small': problem({ activities: [activity('a', leave, { from: 10, to: 12 })] }),
    'longer than the horizon': problem({ horizon: { from: 0, to: 4 }, activities: [activity('a', leave)] }),
    'a circle of lags': problem({
      activities: [activity('a', leave), activity('b', leave)],
      lags: [
        { from: 'a', edge: 'end', to: 'b', least: 1, bound: 'quality' },
        { from: 'b', edge: 'end', to: 'a', least: 1, bound: 'quality' },
      ],
    }),
    'past before it begins': problem({ now: 500, activities: [activity('a', leave)], servings: [serving('first')] }),
    'nothing but facts': problem({
      now: 50,
      activities: [
        activity('a', mode('hands-on', 3), { fact: { kind: 'done', start: 10, end: 30, cooks: ['ann'] } }),
        activity('b', mode('hands-on', 3), { fact: { kind: 'running', start: 20, atLeast: 9, cooks: ['ann'] } }),
      ],
      cooks: [cook('ann', { presence: [] })],
    }),
  }
  const complaints = Object.entries(hopeless).flatMap(([name, of]) => {
    const schedule = solve(of, { steps: 40, seed: 1 })
    const named = new Set([...schedule.placements, ...schedule.left].map(({ activity: id }) => id))
    const said = named.size === of.activities.length ? complaint(of, schedule) : 'something is neither placed nor named'
    return said === null ? [] : [`${name}: ${said}`]
  })
  expect(complaints).toEqual([])
})

/** Steps of the first try, which nearly always does, and of the second. */
const AMPLE = [2_000, 20_000]
/** Later seeds on which a search once stopped short of the minimum. */
const ONCE_DEARER = [150, 179, 195, 222, 228, 291, 435, 436, 442, 470, 502, 650, 653, 10204]
/** And one on which a serving was moved before a frozen step of it had ended. */
const ONCE_BROKEN = [797]

test('S4 on at most six activities the cost is that of brute force', () => {
  let compared = 0
  holdsOnAll(process.env.SEED === undefined ? [...seeds(1, 60), ...ONCE_DEARER, ...ONCE_BROKEN] : seeds(1, 1), (seed) => {
    const of = randomProblem(seed)
    const best = bruteForce(of, 6_000)
    if (best === TOO_BIG) return null
    compared += 1
    let apart = 0
    for (const steps of AMPLE) {
      const schedule = solve(of, { steps, seed })
      const said = complaint(of, schedule)
      if (said !== null) return said
      apart = verify(of, schedule).cost.total - best.cost.total
      if (Math.abs(apart) <= 1e-6) return null
    }
    return `${apart > 0 ? 'dearer' : 'cheaper'} than brute force by ${Math.abs(apart)}`
  })
  if (process.env.SEED === undefined) expect(compared).toBeGreaterThanOrEqual(50)
})
