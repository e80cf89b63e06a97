import { test } from 'vitest'
import type { Kit } from '#lib/scheduling/problem.ts'
import { activity, cook, delivery, mode, placed, problem, schedule, serving } from '#tests/support/small-problem.ts'
import { expectRule } from './broken.ts'

const welcome = serving('welcome', { role: { kind: 'welcome', latest: 60 }, earliest: 40 })
const first = serving('first', { role: { kind: 'first', sitDown: 60 }, earliest: 60, pouring: 3 })
const next = serving('next', { pouring: 1 })
const moments = (...at: [string, number][]) => at.map(([id, toTable]) => ({ serving: id, toTable }))

test('H16 a serving waits for the one before, for its own time and for now; a welcome is over by sit-down', () => {
  const evening = problem({ servings: [welcome, first, next] })
  const at = (a: number, b: number, c: number) => schedule([], { servings: moments(['welcome', a], ['first', b], ['next', c]) })
  expectRule(evening, at(45, 60, 73), [
    [at(39, 60, 73), 'H16 early welcome'],
    [at(46, 60, 73), 'H16 early first'],
    [at(44, 59, 73), 'H16 early first'],
    [at(61, 76, 89), 'H16 late welcome'],
    [at(45, 60, 72), 'H16 early next'],
    [schedule([], { servings: moments(['welcome', 45], ['next', 73], ['first', 60]) }), 'H16 order welcome,next,first'],
    [schedule([], { servings: moments(['welcome', 45], ['first', 60]) }), 'H16 order welcome,first'],
  ])
})

test('H16 on the night nothing is served before now, and what was served stays as it was', () => {
  const served = serving('first', { role: { kind: 'first', sitDown: 60 }, earliest: 60, fact: { toTable: 55, platesOff: 80 } })
  const evening = problem({ now: 85, servings: [served, next] })
  const at = (a: number, b: number) => schedule([], { servings: moments(['first', a], ['next', b]) })
  expectRule(evening, at(55, 85), [
    [at(55, 84), 'H16 early next'],
    [at(60, 85), 'H16 moved first'],
  ])
  expectRule(problem({ servings: [served, next] }), at(55, 81), [[at(55, 80), 'H16 early next']])
})

test('H16 a welcome that is already too late is served when it can be', () => {
  const evening = problem({ now: 70, servings: [welcome] })
  const at = (moment: number) => schedule([], { servings: moments(['welcome', moment]) })
  expectRule(evening, at(70), [[at(71), 'H16 late welcome']])
  const roast = activity('roast', mode('leave', 50), { delivery: 'roast', fact: { kind: 'running', start: 50, atLeast: 40 } })
  const cooking = problem({ ...evening, activities: [roast], deliveries: [delivery('roast', 'welcome')] })
  const then = (moment: number) => schedule([placed('roast', 50, 90)], { servings: moments(['welcome', moment]) })
  expectRule(cooking, then(90), [[then(91), 'H16 late welcome']])
})

test('H17 a dish is ready no later than its serving allows', () => {
  const evening = problem({
    servings: [first],
    activities: [activity('gravy', mode('leave', 10), { delivery: 'gravy' })],
    deliveries: [delivery('gravy', 'first', { early: 200, late: 4 })],
  })
  const at = (start: number) => schedule([placed('gravy', start, start + 10)], { servings: moments(['first', 60]) })
  expectRule(evening, at(54), [[at(55), 'H17 late first,gravy']])
})

test('H18 a dish that waits is listed while it waits, and holds its keeping kit', () => {
  const oven: Kit = { kind: 'oven', id: 'oven', place: 'home', shelves: 1, maxC: 250, up: 5, down: 5 }
  const warm = { kind: 'oven', shelves: 1, lowC: 70, highC: 80, preheated: false } as const
  const evening = problem({
    kit: [oven],
    servings: [first],
    activities: [
      activity('gratin', mode('leave', 10), { delivery: 'gratin' }),
      activity('tart', mode('leave', 10, { uses: [{ ...warm, lowC: 180, highC: 190 }] })),
    ],
    deliveries: [delivery('gratin', 'first', { early: 5, keeps: { most: 20, bound: 'safety', place: 'home', uses: [warm] } })],
  })
  const at = (
    tart: number,
    gratin: number,
    keeping = [{ delivery: 'gratin', from: gratin + 10, to: 55, kit: [{ id: 'oven', unit: 0 }] }],
  ) =>
    schedule(
      [placed('tart', tart, tart + 10, { kit: [{ id: 'oven', unit: 0 }] }), placed('gratin', gratin, gratin + 10)].sort(
        (a, b) => a.start - b.start,
      ),
      {
        servings: moments(['first', 60]),
        keeping,
      },
    )
  const held = { delivery: 'gratin', from: 45, to: 55, kit: [{ id: 'oven', unit: 0 }] }
  expectRule(evening, at(15, 35), [
    [at(15, 35, []), 'H18 missing gratin'],
    [at(15, 35, [{ ...held, to: 54 }]), 'H18 moved gratin'],
    [at(15, 35, [{ ...held, delivery: 'soup' }]), 'H18 unknown soup', 'H18 missing gratin'],
    [at(15, 35, [{ ...held, kit: [] }]), 'H11 missing gratin'],
    [at(16, 35), 'H14 ramp tart,gratin'],
    [at(0, 24), 'H18 too-long gratin'],
  ])
  expectRule(evening, at(0, 45, []), [[at(0, 45), 'H18 missing gratin']])
})

test('H18 what is carried under a safety bound is not on the way for longer', () => {
  const ann = cook('ann', {
    presence: [
      { place: 'mill', from: 0, to: 10 },
      { place: 'home', from: 50, to: 99 },
    ],
  })
  const bring = activity('bring', mode('hands-on', 10), { place: 'mill', at: 'outside', road: { to: 'home' }, delivery: 'pie' })
  const warm = activity('warm', mode('leave', 10), { delivery: 'pie' })
  const carry = { most: 20, bound: 'safety' } as const
  const evening = problem({
    cooks: [ann],
    servings: [first],
    activities: [bring, warm],
    deliveries: [delivery('pie', 'first', { early: 30, carry })],
  })
  const at = (start: number) =>
    schedule([placed('bring', 20, 30, { cooks: ['ann'] }), placed('warm', start, start + 10)], {
      servings: moments(['first', 60]),
    })
  expectRule(evening, at(40), [[at(41), 'H18 too-long pie']])
  const plain = problem({ ...evening, activities: [bring], deliveries: [delivery('pie', 'first', { early: 20, carry })] })
  const only = schedule([placed('bring', 20, 30, { cooks: ['ann'] })], {
    servings: moments(['first', 60]),
    keeping: [{ delivery: 'pie', from: 30, to: 40, kit: [] }],
  })
  expectRule(plain, only, [])
  expectRule(
    problem({ ...plain, deliveries: [delivery('pie', 'first', { early: 19, carry })] }),
    schedule([], { left: [{ activity: 'bring', because: 'safety' }], servings: moments(['first', 60]) }),
    [[{ ...only, keeping: [{ delivery: 'pie', from: 30, to: 41, kit: [] }] }, 'H18 too-long pie']],
  )
})
