import { expect, test } from 'vitest'
import type { Problem } from '#lib/scheduling/problem.ts'
import type { GoalName, Schedule } from '#lib/scheduling/schedule.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { activity, cook, delivery, mode, placed, problem, schedule, serving } from '#tests/support/small-problem.ts'

/** One goal's price of a schedule that breaks no rule. */
const price = (goal: GoalName, of: Problem, good: Schedule): number => {
  const verdict = verify(of, good)
  expect(verdict.violations).toEqual([])
  expect(verdict.cost.total).toBeCloseTo(
    Object.values(verdict.cost.goals).reduce((sum, each) => sum + each),
    9,
  )
  return verdict.cost.goals[goal]
}
const first = serving('first', { role: { kind: 'first', sitDown: 60 }, earliest: 60 })
const last = serving('last', { wait: { ideal: [4, 10], most: 20 } })
const served = (...at: [string, number][]) => ({ servings: at.map(([id, toTable]) => ({ serving: id, toTable })) })

test('C1 safe: the price of each activity left out', () => {
  const evening = problem({ activities: [activity('a', mode('leave', 4)), activity('b', mode('leave', 4))] })
  const left = (...ids: string[]) => ids.map((id) => ({ activity: id, because: 'no-kit' as const }))
  expect(price('safe', evening, schedule([placed('a', 0, 4), placed('b', 0, 4)]))).toBe(0)
  expect(price('safe', evening, schedule([placed('a', 0, 4)], { left: left('b') }))).toBe(1_000_000)
  expect(price('safe', evening, schedule([], { left: left('a', 'b') }))).toBe(2_000_000)
})

test('C2 on-time: each tick of the first serving after sit-down', () => {
  const evening = problem({ servings: [first, last] })
  expect(price('on-time', evening, schedule([], served(['first', 60], ['last', 80])))).toBe(0)
  expect(price('on-time', evening, schedule([], served(['first', 63], ['last', 80])))).toBe(6_000)
})

test('C3 waits: outside the ideal at one price, above the most at another on top', () => {
  const evening = problem({ servings: [first, last] })
  const waiting = (wait: number) => price('waits', evening, schedule([], served(['first', 60], ['last', 72 + wait])))
  expect([1, 4, 10, 13, 22].map(waiting)).toEqual([3 * 40, 0, 0, 3 * 40, 12 * 40 + 2 * 600])
  const welcome = serving('welcome', { role: { kind: 'welcome', latest: 60 }, earliest: 10, wait: { ideal: [0, 10], most: 20 } })
  const guests = problem({ servings: [welcome, first] })
  expect(price('waits', guests, schedule([], served(['welcome', 25], ['first', 60])))).toBe(5 * 40)
})

test('C4 keeping: each tick of a broken lag, keeping or carry', () => {
  const evening = problem({
    servings: [first],
    activities: [activity('boil', mode('leave', 10)), activity('fry', mode('leave', 10), { delivery: 'fish' })],
    lags: [{ from: 'boil', edge: 'end', to: 'fry', least: 0, most: 5, bound: 'quality' }],
    deliveries: [delivery('fish', 'first', { early: 0 })],
  })
  const at = (boil: number, fry: number) =>
    schedule([placed('boil', boil, boil + 10), placed('fry', fry, fry + 10)], {
      ...served(['first', 60]),
      keeping: [{ delivery: 'fish', from: fry + 10, to: 60, kit: [] }],
    })
  expect(price('keeping', evening, at(15, 30))).toBe(0)
  expect(price('keeping', evening, at(2, 28))).toBe(300 * (11 + 2))
})

const hosts = [cook('ann', { host: true, eats: true }), cook('bo', { host: true, eats: true })]
const courses = (parts: Partial<Problem>, ...works: [id: string, start: number, length: number, by: string[]][]) => {
  const made = works.map(([id, , length, by]) => activity(id, mode('hands-on', length, { cooks: by.length })))
  const evening = problem({ cooks: hosts, servings: [first, last], activities: made, ...parts })
  const placements = works.map(([id, start, length, by]) => placed(id, start, start + length, { cooks: by }))
  return [evening, schedule(placements, served(['first', 60], ['last', 80]))] as const
}

test('C5 table: minutes missed between the first and the last serving, and the most that one cook misses', () => {
  expect(price('table', ...courses({}, ['a', 50, 10, ['ann']]))).toBe(0)
  expect(price('table', ...courses({}, ['a', 55, 10, ['ann']], ['b', 66, 8, ['bo']]))).toBe(10 * 13 + 5 * 9 + 5 * 8)
  const helper = { cooks: [cook('ann'), ...hosts.slice(1)] }
  expect(price('table', ...courses(helper, ['a', 55, 10, ['ann']], ['b', 66, 8, ['bo']]))).toBe(10 * 8 + 5 * 4 + 5 * 8 + 10 * 8)
})

test('C5 table: to be up between courses costs less than to be up while people eat', () => {
  const at = (start: number) => price('table', ...courses({}, ['a', start, 4, ['ann']]))
  expect([60, 66, 68, 70, 76].map(at)).toEqual([4, 4, 2, 0, 0].map((eating) => 15 * 4 + 5 * eating))
})

test('C5 table: nobody eats at the table during the welcome or after the last serving', () => {
  const welcome = serving('welcome', {
    role: { kind: 'welcome', latest: 60 },
    earliest: 10,
    eating: 60,
    wait: { ideal: [0, 50], most: 50 },
  })
  const work = activity('a', mode('hands-on', 30))
  const evening = problem({ cooks: hosts, servings: [welcome, { ...first, eating: 0, clearing: 0 }, last], activities: [work] })
  const at = (start: number) =>
    price(
      'table',
      evening,
      schedule([placed('a', start, start + 30, { cooks: ['ann'] })], served(['welcome', 10], ['first', 72], ['last', 90])),
    )
  expect([20, 65, 90].map(at)).toEqual([0, 15 * 18, 0])
})

test('C5 table: what is done at the table is not missed, an eye and a touch elsewhere are, each moment once', () => {
  const roast = mode('leave', 30, { touches: [{ when: 'out', takes: 2, lateBy: 6 }] })
  const activities = [
    activity('roast', roast),
    activity('watch', mode('eye', 6)),
    activity('carve', mode('hands-on', 5), { at: 'table' }),
  ]
  const evening = problem({ cooks: [cook('ann', { eats: true })], servings: [first, last], activities })
  const good = schedule(
    [
      placed('roast', 35, 65, { touches: [{ touch: 0, at: 65, cook: 'ann' }] }),
      placed('watch', 62, 68, { cooks: ['ann'] }),
      placed('carve', 70, 75, { cooks: ['ann'] }),
    ],
    served(['first', 60], ['last', 80]),
  )
  expect(price('table', evening, good)).toBe((15 + 5) * 6)
})

test('C5 table: all hosts away, but for short stretches in which plating runs', () => {
  const both = (length: number, plating: boolean) => {
    const [evening, good] = courses({}, ['plate', 61, length, ['ann', 'bo']])
    return price('table', { ...evening, activities: evening.activities.map((one) => ({ ...one, plating })) }, good)
  }
  const missed = (length: number) => 10 * 2 * length + 5 * 2 * 9 + 5 * length
  expect(both(12, true)).toBe(missed(12))
  expect(both(12, false)).toBe(missed(12) + 10 * 12)
  expect(both(13, true)).toBe(missed(13) + 10 * 13)
})

test('C5 table: plating that the lead of its serving is not at', () => {
  const plate = activity('plate', mode('hands-on', 4), { plating: true, delivery: 'pie' })
  const evening = problem({
    cooks: [cook('ann'), cook('bo')],
    servings: [{ ...first, lead: 'bo' }],
    activities: [plate],
    deliveries: [delivery('pie', 'first')],
  })
  const by = (one: string) => schedule([placed('plate', 56, 60, { cooks: [one] })], served(['first', 60]))
  expect(price('table', evening, by('bo'))).toBe(0)
  expect(price('table', evening, by('ann'))).toBe(20)
})

test('C6 calm: hands-on ticks and touches of everybody in the hour before the first serving', () => {
  const late = serving('first', { role: { kind: 'first', sitDown: 150 }, earliest: 150 })
  const activities = [
    activity('early', mode('hands-on', 10)),
    activity('watch', mode('eye', 10)),
    activity('roast', mode('leave', 10, { touches: [{ when: 'in', takes: 2, lateBy: 0 }] })),
  ]
  const evening = problem({ cooks: [cook('ann')], servings: [late], activities })
  const good = schedule(
    [
      placed('early', 25, 35, { cooks: ['ann'] }),
      placed('watch', 40, 50, { cooks: ['ann'] }),
      placed('roast', 60, 70, { touches: [{ touch: 0, at: 60, cook: 'ann' }] }),
    ],
    served(['first', 150]),
  )
  expect(price('calm', evening, good)).toBe(5 + 2)
})

test('C7 fresh: a hundredth for each tick that an activity of a delivery ends early, facts excepted', () => {
  const activities = [
    activity('soak', mode('leave', 10), { delivery: 'beans', fact: { kind: 'done', start: 0, end: 5 } }),
    activity('boil', mode('leave', 10), { delivery: 'beans' }),
    activity('sweep', mode('leave', 10)),
  ]
  const evening = problem({ servings: [first], activities, deliveries: [delivery('beans', 'first', { early: 60 })] })
  const good = schedule([placed('soak', 0, 5), placed('sweep', 10, 20), placed('boil', 20, 30)], served(['first', 60]))
  expect(price('fresh', evening, good)).toBeCloseTo(0.3, 9)
})

test('C8 unchanged: each planned activity whose start, mode or cooks are not as told, ten times when frozen', () => {
  const told = (parts: object) => [{ activity: 'peel', start: 10, mode: 0, cooks: ['ann', 'bo'], frozen: false, ...parts }]
  const peel = { ...activity('peel', mode('hands-on', 5, { cooks: 2 })) }
  const evening = (parts: object = {}) =>
    problem({
      cooks: [cook('ann'), cook('bo'), cook('cy')],
      activities: [{ ...peel, modes: [...peel.modes, ...peel.modes] }],
      previous: told(parts),
    })
  const at = (start: number, parts: object = {}) =>
    schedule([placed('peel', start, start + 5, { cooks: ['bo', 'ann'], ...parts })])
  expect(price('unchanged', evening(), at(10))).toBe(0)
  expect(price('unchanged', evening(), at(11))).toBe(15)
  expect(price('unchanged', evening(), at(10, { mode: 1 }))).toBe(15)
  expect(price('unchanged', evening(), at(10, { cooks: ['ann', 'cy'] }))).toBe(15)
  expect(price('unchanged', evening({ frozen: true }), at(11))).toBe(150)
})
