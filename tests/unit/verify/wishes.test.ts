import { expect, test } from 'vitest'
import type { Problem } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { activity, cook, delivery, mode, placed, problem, schedule, serving } from '#tests/support/small-problem.ts'

/** The broken wishes of a schedule that breaks no rule. */
const broken = (of: Problem, good: Schedule) => {
  const verdict = verify(of, good)
  expect(verdict.violations).toEqual([])
  return verdict.breaches
}
const first = serving('first', { role: { kind: 'first', sitDown: 60 }, earliest: 60 })
const served = (...at: [string, number][]) => ({ servings: at.map(([id, toTable]) => ({ serving: id, toTable })) })

test('W1 lag: past the most of a quality lag, from its edge to the later start', () => {
  const evening = problem({
    activities: [activity('boil', mode('leave', 10)), activity('fry', mode('leave', 10))],
    lags: [
      { from: 'boil', edge: 'end', to: 'fry', least: 0, most: 5, bound: 'quality' },
      { from: 'boil', edge: 'start', to: 'fry', least: 0, most: 16, bound: 'quality' },
    ],
  })
  const at = (start: number) => schedule([placed('boil', 0, 10), placed('fry', start, start + 10)])
  expect(broken(evening, at(15))).toEqual([])
  expect(broken(evening, at(18))).toEqual([
    { kind: 'lag', lag: 0, from: 10, to: 18, by: 3 },
    { kind: 'lag', lag: 1, from: 0, to: 18, by: 2 },
  ])
})

test('W2 keeps: a dish that waits longer than it keeps', () => {
  const evening = problem({
    servings: [first],
    activities: [activity('soup', mode('leave', 10), { delivery: 'soup' })],
    deliveries: [delivery('soup', 'first', { early: 5, keeps: { most: 20, bound: 'quality', place: 'home', uses: [] } })],
  })
  const at = (end: number) =>
    schedule([placed('soup', end - 10, end)], {
      ...served(['first', 60]),
      keeping: [{ delivery: 'soup', from: end, to: 55, kit: [] }],
    })
  expect(broken(evening, at(35))).toEqual([])
  expect(broken(evening, at(34))).toEqual([{ kind: 'keeps', delivery: 'soup', from: 34, to: 55, by: 1 }])
})

test('W2 a finished dish that cannot be kept safely any more is a broken wish, for it has happened', () => {
  const soup = activity('soup', mode('leave', 10), { delivery: 'soup', fact: { kind: 'done', start: 0, end: 10 } })
  const evening = problem({
    now: 20,
    servings: [first],
    activities: [soup],
    deliveries: [delivery('soup', 'first', { early: 0, keeps: { most: 20, bound: 'safety', place: 'home', uses: [] } })],
  })
  const good = schedule([placed('soup', 0, 10)], {
    ...served(['first', 60]),
    keeping: [{ delivery: 'soup', from: 10, to: 60, kit: [] }],
  })
  expect(broken(evening, good)).toEqual([{ kind: 'keeps', delivery: 'soup', from: 10, to: 60, by: 30 }])
})

test('W3 carry: from the first carrying start to the next activity, or to arrival', () => {
  const car = cook('ann', {
    presence: [
      { place: 'mill', from: 0, to: 10 },
      { place: 'home', from: 50, to: 99 },
    ],
  })
  const road = { place: 'mill', at: 'outside', road: { to: 'home' }, delivery: 'pie' } as const
  const evening = problem({
    cooks: [car, { ...car, id: 'bo' }],
    servings: [first],
    activities: [
      activity('box', mode('hands-on', 5), road),
      activity('bag', mode('hands-on', 5), road),
      activity('warm', mode('leave', 4), { delivery: 'pie' }),
    ],
    deliveries: [delivery('pie', 'first', { early: 60, carry: { most: 20, bound: 'quality' } })],
  })
  const trip = [placed('box', 10, 15, { cooks: ['ann'] }), placed('bag', 12, 17, { cooks: ['bo'] })]
  const at = (start: number) => schedule([...trip, placed('warm', start, start + 4)], served(['first', 60]))
  expect(broken(evening, at(30))).toEqual([])
  expect(broken(evening, at(33))).toEqual([{ kind: 'carry', delivery: 'pie', from: 10, to: 33, by: 3 }])
  const cold = problem({
    ...evening,
    activities: evening.activities.slice(0, 2),
    deliveries: [delivery('pie', 'first', { early: 25, carry: { most: 20, bound: 'quality' } })],
  })
  const kept = schedule(trip, { ...served(['first', 60]), keeping: [{ delivery: 'pie', from: 17, to: 35, kit: [] }] })
  expect(broken(cold, kept)).toEqual([{ kind: 'carry', delivery: 'pie', from: 10, to: 35, by: 5 }])
})

test('W4 wait: above the most, since the plates came off, or since the guests came for a welcome', () => {
  const welcome = serving('welcome', { role: { kind: 'welcome', latest: 60 }, earliest: 20, eating: 1, clearing: 0 })
  const evening = problem({ servings: [welcome, first, serving('next')] })
  const at = (a: number, c: number) => schedule([], served(['welcome', a], ['first', 60], ['next', c]))
  expect(broken(evening, at(40, 92))).toEqual([])
  expect(broken(evening, at(41, 95))).toEqual([
    { kind: 'wait', serving: 'welcome', from: 20, to: 41, by: 1 },
    { kind: 'wait', serving: 'next', from: 72, to: 95, by: 3 },
  ])
})

test('W5 sit-down: the first course after sit-down, as long as it has not been served', () => {
  const at = (moment: number) => schedule([], served(['first', moment]))
  expect(broken(problem({ servings: [first] }), at(60))).toEqual([])
  expect(broken(problem({ servings: [first] }), at(63))).toEqual([
    { kind: 'sit-down', serving: 'first', from: 60, to: 63, by: 3 },
  ])
  expect(broken(problem({ servings: [{ ...first, fact: { toTable: 63 } }] }), at(63))).toEqual([])
})

test('W6 every broken wish appears once, and none that is kept', () => {
  const evening = problem({
    servings: [first, serving('next', { wait: { ideal: [0, 2], most: 5 } })],
    activities: [
      activity('boil', mode('leave', 10)),
      activity('fry', mode('leave', 10), { delivery: 'fish' }),
      activity('mash', mode('leave', 10), { delivery: 'peas' }),
    ],
    lags: [
      { from: 'boil', edge: 'end', to: 'fry', least: 0, most: 5, bound: 'quality' },
      { from: 'boil', edge: 'end', to: 'mash', least: 0, most: 50, bound: 'quality' },
    ],
    deliveries: [delivery('fish', 'first', { early: 0 }), delivery('peas', 'first', { early: 0 })],
  })
  const good = schedule([placed('boil', 0, 10), placed('fry', 25, 35), placed('mash', 50, 60)], {
    ...served(['first', 61], ['next', 80]),
    keeping: [
      { delivery: 'fish', from: 35, to: 61, kit: [] },
      { delivery: 'peas', from: 60, to: 61, kit: [] },
    ],
  })
  expect(broken(evening, good)).toEqual([
    { kind: 'lag', lag: 0, from: 10, to: 25, by: 10 },
    { kind: 'keeps', delivery: 'fish', from: 35, to: 61, by: 6 },
    { kind: 'wait', serving: 'next', from: 73, to: 80, by: 2 },
    { kind: 'sit-down', serving: 'first', from: 60, to: 61, by: 1 },
  ])
})
