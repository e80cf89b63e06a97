import { expect, test } from 'vitest'
import type { Evening } from '#lib/domain/evening.ts'
import type { NightFact } from '#lib/domain/people.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { cueOf, planned, when } from '#tests/support/checked-plan.ts'
import { cook, course, dish, dishWith, evening, leave, min, oven, ring, step, using } from '#tests/support/evening-builders.ts'

const NOW = '2026-11-14T19:00:00Z'
const begun = (id: string, time: string, by = 'kim'): NightFact => ({ step: id, started: `2026-11-14T${time}:00Z`, by })
const keeps = dishWith({ keeps: { how: 'hot', most: min(90), kind: 'quality', uses: [] } })

const clashes = (order: RunningOrder) =>
  order.clashes.map(({ kind, steps, kit, course: of, from, to, by }) => ({
    kind,
    steps,
    ...(kit === null ? {} : { kit }),
    ...(kind === 'wait' ? { course: of } : {}),
    at: `${from.slice(11, 16)}-${to.slice(11, 16)}`,
    by,
  }))

const tonight = (of: Evening): RunningOrder => planned(of, { now: NOW })

// One large ring. Both pans have been on it since 18:50; the first is off at 19:10, and what is planned has it at 19:20.
test('O15 two pans under way on one ring: still an order, and it says so until one is off', () => {
  const order = tonight(
    evening(
      course(
        'main',
        dish('soup', keeps, step('boil', 20, leave, ring('large'))),
        dish('stew', keeps, step('braise', 30, leave, ring('large'))),
        dish('sauce', keeps, step('reduce', 10, leave, ring('large'))),
      ),
      { night: [begun('boil', '18:50'), begun('braise', '18:50')] },
    ),
  )
  expect(clashes(order)).toEqual([{ kind: 'no-kit', steps: ['boil', 'braise'], kit: 'ring-l', at: '19:00-19:10', by: 'PT10M' }])
  expect(when(order, 'reduce')).toBe('19:20-19:30')
})

test('O15 two pans that can stand on two rings are no clash', () => {
  const of = evening(
    course(
      'main',
      dish('soup', keeps, step('boil', 20, leave, ring('medium'))),
      dish('stew', keeps, step('braise', 30, leave, ring('medium'))),
    ),
    { night: [begun('boil', '18:50'), begun('braise', '18:50')] },
  )
  expect(tonight(of).clashes).toEqual([])
})

test('O15 an oven too hot for what is in it', () => {
  const order = tonight(
    evening(
      course(
        'main',
        dish('lamb', keeps, step('roast', 60, oven(140, 155))),
        dish('bread', keeps, step('bake', 30, oven(220, 230))),
      ),
      { night: [begun('roast', '18:20'), begun('bake', '18:55')] },
    ),
  )
  expect(clashes(order)).toEqual([{ kind: 'no-kit', steps: ['roast', 'bake'], kit: 'oven', at: '19:00-19:20', by: 'PT20M' }])
})

test('O15 more in the oven than it has shelves, until enough is out', () => {
  const order = tonight(
    evening(
      course(
        'main',
        ...[25, 30, 40].map((minutes) => dish(`dish-${minutes}`, keeps, step(`bake-${minutes}`, minutes, oven(180, 200)))),
      ),
      { night: [25, 30, 40].map((minutes) => begun(`bake-${minutes}`, '18:50')) },
    ),
  )
  expect(clashes(order)).toEqual([
    { kind: 'no-kit', steps: ['bake-25', 'bake-30', 'bake-40'], kit: 'oven', at: '19:00-19:15', by: 'PT15M' },
  ])
})

// Lou left at 18:45 and was at it then.
test('O15 something under way whose cook has gone', () => {
  const order = tonight(
    evening(course('main', dish('sauce', keeps, step('stir', 30))), {
      cooks: [cook('kim'), cook('lou', ['home 12:00 18:45'])],
      claims: [{ target: 'stir', cook: 'lou' }],
      night: [begun('stir', '18:40', 'lou')],
    }),
  )
  expect(cueOf(order, 'stir')).toMatchObject({ state: 'running', cooks: ['lou'] })
  expect(clashes(order)).toEqual([{ kind: 'no-cook', steps: ['stir'], at: '19:00-19:10', by: 'PT10M' }])
})

test('O15 one cook with both hands in two things', () => {
  const order = tonight(
    evening(course('main', dish('sauce', keeps, step('stir', 30)), dish('salad', keeps, step('chop', 20), step('toss', 5))), {
      night: [begun('stir', '18:50'), begun('chop', '18:45')],
    }),
  )
  expect(clashes(order)).toEqual([{ kind: 'no-cook', steps: ['chop', 'stir'], at: '19:00-19:05', by: 'PT5M' }])
  expect(cueOf(order, 'toss').start.slice(11, 16) >= '19:20').toBe(true)
})

// The tart is due out at 19:09-19:11, and Kim beats the sauce until 19:20.
test('O15 something to be taken out that nobody is free for', () => {
  const order = tonight(
    evening(course('main', dish('sauce', keeps, step('beat', 30)), dish('tart', keeps, step('bake', 30, oven(180, 200)))), {
      night: [begun('beat', '18:50'), begun('bake', '18:40')],
    }),
  )
  expect(clashes(order)).toEqual([{ kind: 'no-cook', steps: ['bake'], at: '19:09-19:10', by: 'PT1M' }])
})

// The main was served at 18:55 without its sauce, which is ready at 19:10 at the soonest.
test('O15 a dish that is not done though its course was served comes late, and by how much', () => {
  const order = tonight(
    evening(
      course(
        'main',
        dish('steak', keeps, step('grill', 5)),
        dish('sauce', keeps, step('reduce', 10, using({ kind: 'ring', size: 'small' }))),
      ),
      {
        night: [
          { step: 'grill', started: '2026-11-14T18:48:00Z', done: '2026-11-14T18:54:00Z', by: 'kim' },
          { course: 'main', toTable: '2026-11-14T18:55:00Z', by: 'kim' },
        ],
      },
    ),
  )
  const late = clashes(order)
  expect(late).toMatchObject([{ kind: 'wait', steps: ['reduce'], course: 'main' }])
  expect(late[0]?.at).toBe(`18:55-${cueOf(order, 'reduce').end.slice(11, 16)}`)
})
