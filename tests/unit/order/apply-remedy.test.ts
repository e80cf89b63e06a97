import { describe, expect, test } from 'vitest'
import type { Evening } from '#lib/domain/evening.ts'
import { parseEvening } from '#lib/domain/parse.ts'
import { applyRemedy, type Change } from '#lib/order/apply-remedy.ts'
import { canonicalJson } from '#lib/order/hash.ts'
import {
  at,
  claim,
  cook,
  course,
  courseWith,
  dish,
  dishWith,
  evening,
  eye,
  follows,
  HOME_KIT,
  kitchen,
  min,
  notBefore,
  or,
  oven,
  ring,
  step,
} from '#tests/support/evening-builders.ts'

const OVEN_2 = { id: 'oven-2', kind: 'oven' as const, name: 'Upper oven', shelves: 1, maxC: 230, upPerMin: 10, downPerMin: 4 }

const dinner = evening(
  { kitchens: [kitchen('home', [...HOME_KIT, OVEN_2])], cooks: [cook('kim'), cook('lou')], claims: [claim('stew', 'kim')] },
  course('soup-course', dish('soup', step('simmer', 20, eye, ring('medium'), or(10), ring('large')))),
  course(
    'main',
    courseWith({ wait: { ideal: [min(0), min(10)], most: min(15) } }),
    dish(
      'stew',
      dishWith({ keeps: { how: 'hot', most: min(5), kind: 'safety', uses: [] }, standIn: 'pie' }),
      step('cut', 10, notBefore('15:00')),
      step('bake', 60, oven(150, 160, { oven: 'oven' }), follows('cut', 5, 30)),
      step('serve', 2, follows('bake', 0, 10), follows('cut', 0, 200, { kind: 'safety' })),
    ),
    dish('pie', dishWith({ state: 'spare' }), step('warm', 5)),
  ),
)

const stepOf = (of: Evening, id: string) => of.steps.find((each) => each.id === id)
const dishOf = (of: Evening, id: string) => of.dishes.find((each) => each.id === id)

/** Applies, and looks that the evening is still one and nothing else in it has changed. */
const taken = (change: Change, ...touched: ('steps' | 'dishes' | 'courses' | 'claims' | 'sitDown')[]): Evening => {
  const before = canonicalJson(dinner)
  const after = applyRemedy(dinner, change)
  expect(canonicalJson(dinner)).toBe(before)
  expect(parseEvening(JSON.parse(JSON.stringify(after)))).toEqual({ ok: true, value: after })
  for (const key of Object.keys(dinner) as (keyof Evening)[])
    if (!touched.some((one) => one === key)) expect(after[key], key).toEqual(dinner[key])
  return after
}

describe('what a way out means', () => {
  test('O17 another way is the only one', () => {
    const after = taken({ kind: 'use-way', step: 'simmer', way: 1 }, 'steps')
    expect(stepOf(after, 'simmer')?.ways).toEqual([stepOf(dinner, 'simmer')?.ways[1]])
  })

  test('O17 ahead is from so early, another oven is that one', () => {
    expect(stepOf(taken({ kind: 'do-ahead', step: 'cut', earliest: at('-1 10:00') }, 'steps'), 'cut')?.earliest).toEqual(
      at('-1 10:00'),
    )
    const [use] = stepOf(taken({ kind: 'other-oven', step: 'bake', kit: 'oven-2' }, 'steps'), 'bake')?.ways[0]?.uses ?? []
    expect(use).toMatchObject({ kind: 'oven', oven: 'oven-2', lowC: 150, highC: 160 })
  })

  test('O17 to a cook is a claim of the step, which is nearer than its dish', () => {
    const once = taken({ kind: 'give-to', step: 'cut', cook: 'lou' }, 'claims')
    expect(once.claims).toEqual([claim('stew', 'kim'), claim('cut', 'lou')])
    expect(applyRemedy(once, { kind: 'give-to', step: 'cut', cook: 'kim' }).claims).toEqual([
      claim('stew', 'kim'),
      claim('cut', 'kim'),
    ])
  })

  test('O17 a wider temperature is that of one way', () => {
    const after = taken({ kind: 'widen-temperature', step: 'bake', way: 0, lowC: 150, highC: 175 }, 'steps')
    expect(stepOf(after, 'bake')?.ways[0]?.uses[0]).toMatchObject({ lowC: 150, highC: 175, oven: 'oven' })
  })

  test('O17 a longer wait lengthens the wish and leaves what is a matter of safety', () => {
    const serve = stepOf(taken({ kind: 'wait-longer', step: 'serve', after: 'bake', by: min(12) }, 'steps'), 'serve')
    expect(serve?.after.map(({ most }) => most)).toEqual([min(22), min(200)])
    expect(taken({ kind: 'wait-longer', step: 'serve', after: 'cut', by: min(12) }).steps).toEqual(dinner.steps)
  })

  test('O17 keeping longer lengthens the wish, on the way too, and leaves what is a matter of safety', () => {
    expect(dishOf(taken({ kind: 'keep-longer', dish: 'soup', by: min(7) }, 'dishes'), 'soup')?.keeps.most).toBe(min(17))
    expect(dishOf(taken({ kind: 'keep-longer', dish: 'stew', by: min(7) }), 'stew')?.keeps.most).toBe(min(5))
    const carried = {
      ...dinner,
      dishes: dinner.dishes.map((one) => ({ ...one, carry: { how: 'hot' as const, most: min(20), kind: 'quality' as const } })),
    }
    expect(dishOf(applyRemedy(carried, { kind: 'keep-longer', dish: 'stew', by: min(7) }), 'stew')).toMatchObject({
      keeps: { most: min(5) },
      carry: { most: min(27) },
    })
  })

  test('O17 the first course later is sit-down later, any other is wanted later', () => {
    expect(taken({ kind: 'course-later', course: 'soup-course', by: min(45) }, 'sitDown').sitDown).toEqual(at('20:15'))
    const after = taken({ kind: 'course-later', course: 'main', by: min(20) }, 'courses')
    expect(after.courses.find(({ id }) => id === 'main')?.wait).toEqual({ ideal: [min(20), min(30)], most: min(35) })
    const late = { ...dinner, sitDown: at('23:45') }
    expect(applyRemedy(late, { kind: 'course-later', course: 'soup-course', by: min(30) }).sitDown).toEqual(at('1 00:15'))
  })

  test('O17 a dropped dish gives way to its stand-in', () => {
    const after = taken({ kind: 'drop', dish: 'stew' }, 'dishes')
    expect([dishOf(after, 'stew')?.state, dishOf(after, 'pie')?.state]).toEqual(['dropped', 'on'])
    expect(dishOf(taken({ kind: 'drop', dish: 'soup' }, 'dishes'), 'soup')?.state).toBe('dropped')
  })

  test('O17 what the evening does not have is left alone', () => {
    const changes: Change[] = [
      { kind: 'use-way', step: 'simmer', way: 2 },
      { kind: 'use-way', step: 'nothing', way: 0 },
      { kind: 'do-ahead', step: 'nothing', earliest: at('10:00') },
      { kind: 'wait-longer', step: 'serve', after: 'nothing', by: min(5) },
      { kind: 'keep-longer', dish: 'nothing', by: min(5) },
      { kind: 'course-later', course: 'nothing', by: min(5) },
      { kind: 'drop', dish: 'nothing' },
    ]
    for (const change of changes) expect(taken(change), change.kind).toEqual(dinner)
  })
})
