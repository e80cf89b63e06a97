import { expect, test } from 'vitest'
import { solve } from '#lib/scheduling/solve.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { at, dinner, fromStore, inOven, lag, oven, plan, store, times } from '#tests/support/problem-builders.ts'
import { activity, cook, delivery, mode, placed, schedule, serving } from '#tests/support/small-problem.ts'

const dish = { delivery: 'dish' }
/** Not every search comes upon what a rule forbids: these do, now and then. */
const SEEDS = Array.from({ length: 12 }, (_, i) => 33 + i)

test('H2 H3 what is done stays, what runs ends when it must, and nothing else starts before now', () => {
  const made = plan(
    dinner({
      now: 60,
      cooks: [cook('ann')],
      activities: [
        activity('peel', mode('hands-on', 10), { ...dish, fact: { kind: 'done', start: 20, end: 33, cooks: ['ann'] } }),
        activity('roast', mode('leave', 30), { ...dish, fact: { kind: 'running', start: 50, atLeast: 35 } }),
        activity('carve', mode('hands-on', 10), dish),
      ],
      lags: [lag('peel', 'roast'), lag('roast', 'carve')],
    }),
  )
  expect(times(made)).toEqual(['peel 20-33', 'roast 50-85', 'carve 90-100'])
})

test('H16 a course that cannot be ready waits for what is under way', () => {
  const made = plan(
    dinner({
      now: 90,
      cooks: [cook('ann')],
      activities: [
        activity('roast', mode('leave', 30), { ...dish, fact: { kind: 'running', start: 80, atLeast: 45 } }),
        activity('carve', mode('hands-on', 10), dish),
      ],
      lags: [lag('roast', 'carve')],
    }),
  )
  expect(made.servings).toEqual([{ serving: 'main', toTable: 135 }])
})

test('H10 what is under way is taken out by somebody who is free then', () => {
  const made = plan(
    dinner({
      now: 60,
      cooks: [cook('ann'), cook('bo')],
      activities: [
        activity(
          'roast',
          mode('leave', 30, {
            touches: [
              { when: 'in', takes: 1, lateBy: 0 },
              { when: 'out', takes: 2, lateBy: 0 },
            ],
          }),
          {
            ...dish,
            fact: { kind: 'running', start: 50, atLeast: 30 },
          },
        ),
        activity('sauce', mode('hands-on', 40), { ...dish, claimed: ['ann'] }),
      ],
    }),
  )
  expect(at(made, 'roast').touches).toEqual([{ touch: 1, at: 78, cook: 'bo' }])
  expect(at(made, 'sauce')).toMatchObject({ start: 60, end: 100 })
})

test('C8 what cooks were told stays where it is, and what is frozen most of all', () => {
  const of = (frozen: boolean) =>
    dinner({
      now: 40,
      cooks: [cook('ann')],
      kit: [oven(), store('board', 1)],
      deliveries: [delivery('dish', 'main', { early: 0, keeps: { most: 90, bound: 'quality', place: 'home', uses: [] } })],
      activities: [
        activity('chop', mode('hands-on', 10, { uses: [fromStore('board')] }), dish),
        activity('bake', mode('leave', 20, { uses: [inOven(180, 200)] }), dish),
      ],
      previous: [
        { activity: 'chop', start: 44, mode: 0, cooks: ['ann'], frozen },
        { activity: 'bake', start: 70, mode: 0, cooks: [], frozen: false },
      ],
    })
  expect(times(plan(of(false)))).toEqual(['chop 44-54', 'bake 70-90'])
  expect(at(plan(of(true)), 'chop').start).toBe(44)
})

test('S2 a hint that still fits is kept when nothing is cheaper', () => {
  const of = dinner({ cooks: [cook('ann'), cook('bo')], activities: [activity('a', mode('hands-on', 10), dish)] })
  const told = plan(of)
  const hint = { ...told, placements: told.placements.map((one) => ({ ...one, cooks: ['bo'] })) }
  expect(solve(of, { steps: 0, seed: 1 }, hint).placements[0]?.start).toBe(90)
})

test('H16 a served course is as it was, and the next is counted from its plates', () => {
  const made = plan({
    ...dinner({ now: 130, cooks: [cook('ann')] }),
    servings: [
      serving('main', { role: { kind: 'first', sitDown: 100 }, earliest: 100, fact: { toTable: 108, platesOff: 140 } }),
      serving('cake', { wait: { ideal: [8, 20], most: 30 }, pouring: 4 }),
    ],
    deliveries: [delivery('dish', 'main'), delivery('cakes', 'cake', { early: 0 })],
    activities: [
      activity('eaten', mode('hands-on', 5), { ...dish, fact: { kind: 'done', start: 90, end: 108 } }),
      activity('slice', mode('hands-on', 5), { delivery: 'cakes' }),
    ],
  })
  expect(made.servings).toEqual([
    { serving: 'main', toTable: 108 },
    { serving: 'cake', toTable: 148 },
  ])
  expect(at(made, 'slice')).toMatchObject({ start: 143, end: 148 })
})

test('H4 what is under way may end sooner or later, but never further than a safety lag allows before what follows it', () => {
  const fridge = [fromStore('fridge')]
  const of = dinner({
    now: 40,
    cooks: [cook('ann')],
    kit: [store('fridge', 1)],
    activities: [
      activity('chill', mode('leave', 30, { upTo: 300, uses: fridge }), {
        ...dish,
        fact: { kind: 'running', start: 10, atLeast: 30 },
      }),
      activity('boil', mode('eye', 10), dish),
      activity('mix', mode('hands-on', 5), { ...dish, to: 50 }),
      activity('set', mode('leave', 10, { uses: fridge }), dish),
      activity('plate', mode('hands-on', 10), dish),
    ],
    lags: [
      lag('chill', 'boil', { most: 10, bound: 'safety' }),
      lag('boil', 'plate', { most: 5 }),
      lag('mix', 'set', { most: 5 }),
      lag('set', 'plate'),
    ],
  })
  const broken = SEEDS.flatMap((seed) => verify(of, solve(of, { steps: 150, seed })).violations)
  expect(broken).toEqual([])
})

test('H17 no course comes forward past what is under way for it and is to go on until then', () => {
  const of = dinner({
    now: 40,
    cooks: [cook('ann')],
    servings: [serving('main', { role: { kind: 'first', sitDown: 60 }, earliest: 60 })],
    activities: [
      activity('chill', mode('leave', 30, { upTo: 300 }), { ...dish, fact: { kind: 'running', start: 10, atLeast: 30 } }),
      activity('bread', mode('hands-on', 15), dish),
      activity('plate', mode('hands-on', 15, { cooks: 2 }), dish),
    ],
  })
  const told = schedule([placed('chill', 10, 120), placed('bread', 130, 145, { cooks: ['ann'] })], {
    servings: [{ serving: 'main', toTable: 145 }],
  })
  const broken = SEEDS.flatMap((seed) => verify(of, solve(of, { steps: 150, seed }, told)).violations)
  expect(broken).toEqual([])
})
