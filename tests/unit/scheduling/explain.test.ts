import { expect, test } from 'vitest'
import { breaches } from '#lib/scheduling/breaches.ts'
import { type Explanation, explain } from '#lib/scheduling/explain.ts'
import type { Problem } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { dinner, fromStore, inOven, lag, onRing, oven, plan, ring, store } from '#tests/support/problem-builders.ts'
import { randomProblem } from '#tests/support/random-problem.ts'
import { activity, cook, mode } from '#tests/support/small-problem.ts'

const dish = { delivery: 'dish' }

const why = (of: Problem, id: string): Explanation => {
  const found = explain(of, plan(of)).get(id)
  if (!found) throw new Error(`${id} is not explained`)
  return found
}

test('S5 the last step is held by its course, the one before by what comes after it', () => {
  const of = dinner({
    cooks: [cook('ann'), cook('bo')],
    activities: [activity('a', mode('hands-on', 5), { ...dish, to: 80 }), activity('b', mode('hands-on', 5), dish)],
    lags: [lag('a', 'b', { least: 12 })],
  })
  expect(why(of, 'b')).toEqual({ slack: 0, because: [{ kind: 'serving', serving: 'main' }] })
  expect(why(of, 'a')).toEqual({ slack: 0, because: [{ kind: 'window' }] })
})

test('S5 a lag, a cook, a ring, a worktop and an oven are named with who has them next', () => {
  const cause = (parts: Partial<Problem>) => why(dinner(parts), 'a').because
  const first = (only: Parameters<typeof mode>[2], care: 'leave' | 'hands-on' = 'leave') =>
    activity('a', mode(care, 10, only), { ...dish, to: 90 })
  const then = (only: Parameters<typeof mode>[2], care: 'leave' | 'hands-on' = 'leave') =>
    activity('b', mode(care, 20, only), { ...dish, from: 80 })
  expect(cause({ activities: [first({}), then({})], lags: [lag('a', 'b')] })).toEqual([{ kind: 'after', activity: 'b' }])
  expect(cause({ cooks: [cook('ann')], activities: [first({}, 'hands-on'), then({}, 'hands-on')] })).toEqual([
    { kind: 'cook', cook: 'ann', activity: 'b' },
  ])
  expect(cause({ kit: [ring(1)], activities: [first({ uses: [onRing()] }), then({ uses: [onRing()] })] })).toEqual([
    { kind: 'kit', kit: 'ring-1', activity: 'b' },
  ])
  const top = [fromStore('worktop', 2)]
  expect(cause({ kit: [store('worktop', 3)], activities: [first({ uses: top }), then({ uses: top })] })).toEqual([
    { kind: 'kit', kit: 'worktop', activity: 'b' },
  ])
  expect(cause({ kit: [oven()], activities: [first({ uses: [inOven(180, 200)] }), then({ uses: [inOven(100, 150)] })] })).toEqual(
    [{ kind: 'oven', kit: 'oven', activity: 'b' }],
  )
})

test('S5 a cook who leaves is named', () => {
  const of = dinner({
    cooks: [cook('ann', { presence: [{ place: 'home', from: 0, to: 70 }] })],
    activities: [activity('a', mode('hands-on', 10), dish)],
  })
  expect(why(of, 'a')).toEqual({ slack: 0, because: [{ kind: 'presence', cook: 'ann' }] })
})

test('S5 what is done is where it is because it happened', () => {
  const of = dinner({
    now: 50,
    activities: [activity('a', mode('leave', 10), { ...dish, fact: { kind: 'done', start: 20, end: 30 } })],
  })
  expect(why(of, 'a')).toEqual({ slack: 0, because: [{ kind: 'now' }] })
})

/** The schedule with one placement so much later: what waits for it waits less long. */
const later = (of: Problem, made: Schedule, id: string, by: number): Schedule => {
  const placements = made.placements
    .map((one) =>
      one.activity === id
        ? {
            ...one,
            start: one.start + by,
            end: one.end + by,
            touches: one.touches.map((touch) => ({ ...touch, at: touch.at + by })),
          }
        : one,
    )
    .sort((a, b) => a.start - b.start || (a.activity < b.activity ? -1 : 1))
  const deliveryOf = new Map(of.activities.map((one) => [one.id, one.delivery]))
  const keeping = made.keeping
    .map((keep) => {
      const own = placements.filter((one) => deliveryOf.get(one.activity) === keep.delivery)
      return { ...keep, from: Math.max(...own.map((one) => one.end)) }
    })
    .filter((keep) => keep.from < keep.to)
  return { ...made, placements, keeping }
}

test('S5 in random problems every placement may start as much later as its slack, and not a tick more', () => {
  let judged = 0
  for (let seed = 1; seed <= 30; seed++) {
    const of = randomProblem(seed)
    const made = plan(of, 60)
    const broken = (schedule: Schedule) => breaches(of, schedule).reduce((sum, breach) => sum + breach.by, 0)
    const before = broken(made)
    const explained = explain(of, made)
    for (const { activity: id } of made.placements) {
      const found = explained.get(id)
      expect(found?.because.length, `${seed} ${id}`).toBeGreaterThan(0)
      if (!found || of.activities.find((one) => one.id === id)?.fact) continue
      const breaks = (by: number) => {
        const moved = later(of, made, id, by)
        return verify(of, moved).violations.length > 0 || broken(moved) > before
      }
      for (let by = 1; by <= found.slack; by++) expect(breaks(by), `seed ${seed} ${id} by ${by}`).toBe(false)
      expect(breaks(found.slack + 1), `seed ${seed} ${id} past its slack`).toBe(true)
      judged++
    }
  }
  expect(judged).toBeGreaterThan(50)
})
