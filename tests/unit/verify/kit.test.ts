import { test } from 'vitest'
import type { Kit, Use } from '#lib/scheduling/problem.ts'
import { activity, cook, mode, placed, problem, schedule } from '#tests/support/small-problem.ts'
import { expectRule } from './broken.ts'

const rings: Kit = { kind: 'ring', id: 'medium', place: 'home', size: 2, count: 2 }
const small: Kit = { kind: 'ring', id: 'small', place: 'home', size: 1, count: 1 }
const fridge: Kit = { kind: 'store', id: 'fridge', place: 'home', of: 'cold', capacity: 3 }
const oven = (id: string, place = 'home'): Kit => ({ kind: 'oven', id, place, shelves: 2, maxC: 250, up: 4, down: 1.5 })
const bake = (parts: object = {}): Use => ({ kind: 'oven', shelves: 1, lowC: 180, highC: 200, preheated: false, ...parts })
const ring = (size: number): Use => ({ kind: 'ring', size })
const cold = (amount: number): Use => ({ kind: 'store', of: 'cold', amount })
const kit = [rings, small, fridge, oven('left'), oven('right'), oven('far', 'mill')]

test('H11 each use is held on a kit of its place that can serve it', () => {
  const evening = (use: Use) => problem({ kit, activities: [activity('it', mode('leave', 10, { uses: [use] }))] })
  const on = (id: string, unit = 0) => schedule([placed('it', 0, 10, { kit: [{ id, unit }] })])
  expectRule(evening(ring(2)), on('medium', 1), [
    [on('small'), 'H11 unfit it'],
    [on('medium', 2), 'H11 unfit it'],
    [on('none'), 'H11 unfit it'],
    [on('fridge'), 'H11 unfit it'],
    [schedule([placed('it', 0, 10)]), 'H11 missing it'],
  ])
  expectRule(evening(ring(1)), on('medium'), [])
  expectRule(evening(bake()), on('right'), [[on('far'), 'H11 unfit it']])
  expectRule(evening(bake({ oven: 'left' })), on('left'), [[on('right'), 'H11 unfit it']])
  expectRule(evening(cold(1)), on('fridge'), [[on('fridge', 1), 'H11 unfit it']])
})

test('H11 a ring is held by one thing at a time, until the pan has been taken off', () => {
  const uses = [ring(2)]
  const touches = [{ when: 'out', takes: 1, lateBy: 4 }] as const
  const evening = problem({
    kit,
    cooks: [cook('ann')],
    activities: [activity('rice', mode('leave', 10, { uses, touches })), activity('peas', mode('leave', 5, { uses }))],
  })
  const at = (out: number, unit: number) =>
    schedule([
      placed('rice', 0, 10, { kit: [{ id: 'medium', unit: 0 }], touches: [{ touch: 0, at: out, cook: 'ann' }] }),
      placed('peas', 10, 15, { kit: [{ id: 'medium', unit }] }),
    ])
  expectRule(evening, at(9, 0), [[at(10, 0), 'H11 overlap rice,peas']])
  expectRule(evening, at(10, 1), [])
})

test('H12 vessel keeps its ring across a gap, and does one thing at a time', () => {
  const pot = (id: string) => activity(id, mode('leave', 10, { uses: [ring(2)] }), { vessel: 'pot' })
  const pan = activity('pan', mode('leave', 5, { uses: [ring(2)] }))
  const evening = problem({ kit, activities: [pot('boil'), pot('reduce'), pan] })
  const at = (reduce: number, unit: number, panUnit: number) =>
    schedule([
      placed('boil', 0, 10, { kit: [{ id: 'medium', unit: 0 }] }),
      ...(reduce < 12
        ? [
            placed('reduce', reduce, reduce + 10, { kit: [{ id: 'medium', unit }] }),
            placed('pan', 12, 17, { kit: [{ id: 'medium', unit: panUnit }] }),
          ]
        : [
            placed('pan', 12, 17, { kit: [{ id: 'medium', unit: panUnit }] }),
            placed('reduce', reduce, reduce + 10, { kit: [{ id: 'medium', unit }] }),
          ]),
    ])
  expectRule(evening, at(30, 0, 1), [
    [at(30, 1, 1), 'H12 other-ring boil,reduce', 'H12 overlap reduce,pan'],
    [at(30, 0, 0), 'H12 overlap reduce,pan'],
    [at(8, 0, 1), 'H12 overlap boil,reduce'],
  ])
  const mill = { ...pot('reduce'), place: 'mill' }
  const elsewhere = problem({
    ...evening,
    kit: [...kit, { ...rings, id: 'mill', place: 'mill' }],
    activities: [pot('boil'), mill, pan],
  })
  expectRule(
    elsewhere,
    schedule([
      placed('boil', 0, 10, { kit: [{ id: 'medium', unit: 0 }] }),
      placed('pan', 12, 17, { kit: [{ id: 'medium', unit: 0 }] }),
      placed('reduce', 30, 40, { kit: [{ id: 'mill', unit: 0 }] }),
    ]),
    [],
  )
})

test('H13 shelves and amounts are never exceeded while something planned holds them', () => {
  const using = (id: string, use: Use, parts: object = {}) => activity(id, mode('leave', 10, { uses: [use] }), parts)
  const done = (start: number) => ({ fact: { kind: 'done', start, end: start + 10 } as const })
  const at = (start: number, id: string) =>
    schedule([placed('a', 0, 10, { kit: [{ id, unit: 0 }] }), placed('b', start, start + 10, { kit: [{ id, unit: 0 }] })])
  expectRule(problem({ kit, activities: [using('a', cold(2)), using('b', cold(2))] }), at(10, 'fridge'), [
    [at(9, 'fridge'), 'H13 full a,b'],
  ])
  expectRule(problem({ kit, activities: [using('a', cold(2)), using('b', cold(1))] }), at(3, 'fridge'), [])
  expectRule(problem({ kit, activities: [using('a', bake()), using('b', bake({ shelves: 2 }))] }), at(10, 'left'), [
    [at(9, 'left'), 'H13 full a,b'],
  ])
  expectRule(problem({ kit, activities: [using('a', cold(2), done(0)), using('b', cold(2), done(3))] }), at(3, 'fridge'), [])
})

test('H14 an oven has time to heat or cool between two windows, and can reach each', () => {
  const using = (id: string, lowC: number, highC: number, preheated = false) =>
    activity(id, mode('leave', 10, { uses: [bake({ lowC, highC, preheated })] }))
  const at = (first: number, second: number) =>
    schedule([
      placed('a', first, first + 10, { kit: [{ id: 'left', unit: 0 }] }),
      placed('b', second, second + 10, { kit: [{ id: 'left', unit: 0 }] }),
    ])
  const evening = (a: [number, number], b: [number, number], preheated = false) =>
    problem({ kit, activities: [using('a', ...a, preheated), using('b', ...b)] })
  expectRule(evening([150, 160], [205, 220]), at(0, 22), [[at(0, 21), 'H14 ramp a,b']])
  expectRule(evening([205, 220], [150, 160]), at(0, 40), [[at(0, 39), 'H14 ramp a,b']])
  expectRule(evening([150, 205], [205, 220]), at(0, 3), [])
  expectRule(evening([100, 120], [120, 130], true), at(20, 25), [[at(19, 25), 'H14 ramp a']])
  expectRule(evening([100, 251], [250, 300]), at(0, 3), [])
  expectRule(evening([100, 260], [250, 300]), at(0, 3), [])
  const hot = problem({ kit, activities: [using('a', 251, 260)] })
  expectRule(hot, schedule([], { left: [{ activity: 'a', because: 'no-kit' }] }), [
    [schedule([placed('a', 80, 90, { kit: [{ id: 'left', unit: 0 }] })]), 'H14 unfit a'],
  ])
})

test('H15 while a door must stay shut nothing else goes in, comes out or is touched', () => {
  const touches = [{ when: { every: 8 }, takes: 1, lateBy: 9 }] as const
  const activities = [
    activity('souffle', mode('leave', 20, { uses: [bake({ doorShut: 10 })] })),
    activity('gratin', mode('leave', 15, { uses: [bake()], touches })),
  ]
  const evening = problem({ kit, cooks: [cook('ann')], activities })
  const at = (gratin: number, touch: number, id = 'left') => {
    const both = [
      placed('souffle', 30, 50, { kit: [{ id: 'left', unit: 0 }] }),
      placed('gratin', gratin, gratin + 15, { kit: [{ id, unit: 0 }], touches: [{ touch: 0, at: touch, cook: 'ann' }] }),
    ]
    return schedule(both.sort((a, b) => a.start - b.start))
  }
  expectRule(evening, at(15, 23), [
    [at(16, 24), 'H15 door souffle,gratin'],
    [at(31, 40), 'H15 door souffle,gratin'],
    [at(26, 35), 'H15 door souffle,gratin'],
  ])
  expectRule(evening, at(40, 48), [])
  expectRule(evening, at(26, 40), [])
  expectRule(evening, at(31, 40, 'right'), [])
})
