import { expect, test } from 'vitest'
import type { Problem } from '#lib/scheduling/problem.ts'
import { repair } from '#lib/scheduling/repair.ts'
import type { Placement, Schedule } from '#lib/scheduling/schedule.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { at, dinner, lag, times } from '#tests/support/problem-builders.ts'
import { activity, cook, delivery, mode, placed, schedule, serving } from '#tests/support/small-problem.ts'

const dish = { delivery: 'dish' }
const soup = { delivery: 'soup' }

/** Kept for long, so that nothing but lags, cooks and kit makes anything move. */
const patient = (parts: Partial<Problem>): Problem =>
  dinner({
    deliveries: ['dish', 'soup'].map((id) =>
      delivery(id, 'main', { early: 0, keeps: { most: 90, bound: 'quality', place: 'home', uses: [] } }),
    ),
    ...parts,
  })

const toldAs = (...placements: Placement[]): Schedule => schedule(placements, { servings: [{ serving: 'main', toTable: 100 }] })

const toldOf = (schedule: Schedule, frozen: readonly string[] = []): Pick<Problem, 'previous'> => ({
  previous: schedule.placements.map(({ activity, start, mode, cooks }) => ({
    activity,
    start,
    mode,
    cooks,
    frozen: frozen.includes(activity),
  })),
})

const repaired = (of: Problem, last: Schedule): Schedule => {
  const made = repair(of, last)
  expect(verify(of, made).violations).toEqual([])
  expect(made.left).toEqual([])
  return made
}

const peel = activity('peel', mode('hands-on', 10), dish)
const boil = activity('boil', mode('leave', 20), dish)
const chop = activity('chop', mode('hands-on', 8), soup)
const simmer = activity('simmer', mode('leave', 15), soup)
const lags = [lag('peel', 'boil'), lag('chop', 'simmer')]
const last = toldAs(
  placed('peel', 20, 30, { cooks: ['ann'] }),
  placed('boil', 30, 50),
  placed('chop', 32, 40, { cooks: ['ann'] }),
  placed('simmer', 60, 75),
)
const all = { cooks: [cook('ann')], activities: [peel, boil, chop, simmer], lags }

test('S6 what still fits stays where it was told', () => {
  const of = patient({ ...all, now: 10, ...toldOf(last) })
  expect(repaired(of, last).placements).toEqual(last.placements)
})

test('S6 what needs longer pushes what follows it and what its cook does next, as little as may be, and nothing else', () => {
  const running = { ...peel, fact: { kind: 'running', start: 20, atLeast: 16, cooks: ['ann'] } } as const
  const of = patient({ ...all, activities: [running, boil, chop, simmer], now: 25, ...toldOf(last) })
  expect(times(repaired(of, last))).toEqual(['peel 20-36', 'boil 36-56', 'chop 36-44', 'simmer 60-75'])
})

test('S6 what is frozen keeps its time and cook when something overdue wants them', () => {
  const frozen = toldAs(
    placed('peel', 20, 30, { cooks: ['ann'] }),
    placed('boil', 45, 65),
    placed('chop', 33, 41, { cooks: ['ann'] }),
    placed('simmer', 60, 75),
  )
  const of = patient({ ...all, now: 30, ...toldOf(frozen, ['chop']) })
  expect(times(repaired(of, frozen))).toEqual(['chop 33-41', 'peel 41-51', 'boil 51-71', 'simmer 60-75'])
})

test('S6 the work of a cook who has gone is done by who is free, at the same time', () => {
  const gone = cook('bo', { presence: [{ place: 'home', from: 0, to: 15 }] })
  const before = toldAs(
    placed('peel', 20, 30, { cooks: ['bo'] }),
    placed('boil', 30, 50),
    placed('chop', 32, 40, { cooks: ['ann'] }),
    placed('simmer', 60, 75),
  )
  const of = patient({ ...all, cooks: [cook('ann'), gone], now: 16, ...toldOf(before) })
  const made = repaired(of, before)
  expect(times(made)).toEqual(times(before))
  expect(at(made, 'peel').cooks).toEqual(['ann'])
})

test('S6 what is under way is taken out by who was told to, so that the others keep what they were told', () => {
  const out = { when: 'out', takes: 2, lateBy: 4 } as const
  const bake = activity('bake', mode('leave', 30, { touches: [out] }), {
    ...dish,
    fact: { kind: 'running', start: 20, atLeast: 30 },
  })
  const before = toldAs(
    placed('bake', 20, 50, { touches: [{ touch: 0, at: 49, cook: 'bo' }] }),
    placed('chop', 44, 52, { cooks: ['ann'] }),
    placed('simmer', 60, 75),
  )
  const of = patient({
    cooks: [cook('ann'), cook('bo')],
    activities: [bake, chop, simmer],
    lags: [lag('chop', 'simmer')],
    now: 30,
    ...toldOf(before),
  })
  const made = repaired(of, before)
  expect(at(made, 'bake').touches).toEqual([{ touch: 0, at: 49, cook: 'bo' }])
  expect(times(made)).toEqual(['bake 20-50', 'chop 44-52', 'simmer 60-75'])
})

test('S6 a dish that was dropped is gone and nothing else moves', () => {
  const of = patient({
    ...all,
    activities: [peel, boil],
    lags: [lag('peel', 'boil')],
    deliveries: [delivery('dish', 'main', { early: 0, keeps: { most: 90, bound: 'quality', place: 'home', uses: [] } })],
    now: 10,
    ...toldOf(last),
  })
  expect(times(repaired(of, last))).toEqual(['peel 20-30', 'boil 30-50'])
})

test('S6 with a later sit-down what would wait too long comes later too, and what is frozen stays', () => {
  const bake = activity('bake', mode('leave', 20), dish)
  const fry = activity('fry', mode('leave', 10), soup)
  const before = toldAs(placed('bake', 80, 100), placed('fry', 88, 98))
  const keeps = (most: number) => ({ most, bound: 'quality', place: 'home', uses: [] }) as const
  const of = dinner({
    activities: [bake, fry],
    servings: [serving('main', { role: { kind: 'first', sitDown: 120 }, earliest: 120 })],
    deliveries: [
      delivery('dish', 'main', { early: 0, keeps: keeps(5) }),
      delivery('soup', 'main', { early: 0, keeps: keeps(4) }),
    ],
    now: 78,
    ...toldOf(before, ['bake']),
  })
  const made = repaired(of, before)
  expect(times(made)).toEqual(['bake 80-100', 'fry 106-116'])
  expect(made.servings).toEqual([{ serving: 'main', toTable: 120 }])
})

test('S6 a course waits for what cannot be ready in time, and the next one for that course', () => {
  const roast = activity('roast', mode('leave', 30), { ...dish, fact: { kind: 'running', start: 70, atLeast: 45 } })
  const carve = activity('carve', mode('hands-on', 10), dish)
  const cake = activity('cake', mode('leave', 5), { delivery: 'cake' })
  const before = schedule([placed('roast', 60, 90), placed('carve', 90, 100, { cooks: ['ann'] }), placed('cake', 105, 110)], {
    servings: [
      { serving: 'main', toTable: 100 },
      { serving: 'sweet', toTable: 115 },
    ],
  })
  const of = patient({
    cooks: [cook('ann')],
    activities: [roast, carve, cake],
    lags: [lag('roast', 'carve')],
    servings: [serving('main', { role: { kind: 'first', sitDown: 100 }, earliest: 100 }), serving('sweet')],
    deliveries: [
      delivery('dish', 'main', { early: 0 }),
      delivery('cake', 'sweet', { keeps: { most: 90, bound: 'quality', place: 'home', uses: [] } }),
    ],
    now: 80,
    ...toldOf(before),
  })
  const made = repaired(of, before)
  expect(times(made)).toEqual(['roast 70-115', 'cake 105-110', 'carve 115-125'])
  expect(made.servings).toEqual([
    { serving: 'main', toTable: 125 },
    { serving: 'sweet', toTable: 137 },
  ])
})

test('S6 what is new finds a place beside what stays', () => {
  const of = patient({
    ...all,
    activities: [...all.activities, activity('toast', mode('hands-on', 6), soup)],
    now: 10,
    ...toldOf(last),
  })
  const made = repaired(of, last)
  expect(made.placements.filter(({ activity: id }) => id !== 'toast')).toEqual(last.placements)
})
