import { describe, expect, test } from 'vitest'
import type { Evening } from '#lib/domain/evening.ts'
import { tickOf } from '#lib/domain/time.ts'
import { problemHash } from '#lib/order/hash.ts'
import { toProblem } from '#lib/order/to-problem.ts'
import {
  at,
  batch,
  chores,
  claim,
  cook,
  cooks,
  course,
  courseWith,
  dish,
  dishWith,
  evening,
  eye,
  follows,
  freezer,
  fridge,
  HOME_KIT,
  kitchen,
  leave,
  min,
  notAfter,
  notBefore,
  or,
  oven,
  ovenUse,
  ring,
  role,
  step,
  tool,
  touch,
  upTo,
  vessel,
  where,
  worktop,
} from '#tests/support/evening-builders.ts'

const problemOf = (of: Evening) => toProblem(of).problem
const activity = (of: Evening, id: string) => {
  const found = problemOf(of).activities.find((each) => each.id === id)
  if (!found) throw new Error(`no activity ${id}`)
  return found
}
const only = (...changes: Parameters<typeof step>[2][]) =>
  evening(course('main', dish('the-roast', step('roast', 30, ...changes))))

describe('durations and windows', () => {
  test('T4 what is planned rounds up to a tick, windows and limits inward', () => {
    const of = evening(
      course(
        'main',
        dish(
          'the-roast',
          step('cut', 5.1),
          step(
            'roast',
            [9.1, 10.2, 11.3],
            follows('cut', 1.1, 9.9),
            upTo(20.9),
            touch('out', 0.6, 1.9),
            notBefore('18:00'),
            notAfter('19:00'),
          ),
          dishWith({
            toTable: { early: min(1.9), late: min(2.9) },
            keeps: { how: 'hot', most: min(3.9), kind: 'quality', uses: [] },
          }),
        ),
      ),
    )
    const [mode] = activity(of, 'roast').modes
    expect(mode).toMatchObject({ least: 19, likely: 21, most: 23, upTo: 41, touches: [{ when: 'out', takes: 2, lateBy: 3 }] })
    expect(activity(of, 'roast').from).toBe(tickOf(of, at('18:00'), 'up'))
    expect(activity(of, 'roast').to).toBe(tickOf(of, at('19:00'), 'down'))
    expect(problemOf(of).lags).toMatchObject([{ from: 'cut', to: 'roast', edge: 'end', least: 3, most: 19, bound: 'quality' }])
    expect(problemOf(of).deliveries).toMatchObject([
      { id: 'the-roast', serving: 'main', early: 3, late: 5, keeps: { most: 7, place: 'home' } },
    ])
  })

  test('T4 a lag of less than a tick stays possible', () => {
    const of = evening(course('main', dish('the-roast', step('cut', 5), step('roast', 10, follows('cut', 0.75, 0.75)))))
    expect(problemOf(of).lags).toMatchObject([{ least: 2, most: 2 }])
  })

  test('O1 a step without an earliest begins no sooner than the first presence, one with an earliest may', () => {
    const of = evening(course('main', dish('the-roast', step('cure', 60, leave, notBefore('-2 10:00')), step('roast', 30))), {
      cooks: [cook('kim', ['home 12:00 23:00']), cook('lou', ['home -1 18:00 -1 20:00', 'home 15:00 22:00'])],
    })
    expect(activity(of, 'cure').from).toBe(tickOf(of, at('-2 10:00'), 'up'))
    expect(activity(of, 'roast').from).toBe(tickOf(of, at('-1 18:00'), 'up'))
    expect(problemOf(of).horizon.from).toBe(tickOf(of, at('-2 10:00'), 'up'))
    expect(problemOf(of).horizon.to).toBeGreaterThan(tickOf(of, at('23:00'), 'down'))
  })

  test('T1 a roast over the hour that is skipped ends by the wall clock an hour later', () => {
    // Europe/London, 29 March 2026: 01:00 becomes 02:00. Eighteen hours of wall clock from 00:30 are seventeen.
    const of = evening(course('main', dish('the-roast', step('roast', 30, notBefore('00:30'), notAfter('18:30')))), {
      date: '2026-03-29',
      cooks: [cook('kim', ['home 00:00 23:00'])],
    })
    const { from, to } = activity(of, 'roast')
    expect((to ?? 0) - (from ?? 0)).toBe(17 * 120)
  })

  test('T1 on the night with an hour twice there is an hour more', () => {
    // Europe/London, 25 October 2026: 02:00 becomes 01:00.
    const of = evening(course('main', dish('the-roast', step('roast', 30, notBefore('00:30'), notAfter('18:30')))), {
      date: '2026-10-25',
      cooks: [cook('kim', ['home 00:00 23:00'])],
    })
    const { from, to } = activity(of, 'roast')
    expect((to ?? 0) - (from ?? 0)).toBe(19 * 120)
  })

  test('T3 a dinner past midnight keeps its lengths', () => {
    const of = evening(course('late', dish('the-soup', step('soup', 30, notBefore('23:30'), notAfter('1 00:45')))), {
      guestsFrom: at('23:45'),
      sitDown: at('1 00:30'),
      cooks: [cook('kim', ['home 20:00 1 03:00'])],
    })
    const { from, to } = activity(of, 'soup')
    expect((to ?? 0) - (from ?? 0)).toBe(75 * 2)
    expect(problemOf(of).servings[0]?.earliest).toBe(tickOf(of, at('1 00:30'), 'up'))
    expect(problemOf(of).horizon.to).toBeGreaterThan(tickOf(of, at('1 03:00'), 'down'))
  })
})

describe('steps', () => {
  test('O2 what is made or carried is in the dish’s kitchen, what is finished, plated or a chore in the host’s', () => {
    const of = evening(
      course(
        'main',
        dish(
          'pie',
          dishWith({ kitchen: 'away', carry: { how: 'hot', most: min(30), kind: 'safety' } }),
          step('bake', 30),
          step('drive', 20, role('carry'), where('outside'), follows('bake')),
          step('warm', 10, role('finish'), follows('drive')),
          step('cut', 3, role('plate'), follows('warm')),
        ),
      ),
      chores(step('table', 20, where('table'))),
      {
        kitchens: [kitchen('home', HOME_KIT), kitchen('away', [], 20)],
        cooks: [cook('kim', ['away 12:00 17:00', 'home 17:30 23:00'])],
      },
    )
    expect(activity(of, 'bake')).toMatchObject({ place: 'away', at: 'kitchen', plating: false, delivery: 'pie' })
    expect(activity(of, 'drive')).toMatchObject({ place: 'away', at: 'outside', road: { to: 'home' } })
    expect(activity(of, 'warm')).toMatchObject({ place: 'home' })
    expect(activity(of, 'cut')).toMatchObject({ place: 'home', plating: true })
    expect(activity(of, 'table')).toMatchObject({ place: 'home', at: 'table', claimed: [] })
    expect(activity(of, 'table').delivery).toBeUndefined()
    expect(activity(of, 'bake').road).toBeUndefined()
    expect(problemOf(of).deliveries).toMatchObject([
      { id: 'pie', carry: { most: 60, bound: 'safety' }, keeps: { place: 'home' } },
    ])
  })

  test('O2 a carrying step at home is not on the road', () => {
    expect(activity(only(role('carry')), 'roast').road).toBeUndefined()
  })

  test('O1 dropped and spare dishes are not planned, nor are lags to them', () => {
    const of = evening(
      course(
        'main',
        dish('the-roast', step('roast', 30, follows('sauce'), follows('spare-step'), follows('salt')), step('salt', 5)),
        dish('gravy', dishWith({ state: 'dropped' }), step('sauce', 10)),
        dish('pie', dishWith({ state: 'spare' }), step('spare-step', 10)),
      ),
    )
    const { problem, index } = toProblem(of)
    expect(problem.activities.map(({ id }) => id)).toEqual(['roast', 'salt'])
    expect(problem.lags).toMatchObject([{ from: 'salt', to: 'roast' }])
    expect(index.lags).toEqual([{ step: 'roast', after: 'salt' }])
    expect(problem.deliveries.map(({ id }) => id)).toEqual(['the-roast'])
  })

  test('O1 a course whose dishes are all dropped is not served, one without a dish as yet is', () => {
    const of = evening(
      course('starter', dish('the-soup', dishWith({ state: 'dropped' }), step('soup', 10))),
      course('main', dish('the-roast', step('roast', 30))),
      course('pudding'),
    )
    expect(problemOf(of).servings.map(({ id, role: { kind } }) => [id, kind])).toEqual([
      ['main', 'first'],
      ['pudding', 'next'],
    ])
  })

  test('O3 eight covers in pans of two are four batches, one after the other', () => {
    const of = evening(course('main', dish('fish', step('fry', 6, ring('large'), batch(2)))), { covers: 8 })
    const { problem, index } = toProblem(of)
    expect(problem.activities.map(({ id }) => id)).toEqual(['fry#0', 'fry#1', 'fry#2', 'fry#3'])
    expect(problem.activities.every(({ modes }) => modes[0]?.likely === 12)).toBe(true)
    expect(problem.together).toEqual([{ activities: ['fry#0', 'fry#1', 'fry#2', 'fry#3'], most: 1 }])
    expect(problem.lags.map(({ from, to, edge, least, most }) => [from, to, edge, least, most])).toEqual([
      ['fry#0', 'fry#1', 'start', 0, undefined],
      ['fry#1', 'fry#2', 'start', 0, undefined],
      ['fry#2', 'fry#3', 'start', 0, undefined],
    ])
    expect(index.activities.get('fry#2')).toMatchObject({ batch: 2, batches: 4, step: { id: 'fry' }, dish: { id: 'fish' } })
    expect(index.lags).toEqual([null, null, null])
  })

  test.each([
    [8, undefined, 3, 3],
    [8, 5, 3, 2],
    [6, undefined, 3, 2],
    [6, undefined, 8, 1],
    [4, 0.9, 0.3, 3],
  ])('O3 %i covers, %s portions, pans of %d: %i batches', (covers, portions, pan, count) => {
    const of = evening(
      course('main', dish('fish', dishWith(portions === undefined ? {} : { portions }), step('fry', 6, batch(pan)))),
      {
        covers,
      },
    )
    expect(problemOf(of).activities.map(({ id }) => id)).toEqual(
      count === 1 ? ['fry'] : Array.from({ length: count }, (_, k) => `fry#${k}`),
    )
  })

  // Eight eat, three of them without cream; pans of three.
  const forked = (state: 'on' | 'dropped', more: Parameters<typeof dishWith>[0] = {}) =>
    evening(
      course(
        'main',
        dish(
          'pie',
          step('dough', 20, batch(3)),
          step('fill', 10, batch(3)),
          step('bake', 30, batch(3)),
          step('serve', 4, batch(3)),
        ),
        dish(
          'plain',
          dishWith({ state, variant: { of: 'pie', fork: 'fill', portions: 3 }, ...more }),
          step('bake-plain', 30, batch(3), follows('fill')),
        ),
      ),
      { covers: 8 },
    )
  const batchesIn = (of: Evening) =>
    Object.fromEntries([...toProblem(of).index.activities.values()].map(({ step: { id }, batches }) => [id, batches]))

  test('O3 X2 up to the fork a step is for all, behind it for the rest, and the variant for its own', () => {
    expect(batchesIn(forked('on'))).toEqual({ dough: 3, fill: 3, bake: 2, serve: 2, 'bake-plain': 1 })
    expect(batchesIn(forked('dropped'))).toEqual({ dough: 3, fill: 3, bake: 3, serve: 3 })
  })

  test('O3 X2 a variant counts as often as it says, and what is left for nobody is made for all', () => {
    expect(batchesIn(forked('on', { portions: 8 }))).toMatchObject({ 'bake-plain': 1 })
    const whole = forked('on', { variant: { of: 'pie', fork: 'fill', portions: 8 } })
    expect(batchesIn(whole)).toMatchObject({ bake: 3, 'bake-plain': 3 })
  })

  test('O3 a variant without batches leaves the hash of its dish’s steps as it was', () => {
    const of = evening(
      course(
        'main',
        dish('pie', step('fill', 10), step('bake', 30)),
        dish('plain', dishWith({ variant: { of: 'pie', fork: 'fill', portions: 3 } }), step('bake-plain', 30)),
      ),
      { covers: 8 },
    )
    const none = { ...of, dishes: of.dishes.map(({ variant: _, ...rest }) => rest) }
    expect(problemHash(of)).toBe(problemHash(none))
  })

  test('O3 a lag’s least runs from every batch, its most from the first batch to the last start', () => {
    const of = evening(
      course('main', dish('fish', step('fry', 6, batch(2, 2)), step('sauce', 5, follows('fry', 1, 10), batch(2, 2)))),
      { covers: 4 },
    )
    const lags = problemOf(of).lags.filter(({ from, to }) => from.startsWith('fry') && to.startsWith('sauce'))
    expect(lags.map(({ from, to, least, most }) => [from, to, least, most])).toEqual([
      ['fry#0', 'sauce#0', 2, undefined],
      ['fry#0', 'sauce#1', 2, 20],
      ['fry#1', 'sauce#0', 2, undefined],
      ['fry#1', 'sauce#1', 2, undefined],
    ])
    expect(problemOf(of).together).toEqual([])
  })

  test('O3 a safety lag holds between all batches', () => {
    const of = evening(
      course('main', dish('fish', step('fry', 6, batch(2)), step('sauce', 5, follows('fry', 0, 10, { kind: 'safety' })))),
    )
    const lags = problemOf(of).lags.filter(({ to }) => to === 'sauce')
    expect(lags.map(({ from, most, bound }) => [from, most, bound])).toEqual([
      ['fry#0', 20, 'safety'],
      ['fry#1', 20, 'safety'],
    ])
  })

  test('O3 a step after itself is not a lag', () => {
    expect(problemOf(only(follows('roast', 5))).lags).toEqual([])
  })

  test('O2 ways keep their order, care, cooks, touches and kit', () => {
    const of = only(
      oven(160, 170, { shelves: 2, doorShut: min(10.2) }),
      or([15, 20, 25]),
      eye,
      ring('medium'),
      tool(' Blender '),
      or(12),
      cooks(2),
      worktop(3),
      fridge(2),
      freezer(),
    )
    expect(activity(of, 'roast').modes).toEqual([
      {
        care: 'leave',
        cooks: 0,
        least: 60,
        likely: 60,
        most: 60,
        touches: [
          { when: 'in', takes: 2, lateBy: 0 },
          { when: 'out', takes: 2, lateBy: 4 },
        ],
        uses: [{ kind: 'oven', shelves: 2, lowC: 160, highC: 170, preheated: true, doorShut: 21 }],
      },
      {
        care: 'eye',
        cooks: 1,
        least: 30,
        likely: 40,
        most: 50,
        touches: [],
        uses: [
          { kind: 'ring', size: 2 },
          { kind: 'store', of: 'tool:blender', amount: 1 },
        ],
      },
      {
        care: 'hands-on',
        cooks: 2,
        least: 24,
        likely: 24,
        most: 24,
        touches: [],
        uses: [
          { kind: 'store', of: 'worktop', amount: 3 },
          { kind: 'store', of: 'cold:cold', amount: 2 },
          { kind: 'store', of: 'cold:frozen', amount: 1 },
        ],
      },
    ])
  })

  test('H12 steps of one vessel say so', () => {
    const of = evening(
      course('main', dish('stew', step('brown', 10, vessel('pot')), step('simmer', 60, vessel('pot'), follows('brown')))),
    )
    expect(problemOf(of).activities.map((each) => each.vessel)).toEqual(['pot', 'pot'])
  })

  test('O4 the nearest claim wins: the step’s, then the dish’s, then the course’s', () => {
    const of = evening(
      course('starter', dish('the-soup', step('simmer', 10))),
      course('main', dish('the-roast', step('salt', 5), step('carve', 5)), dish('salad', step('toss', 5))),
      {
        cooks: ['kim', 'lou', 'max', 'noa'].map((id) => cook(id)),
        claims: [claim('main', 'kim'), claim('the-roast', 'lou', 'max'), claim('carve', 'noa', 'lou')],
      },
    )
    expect(activity(of, 'toss').claimed).toEqual(['kim'])
    expect(activity(of, 'salt').claimed).toEqual(['lou', 'max'])
    expect(activity(of, 'carve').claimed).toEqual(['noa', 'lou'])
    expect(activity(of, 'simmer').claimed).toEqual([])
  })
})

describe('kit and cooks', () => {
  test('O2 kit becomes rings by size, ovens with their slopes a tick, and stores by class', () => {
    const of = evening(course('main', dish('the-roast', step('roast', 30))), {
      kitchens: [
        kitchen('home', [
          ...HOME_KIT,
          { id: 'ice', kind: 'cold', keep: 'frozen', places: 2 },
          { id: 'mixer', kind: 'tool', tool: 'Stand mixer', count: 1 },
        ]),
      ],
    })
    expect(problemOf(of).kit).toEqual([
      { kind: 'store', id: 'fridge', place: 'home', of: 'cold:cold', capacity: 4 },
      { kind: 'store', id: 'ice', place: 'home', of: 'cold:frozen', capacity: 2 },
      { kind: 'store', id: 'mixer', place: 'home', of: 'tool:stand mixer', capacity: 1 },
      { kind: 'oven', id: 'oven', place: 'home', shelves: 2, maxC: 250, up: 4, down: 1.5 },
      { kind: 'ring', id: 'ring-l', place: 'home', size: 3, count: 1 },
      { kind: 'ring', id: 'ring-m', place: 'home', size: 2, count: 2 },
      { kind: 'ring', id: 'ring-s', place: 'home', size: 1, count: 1 },
      { kind: 'store', id: 'sink', place: 'home', of: 'tool:sink', capacity: 1 },
      { kind: 'store', id: 'worktop', place: 'home', of: 'worktop', capacity: 8 },
    ])
  })

  test('H18 what a waiting dish holds is held in the host’s kitchen', () => {
    const of = evening(
      course(
        'main',
        dish(
          'the-roast',
          dishWith({ keeps: { how: 'hot', most: min(20), kind: 'safety', uses: [ovenUse(70, 90, { oven: 'oven' })] } }),
          step('roast', 30),
        ),
      ),
    )
    expect(problemOf(of).deliveries[0]?.keeps).toEqual({
      most: 40,
      bound: 'safety',
      place: 'home',
      uses: [{ kind: 'oven', oven: 'oven', shelves: 1, lowC: 70, highC: 90, preheated: true }],
    })
  })

  test('H9 presences are in order and apart', () => {
    const of = evening(course('main', dish('the-roast', step('roast', 30))), {
      kitchens: [kitchen('home', HOME_KIT), kitchen('away', [])],
      cooks: [cook('kim', ['home 18:00 23:00', 'away 12:00 15:00', 'away 14:00 16:00', 'home 15:30 17:00', 'home 17:00 18:00'])],
    })
    const tick = (time: string) => tickOf(of, at(time), 'up')
    expect(problemOf(of).cooks[0]?.presence).toEqual([
      { place: 'away', from: tick('12:00'), to: tick('16:00') },
      { place: 'home', from: tick('16:00'), to: tick('23:00') },
    ])
  })
})

describe('courses', () => {
  test('H16 the welcome comes first, between the guests’ coming and sit-down; the first course at sit-down', () => {
    const of = evening(
      course(
        'main',
        courseWith({ notBefore: at('20:15'), lead: 'kim', pouring: min(2.2) }),
        dish('the-roast', step('roast', 30)),
      ),
      course('starter', courseWith({ order: 'a000' }), dish('the-soup', step('soup', 30))),
      course('nibbles', courseWith({ welcome: true }), dish('the-nuts', step('nuts', 2))),
    )
    const inOrder = { ...of, courses: of.courses.map((each) => (each.id === 'main' ? { ...each, order: 'a009' } : each)) }
    const tick = (time: string) => tickOf(of, at(time), 'up')
    expect(problemOf(inOrder).servings).toEqual([
      {
        id: 'nibbles',
        role: { kind: 'welcome', latest: tick('19:30') },
        earliest: tick('19:00'),
        eating: 40,
        clearing: 10,
        pouring: 0,
        wait: { ideal: [0, 20], most: 30 },
      },
      {
        id: 'starter',
        role: { kind: 'first', sitDown: tick('19:30') },
        earliest: tick('19:30'),
        eating: 40,
        clearing: 10,
        pouring: 0,
        wait: { ideal: [0, 20], most: 30 },
      },
      {
        id: 'main',
        role: { kind: 'next' },
        earliest: tick('20:15'),
        eating: 40,
        clearing: 10,
        pouring: 5,
        wait: { ideal: [0, 20], most: 30 },
        lead: 'kim',
      },
    ])
  })

  test('O1 the order of siblings, not of the file, is the order of courses', () => {
    const of = evening(course('b', dish('b1', step('b2', 5))), course('a', dish('a1', step('a2', 5))))
    const turned = { ...of, courses: [...of.courses].reverse(), steps: [...of.steps].reverse(), dishes: [...of.dishes].reverse() }
    expect(problemOf(turned)).toEqual(problemOf(of))
    expect(problemOf(of).servings.map(({ id }) => id)).toEqual(['b', 'a'])
  })
})
