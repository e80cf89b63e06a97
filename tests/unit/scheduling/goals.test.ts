import { expect, test } from 'vitest'
import { breaches } from '#lib/scheduling/breaches.ts'
import { cost } from '#lib/scheduling/cost.ts'
import { calm } from '#lib/scheduling/goals/calm.ts'
import { fresh } from '#lib/scheduling/goals/fresh.ts'
import { keeping } from '#lib/scheduling/goals/keeping.ts'
import { onTime } from '#lib/scheduling/goals/on-time.ts'
import { safe } from '#lib/scheduling/goals/safe.ts'
import { table } from '#lib/scheduling/goals/table.ts'
import { unchanged } from '#lib/scheduling/goals/unchanged.ts'
import { waits } from '#lib/scheduling/goals/waits.ts'
import type { Problem } from '#lib/scheduling/problem.ts'
import { GOALS } from '#lib/scheduling/schedule.ts'
import { lag } from '#tests/support/problem-builders.ts'
import { activity, cook, delivery, mode, placed, problem, schedule, serving } from '#tests/support/small-problem.ts'

/** Two courses, at 100 and 150, and two hosts who eat. */
const evening = (parts: Partial<Problem> = {}): Problem =>
  problem({
    cooks: [cook('ann', { host: true, eats: true }), cook('bo', { host: true, eats: true })],
    servings: [serving('one', { role: { kind: 'first', sitDown: 100 } }), serving('two', { eating: 30, clearing: 10 })],
    deliveries: [delivery('soup', 'one'), delivery('roast', 'two')],
    ...parts,
  })

const moments = (one: number, two: number) => ({
  servings: [
    { serving: 'one', toTable: one },
    { serving: 'two', toTable: two },
  ],
})

const work = (id: string, length: number, parts = {}) => activity(id, mode('hands-on', length), parts)

test('C1 each thing left out is unsafe, and each touch that nobody comes to', () => {
  const of = evening({
    now: 50,
    activities: [
      work('a', 5),
      activity('b', mode('leave', 20, { touches: [{ when: 'out', takes: 1, lateBy: 0 }] }), {
        fact: { kind: 'running', start: 45, atLeast: 20 },
      }),
    ],
  })
  const made = schedule([placed('b', 45, 65)], { ...moments(100, 150), left: [{ activity: 'a', because: 'no-cook' }] })
  expect(safe(of, made)).toBe(2 * of.weights.left)
})

test('C2 the first course is late by each tick after sit-down', () => {
  expect(onTime(evening(), schedule([], moments(100, 150)))).toBe(0)
  expect(onTime(evening(), schedule([], moments(103, 150)))).toBe(3 * 2000)
})

test('C3 a wait costs what lies outside the ideal, and more above the most', () => {
  const wait = (two: number) => waits(evening(), schedule([], moments(100, two)))
  expect(wait(112)).toBe(0)
  expect(wait(122)).toBe(0)
  expect(wait(125)).toBe(3 * 40)
  expect(wait(135)).toBe(13 * 40 + 3 * 600)
})

test('C3 the welcome waits from when the guests come', () => {
  const of = evening({
    servings: [
      serving('hello', { role: { kind: 'welcome', latest: 90 }, earliest: 60, wait: { ideal: [4, 10], most: 12 } }),
      serving('one', { role: { kind: 'first', sitDown: 100 } }),
    ],
  })
  const wait = (hello: number) =>
    waits(
      of,
      schedule([], {
        servings: [
          { serving: 'hello', toTable: hello },
          { serving: 'one', toTable: 100 },
        ],
      }),
    )
  expect([wait(60), wait(64), wait(73)]).toEqual([4 * 40, 0, 3 * 40 + 600])
})

test('C4 W1 W2 W3 what waits too long between steps, for the table and on the road is past its keeping', () => {
  const of = evening({
    activities: [
      work('boil', 5, { delivery: 'soup' }),
      work('carry', 10, { delivery: 'roast', place: 'mill', at: 'outside', road: { to: 'home' } }),
      work('warm', 5, { delivery: 'roast' }),
      work('blend', 5, { delivery: 'soup' }),
    ],
    deliveries: [delivery('soup', 'one'), delivery('roast', 'two', { carry: { most: 30, bound: 'quality' } })],
    lags: [lag('boil', 'blend', { most: 10 })],
  })
  const made = schedule(
    [placed('boil', 40, 45), placed('blend', 60, 65), placed('carry', 70, 80), placed('warm', 105, 110)],
    moments(100, 150),
  )
  expect(breaches(of, made)).toEqual([
    { kind: 'lag', lag: 0, from: 45, to: 60, by: 5 },
    { kind: 'keeps', delivery: 'soup', from: 65, to: 95, by: 10 },
    { kind: 'keeps', delivery: 'roast', from: 110, to: 145, by: 15 },
    { kind: 'carry', delivery: 'roast', from: 70, to: 105, by: 5 },
    { kind: 'wait', serving: 'two', from: 112, to: 150, by: 18 },
  ])
  expect(keeping(of, made)).toBe((5 + 10 + 15 + 5) * 300)
})

test('W5 the first course after sit-down is a broken wish', () => {
  expect(breaches(evening(), schedule([], moments(104, 120)))).toEqual([
    { kind: 'sit-down', serving: 'one', from: 100, to: 104, by: 4 },
  ])
})

test('C5 minutes up between the first and the last course are missed, the most of them counts again', () => {
  const of = evening({ activities: [work('a', 20), work('b', 10), work('set', 30, { at: 'table' })] })
  const made = schedule(
    [
      placed('a', 90, 110, { cooks: ['ann'] }),
      placed('b', 120, 130, { cooks: ['bo'] }),
      placed('set', 130, 150, { cooks: ['bo'] }),
    ],
    moments(100, 150),
  )
  expect(table(of, made)).toBe(20 * 10 + 10 * 5 + 10 * 5)
})

test('C5 who is up while people eat disturbs more than who is up between courses', () => {
  const of = evening({ activities: [work('a', 10)] })
  const at = (start: number) => table(of, schedule([placed('a', start, start + 10, { cooks: ['ann'] })], moments(100, 150)))
  expect([95, 100, 104, 110, 150].map(at)).toEqual([5 * 15 + 5 * 5, 10 * 15 + 10 * 5, 10 * 15 + 6 * 5, 10 * 15, 0])
})

test('C5 both hosts away costs more, but for a short burst of plating', () => {
  const both = (length: number, plating: boolean) => {
    const of = evening({ activities: [activity('a', mode('hands-on', length, { cooks: 2 }), { plating })] })
    return table(of, schedule([placed('a', 110, 110 + length, { cooks: ['ann', 'bo'] })], moments(100, 150)))
  }
  expect(both(12, true)).toBe(24 * 10 + 12 * 5)
  expect(both(12, false)).toBe(24 * 10 + 12 * 5 + 12 * 10)
  expect(both(13, true)).toBe(26 * 10 + 13 * 5 + 13 * 10)
})

test('C5 plating without the course’s lead costs a little', () => {
  const of = evening({
    servings: [serving('one', { role: { kind: 'first', sitDown: 100 }, lead: 'ann' })],
    activities: [work('a', 5, { plating: true, delivery: 'soup' })],
    deliveries: [delivery('soup', 'one')],
  })
  const by = (who: string) =>
    table(of, schedule([placed('a', 95, 100, { cooks: [who] })], { servings: [{ serving: 'one', toTable: 100 }] }))
  expect([by('ann'), by('bo')]).toEqual([0, 20])
})

test('C6 the hour before the first course is calm as far as nobody is busy in it', () => {
  const of = evening({ horizon: { from: -200, to: 200 }, activities: [work('a', 20), activity('watch', mode('eye', 10))] })
  const made = schedule(
    [placed('a', -30, -10, { cooks: ['ann'] }), placed('watch', 50, 60, { cooks: ['ann'] })],
    moments(100, 150),
  )
  expect(calm(of, made)).toBe(10)
})

test('C7 what ends early is less fresh', () => {
  const of = evening({ activities: [work('a', 5, { delivery: 'soup' }), work('b', 5)] })
  expect(fresh(of, schedule([placed('a', 45, 50), placed('b', 0, 5)], moments(100, 150)))).toBe(0.5)
})

test('C8 what moves against what was told costs, ten times when frozen', () => {
  const of = evening({
    activities: [work('a', 5), work('b', 5), work('c', 5)],
    previous: [
      { activity: 'a', start: 10, mode: 0, cooks: ['ann'], frozen: true },
      { activity: 'b', start: 20, mode: 0, cooks: ['ann', 'bo'], frozen: false },
      { activity: 'c', start: 30, mode: 0, cooks: ['ann'], frozen: false },
    ],
  })
  const made = schedule(
    [
      placed('a', 11, 16, { cooks: ['ann'] }),
      placed('b', 20, 25, { cooks: ['bo', 'ann'] }),
      placed('c', 30, 35, { cooks: ['bo'] }),
    ],
    moments(100, 150),
  )
  expect(unchanged(of, made)).toBe(10 * 15 + 15)
})

test('C1 the total is the sum of the eight goals', () => {
  const of = evening({ activities: [work('a', 20, { delivery: 'roast' })] })
  const priced = cost(of, schedule([placed('a', 90, 110, { cooks: ['ann'] })], moments(101, 150)))
  expect(Object.keys(priced.goals)).toEqual([...GOALS])
  expect(priced.total).toBe(GOALS.reduce((sum, goal) => sum + priced.goals[goal], 0))
  expect(priced.total).toBeGreaterThan(2000)
})
