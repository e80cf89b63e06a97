import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Evening } from '#lib/domain/evening.ts'
import { donenessOf } from '#lib/safety/doneness.ts'
import type { Finding } from '#lib/safety/finding.ts'
import { foodSort } from '#lib/safety/foods.ts'
import { dishTimes, safetyOf } from '#lib/safety/safety-of.ts'
import {
  course,
  dish,
  dishWith,
  evening,
  eye,
  follows,
  fridge,
  leave,
  oven,
  ring,
  role,
  step,
} from '#tests/support/evening-builders.ts'
import { food, instant, orderOf } from './by-hand.ts'

const soup = (ingredients: Evening['ingredients'], more: Partial<Evening> = {}) =>
  evening(
    course(
      'first',
      dish(
        'soup',
        step('boil', 30, eye, ring('medium')),
        step('chill', 180, follows('boil', 0, 120), leave, fridge()),
        step('warm', 10, follows('chill'), eye, ring('medium')),
        step('ladle', 4, follows('warm'), role('plate')),
      ),
    ),
    { ingredients, ...more },
  )
const LEEKS = [food('soup', 'boil', 'leeks'), food('soup', 'boil', 'chicken stock', ['meat'])]
const kinds = (found: readonly Finding[]) => found.map(({ kind, weight }) => `${kind} ${weight}`)
type Times = Readonly<Record<string, readonly [string, string]>>
const good: Times = {
  boil: ['-1 18:00', '-1 18:30'],
  chill: ['-1 19:10', '19:00'],
  warm: ['19:12', '19:25'],
  ladle: ['19:26', '19:30'],
}

test('SF2 soup that is cooled in time, reheated and served: how it cools and that it is heated through are said, and nothing is beyond', () => {
  const plan = soup(LEEKS)
  const found = safetyOf(plan, orderOf(plan, good, { first: '19:30' }))
  expect(kinds(found)).toEqual(['cool do', 'reheat do'])
  expect(found[0]).toMatchObject({ dish: 'soup', step: 'chill', minutes: 40, most: 120, source: { publisher: 'FDA' } })
  expect(found[1]).toMatchObject({ step: 'warm', coreC: 74 })
})

test('SF2 minutes run from the heat or the fridge to the table, and what is left is put away within the limit of that moment', () => {
  const plan = soup(LEEKS)
  const [time] = dishTimes(plan, orderOf(plan, good, { first: '19:30' }))
  // It was heated from the cold without a word of how hot: the clock runs on from the fridge.
  expect(time).toMatchObject({ since: Date.parse(instant(plan, '19:00')), minutes: 30, most: 120 })
  expect(time?.leftoversBy).toBe(Date.parse(instant(plan, '21:00')))
  const told = { ...plan, steps: plan.steps.map((each) => (each.id === 'warm' ? { ...each, until: { coreC: 74 } } : each)) }
  expect(dishTimes(told, orderOf(told, good, { first: '19:30' }))[0]?.minutes).toBe(5)
  expect(dishTimes(told, orderOf(told, good, { first: '19:30' }), { isHot: true })[0]?.most).toBe(60)
})

test.each<[string, Times, string, number]>([
  ['too late into the fridge', { ...good, chill: ['-1 20:45', '19:00'] }, 'before-fridge', 135],
  ['too long before it is heated', { ...good, chill: ['-1 19:10', '16:00'] }, 'before-heat', 192],
  ['too long on its way to the table', { ...good, chill: ['-1 19:10', '17:00'], warm: ['17:05', '17:20'] }, 'to-table', 150],
])('SF2 %s is beyond the two hours of USDA FSIS', (_, times, stage, minutes) => {
  const plan = soup(LEEKS)
  const out = safetyOf(plan, orderOf(plan, times, { first: '19:30' })).filter(({ kind }) => kind === 'out')
  expect(out.map((found) => found.kind === 'out' && [found.weight, found.stage, found.minutes, found.most])).toContainEqual([
    'beyond',
    stage,
    minutes,
    120,
  ])
})

test('SF2 at exactly two hours nothing is said, a minute later it is', () => {
  const plan = soup(LEEKS)
  const out = (time: string) =>
    safetyOf(plan, orderOf(plan, { ...good, chill: [time, '19:00'] }, { first: '19:30' })).some(({ kind }) => kind === 'out')
  expect([out('-1 20:30'), out('-1 20:31')]).toEqual([false, true])
})

const late: Times = { ...good, chill: ['-1 21:45', '19:00'] }

test('SF3 what is not known counts as perishable; what surely stands does not', () => {
  const found = (ingredients: Evening['ingredients']) => {
    const plan = soup(ingredients)
    return safetyOf(plan, orderOf(plan, late, { first: '19:30' })).filter(({ kind }) => kind === 'out')
  }
  expect(found([])).toMatchObject([{ kind: 'out', unsure: true }])
  expect(found([food('soup', 'boil', 'zorgle root')])).toMatchObject([{ kind: 'out', unsure: false }])
  expect(found([food('soup', 'boil', 'black pepper'), food('soup', 'boil', 'caster sugar')])).toEqual([])
  // Flour is bread in the oven and porridge in a pan.
  expect(found([food('soup', 'boil', 'plain flour')])).toHaveLength(1)
})

test('SF3 a raw plant stands until it is heated, a raw fish does not', () => {
  const run = (name: string) => {
    const plan = evening(course('first', dish('pie', step('cut', 10), step('bake', 40, follows('cut'), oven(180, 200)))), {
      ingredients: [food('pie', 'cut', name)],
    })
    return kinds(safetyOf(plan, orderOf(plan, { cut: ['15:00', '15:10'], bake: ['18:40', '19:20'] }, { first: '19:30' })))
  }
  expect([run('leeks'), run('salmon')]).toEqual([[], ['out beyond']])
})

test('SF3 of any names: adding an ingredient never takes a finding away', () => {
  const names = ['plain flour', 'leeks', 'salmon', 'rice', 'zorgle root', 'double cream', 'eggs', 'sugar', 'olive oil']
  const outs = (foods: readonly string[]) => {
    const plan = soup(foods.map((name) => food('soup', 'boil', name)))
    return safetyOf(plan, orderOf(plan, late, { first: '19:30' })).filter(({ weight }) => weight === 'beyond').length
  }
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...names), { minLength: 1, maxLength: 4 }), fc.constantFrom(...names), (foods, more) => {
      expect(outs([...foods, more])).toBeGreaterThanOrEqual(outs(foods))
    }),
    { numRuns: 30 },
  )
})

test('SF4 cooked rice: into the fridge within an hour and eaten within a day, FSA (quoted); the US has no rule of its own', () => {
  const rice = [food('soup', 'boil', 'long-grain rice')]
  const run = (rules: Evening['rules']) => {
    const plan = soup(rice, { rules })
    const order = orderOf(plan, { ...good, chill: ['-1 19:40', '19:00'] }, { first: '19:30' })
    return kinds(safetyOf(plan, order)).filter((words) => words.endsWith('beyond'))
  }
  expect(run('uk')).toEqual(['out beyond', 'kept-long beyond'])
  expect(run('us')).toEqual([])
})

test('SF4 cooked food is eaten within two days, or three in the US', () => {
  const run = (rules: Evening['rules'], day: number) => {
    const plan = soup(LEEKS, { rules })
    const times: Times = { ...good, boil: [`${day} 12:00`, `${day} 12:30`], chill: [`${day} 13:00`, '19:00'] }
    return kinds(safetyOf(plan, orderOf(plan, times, { first: '19:30' }))).includes('kept-long beyond')
  }
  expect([run('uk', -2), run('strictest', -2), run('us', -2), run('us', -3)]).toEqual([true, true, false, true])
})

test('SF4 heated from the cold a second time is beyond', () => {
  const plan = evening(
    course(
      'first',
      dish(
        'soup',
        step('boil', 30, eye, ring('medium')),
        step('chill', 180, follows('boil'), leave, fridge()),
        step('warm', 10, follows('chill'), eye, ring('medium')),
        step('chill2', 60, follows('warm'), leave, fridge()),
        step('warm2', 10, follows('chill2'), eye, ring('medium')),
      ),
    ),
    { ingredients: LEEKS },
  )
  const times: Times = {
    boil: ['12:00', '12:30'],
    chill: ['12:40', '16:00'],
    warm: ['16:00', '16:10'],
    chill2: ['16:20', '19:00'],
    warm2: ['19:10', '19:25'],
  }
  expect(kinds(safetyOf(plan, orderOf(plan, times, { first: '19:30' })))).toContain('reheat-again beyond')
})

test('SF5 a fridge or a limit is offered where food stands too long, and a limit that is in the plan is not offered again', () => {
  const plan = evening(
    course(
      'first',
      dish('soup', step('boil', 30, eye, ring('medium')), step('warm', 10, follows('boil', 0, 1440), oven(160, 180))),
    ),
    { ingredients: LEEKS },
  )
  const order = orderOf(plan, { boil: ['12:00', '12:30'], warm: ['19:10', '19:25'] }, { first: '19:30' })
  const [out] = safetyOf(plan, order)
  expect(out?.kind === 'out' && out.fixes).toEqual([
    { kind: 'fridge', after: 'boil', before: 'warm', minutes: 120 },
    { kind: 'limit', step: 'warm', after: 'boil', from: 'end', minutes: 120 },
  ])
  const hard = {
    ...plan,
    steps: plan.steps.map((each) => (each.id === 'warm' ? follows('boil', 0, 90, { kind: 'safety' })(each) : each)),
  }
  const [again] = safetyOf(hard, order)
  expect(again?.kind === 'out' && again.fixes.map(({ kind }) => kind)).toEqual(['fridge'])
})

test('SF6 kept hot in kit it is not out; an oven below the limit keeps nothing hot', () => {
  const kept = (lowC: number) => {
    const uses = [{ kind: 'oven' as const, shelves: 1, lowC, highC: 90, preheated: false }]
    const plan = evening(
      course(
        'first',
        dish('roast', step('bake', 60, oven(180, 200)), dishWith({ keeps: { how: 'hot', most: 'PT3H', kind: 'quality', uses } })),
      ),
      { ingredients: [food('roast', 'bake', 'lamb shoulder', ['meat'])] },
    )
    const keeping = [{ dish: 'roast', from: instant(plan, '16:30'), to: instant(plan, '19:30'), kit: [{ id: 'oven', unit: 0 }] }]
    return kinds(safetyOf(plan, orderOf(plan, { bake: ['15:30', '16:30'] }, { first: '19:30' }, keeping)))
  }
  expect(kept(80)).toEqual(['keep-hot do'])
  expect(kept(55)).toEqual(['keep-too-cool beyond'])
})

test('SF7 raw egg, live shellfish and what is frozen are told with what to do', () => {
  const run = (rules: Evening['rules']) => {
    const made = evening(
      course(
        'first',
        dish('mousse', step('whisk', 10), step('set', 120, follows('whisk'), leave, fridge())),
        dish('mussels', step('steam', 8, eye, ring('large'))),
        dish('peas', { ...step('thaw', 240), does: 'Thaw the peas' }),
      ),
      {
        rules,
        ingredients: [
          food('mousse', 'whisk', 'eggs, separated', ['egg']),
          food('mussels', 'steam', 'live mussels', ['shellfish']),
          food('peas', 'thaw', 'frozen peas'),
        ],
      },
    )
    const times: Times = {
      whisk: ['17:00', '17:10'],
      set: ['17:15', '19:25'],
      steam: ['19:20', '19:28'],
      thaw: ['15:00', '19:00'],
    }
    return safetyOf(made, orderOf(made, times, { first: '19:30' }))
  }
  // FSA and ACMSF 2017 (quoted) against FoodSafety.gov (read): runny British Lion eggs, or pasteurised ones.
  expect(run('uk').find(({ kind }) => kind === 'raw-egg')).toMatchObject({ by: 'lion', dish: 'mousse' })
  expect(run('strictest').find(({ kind }) => kind === 'raw-egg')).toMatchObject({ by: 'pasteurised' })
  expect(run('us').find(({ kind }) => kind === 'shellfish')).toMatchObject({ food: 'live mussels' })
  expect(run('us').find(({ kind }) => kind === 'thaw')).toMatchObject({ weight: 'beyond', inFridge: false })
})

test('SF8 doneness is said at the step that cooks, with the times that are worth the same; less than published is beyond', () => {
  const plan = (coreC?: number) =>
    evening(
      course(
        'first',
        dish('bird', step('brown', 10, eye, ring('large')), {
          ...step('roast', 60, follows('brown'), oven(180, 200)),
          ...(coreC === undefined ? {} : { until: { coreC } }),
        }),
      ),
      { ingredients: [food('bird', 'brown', 'chicken thighs', ['meat', 'poultry'])] },
    )
  expect(donenessOf(plan(74), 'roast')).toMatchObject({ coreC: 74, low: null, cores: [{ atLeastC: 74 }] })
  expect(donenessOf(plan(74), 'roast')?.equivalents?.rows).toContainEqual({ celsius: 70, seconds: 120 })
  expect(donenessOf({ ...plan(74), rules: 'us' }, 'roast')?.equivalents).toBeNull()
  expect(donenessOf(plan(74), 'brown')).toBeNull()
  const low = plan(68)
  const found = safetyOf(low, orderOf(low, { brown: ['18:00', '18:10'], roast: ['18:15', '19:15'] }, { first: '19:30' }))
  expect(found).toMatchObject([{ kind: 'core-low', weight: 'beyond', coreC: 68, leastC: 74 }])
})

test.each([
  ['plain flour', 'starch'],
  ['dried lentils', 'starch'],
  ['red pepper', 'plant'],
  ['black pepper', 'stands'],
  ['olive oil and garlic', 'plant'],
  ['onions, softened, with cream', 'perishable'],
  ['gelatine', 'not-known'],
  ['chicken thighs, bone in', 'perishable'],
  ['chopped tomatoes from a tin', 'perishable'],
  ['long-grain white rice', 'rice'],
  ['broccoli', 'plant'],
  ['butter', 'stands'],
  ['zorgle root', 'not-known'],
  ['water', 'stands'],
  ['double cream', 'perishable'],
])('SF3 %s is sorted as %s', (name, sort) => expect(foodSort({ food: name, contains: [] })).toBe(sort))
