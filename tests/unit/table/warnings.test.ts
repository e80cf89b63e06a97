import { expect, test } from 'vitest'
import { lastMinuteMinutes } from '#app/_order/last-minute.ts'
import { dishKitText } from '#app/_words/dish-kit.ts'
import { namesOf } from '#app/_words/names.ts'
import { warningWords } from '#app/_words/warning.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Ingredient } from '#lib/domain/ingredient.ts'
import type { KnownNeed } from '#lib/domain/people.ts'
import { planEvening } from '#lib/order/engine.ts'
import { dishKit } from '#lib/table/dish-kit.ts'
import { dishVerdict } from '#lib/table/dish-verdict.ts'
import { busyCourses, courseMinutes } from '#lib/table/last-minute.ts'
import { mainFoodOf } from '#lib/table/main-foods.ts'
import { nothingFor } from '#lib/table/nothing-for.ts'
import { ovenHeats } from '#lib/table/oven-heat.ts'
import { mainOf, sameMain } from '#lib/table/same-main.ts'
import { menuWarnings } from '#lib/table/warnings.ts'
import {
  course,
  dish,
  dishWith,
  evening,
  follows,
  fridge,
  HOME_KIT,
  kitchen,
  or,
  oven,
  ring,
  step,
  tool,
  worktop,
} from '#tests/support/evening-builders.ts'
import { loadEvening } from '#tests/support/load-evening.ts'
import { verdictOf } from '#tests/support/verdict-of.ts'

const food = (of: string, text: string, fields: Partial<Ingredient> = {}): Ingredient => ({
  id: `${of}-${text.replace(/[^a-z]/gi, '')}`.slice(0, 40),
  dish: of,
  order: 'a0',
  food: text,
  amount: null,
  scales: 'yes',
  allergens: [],
  checked: 'known',
  contains: [],
  ...fields,
})
const grams = (n: number) => ({ amount: { n: String(n), unit: 'g' } })
const withFood = (base: Evening, ...ingredients: Ingredient[]): Evening => ({ ...base, ingredients })
const suits = (ingredients: readonly Ingredient[], word: string) =>
  verdictOf(ingredients, [{ need: word, grade: 'allergy' }], 'strictest').kind
const need = (word: string, grade: KnownNeed['grade'] = 'avoids', guests = 1): KnownNeed => ({ need: word, grade, guests })

const twoHeats = (first: number, second: number, wait = 0) =>
  evening(
    course(
      'main',
      dish('lamb', step('lamb-roast', 60, oven(first, first + 10)), step('lamb-carve', 5, follows('lamb-roast', 20, 90))),
      dish(
        'potatoes',
        step('potatoes-roast', 40, oven(second, second + 10)),
        step('potatoes-salt', 2, follows('potatoes-roast', wait, wait + 10)),
      ),
    ),
  )

test('Y1 a course with more than ten last-minute minutes is named with its longest dish first; ten are none too many', () => {
  const menu = evening(
    course('main', dish('a', step('a1', 5)), dish('b', step('b1', 5))),
    course('sweet', dish('c', step('c1', 5))),
  )
  const minutes = (a: number, b: number) =>
    new Map([
      ['a', a],
      ['b', b],
      ['c', 10.4],
    ])
  expect(busyCourses(menu, minutes(4, 6))).toEqual([])
  expect(busyCourses(menu, minutes(4, 6.4))).toEqual([])
  const [warning, ...others] = busyCourses(menu, minutes(4, 7))
  expect(others).toEqual([])
  expect(warning).toEqual({
    kind: 'last-minute',
    course: 'main',
    minutes: 11,
    dishes: [
      { dish: 'b', minutes: 7 },
      { dish: 'a', minutes: 4 },
    ],
  })
  expect(courseMinutes(menu, 'main', minutes(4, 7))).toBe(11)
  expect(warning && warningWords(warning, namesOf(menu))).toMatchObject({ where: { kind: 'dish', id: 'b' } })
})

test('Y2 with a running order, two dishes of heats that do not meet warn when they are in one oven within an hour', () => {
  const menu = twoHeats(150, 210)
  const order = planEvening(menu, { budget: { steps: 400, seed: 1 } })
  const [warning, ...others] = ovenHeats(menu, order)
  expect(others).toEqual([])
  if (warning?.kind !== 'oven-heat') throw new Error('no warning')
  const [change] = warning.changes
  if (!change || warning.changes.length > 1) throw new Error('not one change')
  expect([change.first, change.next].map(({ dish: of, lowC }) => [of, lowC])).toEqual([
    ['lamb', 150],
    ['potatoes', 210],
  ])
  const cue = (of: string) => order.cues.find((each) => each.step === of)
  const gap = (Date.parse(cue('potatoes-roast')?.start ?? '') - Date.parse(cue('lamb-roast')?.end ?? '')) / 1000
  expect(change.seconds).toBe(gap)
  expect(gap).toBeGreaterThan(0)
  expect(warningWords(warning, namesOf(menu)).says).toMatch(/has to go from 150 to 160° to 210 to 220°.*leaves time for that\.$/)
  expect(ovenHeats(twoHeats(200, 205), null)).toEqual([])
})

test('Y2 an hour or more between them, one dish alone, or two ovens are no warning', () => {
  const menu = twoHeats(150, 210)
  const order = planEvening(menu, { budget: { steps: 400, seed: 1 } })
  const shifted = (minutes: number) => ({
    ...order,
    cues: order.cues.map((cue) =>
      cue.step === 'lamb-roast' ? { ...cue, start: earlier(cue.start, minutes), end: earlier(cue.end, minutes) } : cue,
    ),
  })
  expect(ovenHeats(menu, shifted(50)).length + ovenHeats(menu, shifted(0)).length).toBeGreaterThan(0)
  expect(ovenHeats(menu, shifted(61))).toEqual([])
  const alone = { ...menu, steps: menu.steps.map((each) => ({ ...each, dish: 'lamb' })) }
  expect(ovenHeats(alone, order)).toEqual([])
})
const earlier = (instant: string, minutes: number) => new Date(Date.parse(instant) - minutes * 60_000).toISOString()

test('Y2 an oven that changes twice for a course is one warning; that the order leaves time is said only when it is so', () => {
  const menu = evening(
    course(
      'main',
      dish('lamb', step('l1', 30, oven(150, 160))),
      dish('buns', step('b1', 20, oven(210, 220))),
      dish('tart', step('t1', 20, oven(170, 180))),
    ),
  )
  const planned = planEvening(menu, { budget: { steps: 200, seed: 1 } })
  type Stay = readonly [step: string, from: number, to: number]
  const ovenId = menu.kitchens.flatMap(({ kit }) => kit).find(({ kind }) => kind === 'oven')?.id ?? ''
  const at = (minutes: number) => new Date(Date.UTC(2026, 10, 29, 17, minutes)).toISOString()
  const order = (...times: Stay[]) => ({
    ...planned,
    cues: planned.cues.flatMap((cue) =>
      times
        .filter(([of]) => of === cue.step)
        .map(([, from, to]) => ({ ...cue, start: at(from), end: at(to), kit: [{ id: ovenId, unit: 0 }] })),
    ),
  })
  const says = (...times: Stay[]) => {
    const [warning, ...others] = ovenHeats(menu, order(...times))
    expect(others).toEqual([])
    return warning ? warningWords(warning, namesOf(menu)).says : null
  }
  const twice = says(['l1', 0, 30], ['b1', 45, 65], ['t1', 85, 105])
  expect(twice).toMatch(/has to change its heat twice: to 210 to 220°.*, 15 min after .*; to 170 to 180°.*, 20 min after /)
  expect(twice).toMatch(/leaves time for that\.$/)
  // From 160 to 210° in one minute is too fast for the oven of this kitchen.
  expect(says(['l1', 0, 30], ['b1', 31, 51])).toMatch(/1 min after [^.]*\.$/)
  expect(says(['l1', 0, 30], ['b1', 20, 40])).toMatch(/while .* is still in it\.$/)
})

test('Y2 without a running order only what is sure by the methods of one course and one oven warns', () => {
  expect(ovenHeats(twoHeats(150, 210), null)).toMatchObject([{ kind: 'oven-heat', inTime: null }])
  // The potatoes rest two hours: their heat is wanted long before the lamb's.
  expect(ovenHeats(twoHeats(150, 210, 160), null)).toEqual([])
  const two = evening(
    {
      kitchens: [
        kitchen('home', [
          ...HOME_KIT,
          { id: 'second', kind: 'oven', name: 'Small oven', shelves: 1, maxC: 230, upPerMin: 8, downPerMin: 3 },
        ]),
      ],
    },
    course('main', dish('a', step('a1', 30, oven(150, 160))), dish('b', step('b1', 30, oven(210, 220)))),
  )
  expect(ovenHeats(two, null)).toEqual([])
  const either = evening(
    course('main', dish('a', step('a1', 30, oven(150, 160))), dish('b', step('b1', 30, oven(210, 220), or(20), ring('small')))),
  )
  expect(ovenHeats(either, null)).toEqual([])
})

test('Y3 what a dish is mainly of: the only such food, most of the weight, first line and name, or the name alone', () => {
  const plain = { name: 'A dish' }
  expect(mainOf(plain, [food('a', 'leeks, in rings'), food('a', 'olive oil'), food('a', 'chicken stock')])).toEqual({
    food: 'leeks',
    by: 'only',
  })
  expect(mainOf(plain, [food('a', 'carrots', grams(200)), food('a', 'lamb shoulder', grams(900))])).toEqual({
    food: 'lamb',
    by: 'weight',
  })
  expect(mainOf(plain, [food('a', 'carrots', grams(500)), food('a', 'parsnips', grams(500))])).toBeNull()
  expect(mainOf(plain, [food('a', 'carrots', grams(500)), food('a', 'parsnips')])).toBeNull()
  expect(mainOf({ name: 'Pears in cider' }, [food('a', 'firm pears'), food('a', 'apples')])).toEqual({
    food: 'pears',
    by: 'first',
  })
  expect(mainOf({ name: 'Celeriac soup' }, [])).toEqual({ food: 'celeriac', by: 'name' })
  expect(mainOf({ name: 'Lamb, potatoes, cabbage' }, [])).toBeNull()
  expect(mainOf(plain, [food('a', 'plain flour', grams(500))])).toBeNull()
})

test('Y3 a food is known by its own words, not by what is made of it', () => {
  const foods: readonly (readonly [string, string | null])[] = [
    ['chicken thighs, bone in', 'chicken'],
    ['chicken stock', null],
    ['duck eggs', 'eggs'],
    ['egg, beaten, to brush', null],
    ['sweet potatoes', 'sweet potatoes'],
    ['beef tomatoes', 'tomatoes'],
    ['fine green beans', 'green beans'],
    ['butter beans', 'beans'],
    ['coffee beans', null],
    ['rice vinegar', null],
    ['rice noodles', 'noodles'],
    ['red pepper flakes', null],
    ['potato starch', null],
    ['vegetarian sausages', null],
    ['gold leaf', null],
  ]
  expect(foods.map(([text]) => [text, mainFoodOf(text)])).toEqual(foods)
})

test('Y3 the same main food in two dishes warns once; dropped dishes and variants do not count', () => {
  const menu = evening(course('first', dish('tart', step('t1', 5))), course('main', dish('gratin', step('g1', 5))))
  const both = withFood(
    menu,
    food('tart', 'leeks', grams(400)),
    food('gratin', 'leeks', grams(300)),
    food('gratin', 'carrots', grams(100)),
  )
  expect(sameMain(both)).toEqual([
    {
      kind: 'same-main',
      food: 'leeks',
      dishes: [
        { dish: 'tart', by: 'only' },
        { dish: 'gratin', by: 'weight' },
      ],
    },
  ])
  const changed = (fields: object) => ({
    ...both,
    dishes: both.dishes.map((each) => (each.id === 'tart' ? { ...each, ...fields } : each)),
  })
  expect(sameMain(changed({ state: 'dropped' }))).toEqual([])
  expect(sameMain(changed({ variant: { of: 'gratin', fork: 'g1', portions: 2 } }))).toEqual([])
})

test('Y4 a dish suits a need only when everything in it is known; what is kept away from is never outvoted', () => {
  const known = [food('a', 'leeks'), food('a', 'rapeseed')]
  expect(suits(known, 'vegan')).toBe('fits')
  expect(suits(known, 'sesame')).toBe('fits')
  expect(suits([], 'vegan')).toBe('not-confirmed')
  for (const checked of ['check-label', 'unknown'] as const)
    expect(suits([...known, food('a', 'crackers', { checked })], 'sesame')).toBe('not-confirmed')
  // A US label names no celery.
  expect(suits([food('a', 'seasoning', { labelRules: 'us' })], 'celery')).toBe('not-confirmed')
  expect(suits([food('a', 'seasoning', { labelRules: 'eu' })], 'celery')).toBe('fits')
  const cream = food('a', 'cream', { allergens: ['milk'] })
  expect(suits([...known, cream], 'vegan')).toBe('does-not')
  expect(suits([...known, { ...cream, swap: { for: ['vegan'], food: 'oat cream' } }], 'vegan')).toBe('with-change')
  expect(suits([...known, { ...cream, swap: { for: ['vegan'], food: 'oat cream' } }], 'milk')).toBe('does-not')
  expect(suits([...known, food('a', 'stock', { contains: ['poultry'] })], 'vegetarian')).toBe('does-not')
  expect(suits([food('a', 'ladyfingers', { abv: 12 })], 'alcohol')).toBe('does-not')
})

test('Y4 a name that makes it doubtful, a need of its own word, and needs beyond ingredients are never confirmed', () => {
  expect(suits([food('a', 'chicken stock')], 'vegetarian')).toBe('not-confirmed')
  expect(suits([food('a', 'white wine')], 'alcohol')).toBe('not-confirmed')
  expect(suits([food('a', 'radicchio')], 'chicory')).toBe('not-confirmed')
  expect(suits([food('a', 'chicory and radicchio')], 'chicory')).toBe('does-not')
  for (const word of ['kosher', 'constructor', 'low-fodmap'])
    expect(suits([food('a', 'leeks')], word), word).toBe('not-confirmed')
})

test('Y4 a course with nothing for a need says so, apart from one where something may be for it; a dislike is no need', () => {
  const menu = evening(
    course('main', dish('roast', step('r1', 5)), dish('greens', step('g1', 5))),
    course('sweet', dish('pears', step('p1', 5))),
    course('empty'),
  )
  const meat = food('roast', 'chicken', { contains: ['meat'] })
  const leaves = food('greens', 'leaves')
  const pears = food('pears', 'pears')
  expect(nothingFor(withFood(menu, meat, leaves, pears), [need('vegetarian', 'avoids', 2)])).toEqual([])
  const butter = food('greens', 'butter', { allergens: ['milk'], contains: ['meat'] })
  expect(
    nothingFor(withFood(menu, meat, butter, pears), [need('vegetarian', 'avoids', 2), need('vegetarian', 'dislikes')]),
  ).toEqual([{ kind: 'nothing-for', course: 'main', needs: [need('vegetarian', 'avoids', 2)], open: [] }])
  const label = food('greens', 'dressing', { checked: 'check-label' })
  const found = nothingFor(withFood(menu, meat, label, pears), [need('vegetarian'), need('sesame', 'severe')])
  expect(found).toEqual([{ kind: 'nothing-for', course: 'main', needs: [need('vegetarian')], open: ['greens'] }])
  const words = found.map((warning) => warningWords(warning, namesOf(menu)))
  expect(words[0]).toMatchObject({
    says: expect.stringMatching(/^Nothing here is confirmed for one guest \(vegetarian\)/),
    where: { kind: 'dish', id: 'greens' },
  })
})

test('Y4 the gravest need stands first', () => {
  const menu = evening(course('main', dish('roast', step('r1', 5))))
  const [found] = nothingFor(menu, [need('vegetarian'), need('nuts', 'allergy'), need('sesame', 'severe')])
  expect(found?.kind === 'nothing-for' && found.needs.map((each) => each.need)).toEqual(['sesame', 'nuts', 'vegetarian'])
})

test('Y4 a variant has what it shares with its dish up to the fork, and what of it nobody knows the step', () => {
  const menu = evening(
    course(
      'main',
      dish('stew', step('s1', 5), step('s2', 5)),
      dish('green', dishWith({ variant: { of: 'stew', fork: 's1', portions: 2 } }), step('v1', 5)),
    ),
  )
  const variant = menu.dishes.find(({ id }) => id === 'green')
  if (!variant) throw new Error('no variant')
  const base = food('green', 'beans')
  const kindOf = (of: Evening) => dishVerdict(of, variant, [{ need: 'vegetarian', grade: 'avoids' }]).kind
  const at = (id: string | undefined) => food('stew', 'lamb', { contains: ['meat'], ...(id === undefined ? {} : { step: id }) })
  expect(kindOf(withFood(menu, base, at('s2')))).toBe('fits')
  expect(kindOf(withFood(menu, base, at('s1')))).toBe('does-not')
  expect(kindOf(withFood(menu, base, at(undefined)))).toBe('not-confirmed')
})

test('Y5 what a dish wants of the kitchen is said once each, heats in the order of its steps, without the worktop', () => {
  const menu = evening(
    course(
      'main',
      dish(
        'pie',
        step('p1', 20, oven(200, 210), worktop(2)),
        step('p2', 10, oven(200, 210, { shelves: 2 })),
        step('p3', 10, oven(160, 160)),
        step('p4', 5, ring('medium'), tool('blender'), tool('Board'), tool('sink'), fridge()),
      ),
    ),
  )
  expect(dishKitText(dishKit(menu, 'pie', null))).toBe(
    'oven 200 to 210°, two shelves, then 160°, one shelf · a medium ring · blender · fridge',
  )
  const ways = evening(course('main', dish('soup', step('s1', 20, oven(180, 190), or(15), ring('small')))))
  expect(dishKitText(dishKit(ways, 'soup', null))).toBe('oven 180 to 190°, one shelf')
  const order = planEvening(ways, { budget: { steps: 200, seed: 1 } })
  const second = { ...order, cues: order.cues.map((cue) => ({ ...cue, way: 1 })) }
  expect(dishKitText(dishKit(ways, 'soup', second))).toBe('a small ring')
})

test('Y1 Y2 the evening of the lamb: the lamb and the shortbread want the oven within an hour, and courses want more than ten minutes', () => {
  const menu = loadEvening('a-lamb')
  const order = planEvening(menu, { budget: { steps: 1000, seed: 1 } })
  const minutes = lastMinuteMinutes(order, namesOf(menu))
  const warnings = menuWarnings(menu, { order, minutes, needs: null })
  const words = warnings.map((warning) => warningWords(warning, namesOf(menu)))
  expect(words.every(({ says, todo }) => says.length > 20 && todo.length > 10)).toBe(true)
  expect(warnings.filter(({ kind }) => kind === 'oven-heat').length).toBeGreaterThan(0)
  expect(warnings.filter(({ kind }) => kind === 'last-minute').length).toBeGreaterThan(0)
})
