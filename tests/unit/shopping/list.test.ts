import { expect, test } from 'vitest'
import { listOf } from '#app/_shopping/list-of.ts'
import { drinksText, labelText, leftText, readMoney, toBuyText, wantedText, whenText } from '#app/_words/shopping.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Ingredient } from '#lib/domain/ingredient.ts'
import type { ShoppingNote, Tick } from '#lib/domain/shopping.ts'
import { groupLines, isFor, priced } from '#lib/shopping/groups.ts'
import type { Line } from '#lib/shopping/line.ts'
import { thawHours } from '#lib/shopping/thaw.ts'
import { course, dish, dishWith, evening, kitchen, step } from '#tests/support/evening-builders.ts'

/** "200 g flour", "1/2 tin of beans", "salt": an ingredient of a dish for four. */
const needs = (dishId: string, ...texts: readonly string[]): Ingredient[] =>
  texts.map((text, index) => {
    const [, n, upTo, unit = '', food = ''] =
      /^(?:(\d+(?:\/\d+)?)(?:-(\d+))? ?(?:(kg|g|ml|l|US cup|US tbsp|tbsp|tin|bunch)\b)? ?)?(.*)$/.exec(text) ?? []
    return {
      id: `${dishId}-${index}`,
      dish: dishId,
      order: `a${index}`,
      food,
      amount: n === undefined ? null : { n, ...(upTo ? { upTo } : {}), unit },
      scales: n === undefined ? 'by-taste' : 'yes',
      allergens: [],
      checked: 'known',
      contains: [],
    }
  })

/** Two dishes for four, of an evening of eight: every amount is wanted twice. */
const dinner = (one: readonly string[], two: readonly string[] = [], change: Partial<Evening> = {}): Evening => {
  const made = evening(
    { covers: 8 },
    course(
      'main',
      dish('stew', dishWith({ yields: 4 }), step('cook', 30)),
      dish('cake', dishWith({ yields: 4 }), step('bake', 30)),
    ),
  )
  return { ...made, ingredients: [...needs('stew', ...one), ...needs('cake', ...two)], ...change }
}
const lines = (of: Evening): readonly Line[] => listOf(of, null, []).lines.filter(({ kind }) => kind === 'food' || kind === 'own')
const exactly = (of: Evening) => lines(of).map(({ food, unit, amount }) => [food, amount?.toFraction() ?? null, unit])
const note = (line: string, said: Partial<ShoppingNote>, id = 'n1'): ShoppingNote => ({ id, order: 'a0', line, ...said })
const ticked = (line: string, id: string, n?: string, unit = 'g'): Tick => ({
  id,
  line,
  at: '2026-12-04T10:00:00Z',
  ...(n === undefined ? {} : { of: { n, unit } }),
})

// Worked out by hand. Densities and refuse: USDA SR28 (2016), the NDB number beside each.
test.each([
  // 200 g × 2 + 100 g × 2
  ['weights', ['200 g plain flour'], ['100 g plain flour'], [['plain flour', '600', 'g']]],
  // 20081: a cup weighs 125 g: 2 × 2 × 125 + 2 × 150
  ['a volume of known density with a weight', ['2 US cup plain flour'], ['150 g plain flour'], [['plain flour', '800', 'g']]],
  // 01145: a tablespoon weighs 14.2 g: 2 × 3 × 14.2 + 2 × 100 = 285.2
  ['butter by the spoon', ['3 US tbsp butter'], ['100 g butter'], [['butter', '1426/5', 'g']]],
  ['volumes alone stay volumes', ['2 US cup plain flour'], [], [['plain flour', '946352946/1000000', 'ml']]],
  // 01009 has diced, shredded and melted: which is not said
  [
    'a food that lies in several ways',
    ['1 US cup cheddar'],
    ['200 g cheddar'],
    [
      ['cheddar', '473176473/1000000', 'ml'],
      ['cheddar', '400', 'g'],
    ],
  ],
  [
    'a food of no known density',
    ['60 ml quince syrup'],
    ['80 g quince syrup'],
    [
      ['quince syrup', '120', 'ml'],
      ['quince syrup', '160', 'g'],
    ],
  ],
  // A bare spoon is 14.8, 15 or 20 ml
  [
    'a spoon that may be of several countries',
    ['2 tbsp honey'],
    ['100 g honey'],
    [
      ['honey', '4', 'tbsp'],
      ['honey', '200', 'g'],
    ],
  ],
  [
    'whole ones and weights',
    ['3 onions'],
    ['200 g onion, chopped'],
    [
      ['onions', '6', ''],
      ['onion', '400', 'g'],
    ],
  ],
  ['one thing in two words', ['3 onions, sliced'], ['1 fresh onion'], [['onions', '8', '']]],
  [
    'two kinds of a thing',
    ['100 g unsalted butter'],
    ['100 g butter'],
    [
      ['unsalted butter', '200', 'g'],
      ['butter', '200', 'g'],
    ],
  ],
  ['tins', ['1/2 tin butter beans'], ['1 tin butter beans'], [['butter beans', '3', 'tin']]],
  ['the most of a range', ['2-3 lemons'], [], [['lemons', '6', '']]],
  // 11124: 11 % refuse; 2 × 500 ÷ 0.89
  ['what is weighed ready to cook', ['500 g peeled carrots'], [], [['peeled carrots', '100000/89', 'g']]],
  ['what is peeled afterwards', ['500 g carrots, peeled'], [], [['carrots', '1000', 'g']]],
  // 11124 again, of one part alone: 1000 ÷ 0.89 + 200
  ['both in one line', ['500 g peeled carrots'], ['100 g carrots'], [['peeled carrots', String(`${100000 + 200 * 89}/89`), 'g']]],
  ['to taste', ['salt'], ['1 kg salt'], [['salt', '2000', 'g']]],
  [
    'to taste alone',
    ['salt'],
    ['pepper'],
    [
      ['salt', null, null],
      ['pepper', null, null],
    ],
  ],
  ['water from the tap', ['2 l boiling water', '1 l water'], [], []],
] as const)('SH1 SH2 SH3 %s', (_what, one, two, wanted) => {
  const found = exactly(dinner(one, two))
  const simple = wanted.map(([food, n, unit]) => [food, n === null ? null : fraction(n), unit])
  expect(found).toEqual(simple)
})
const fraction = (text: string): string => {
  const [n = '1', d = '1'] = text.split('/')
  const divide = (a: bigint, b: bigint): bigint => (b === 0n ? a : divide(b, a % b))
  const by = divide(BigInt(n), BigInt(d))
  return BigInt(d) / by === 1n ? String(BigInt(n) / by) : `${BigInt(n) / by}/${BigInt(d) / by}`
}

test('SH4 packs are whole and of the usual size, or of the one that somebody said; half a tin is a tin', () => {
  const texts = (of: Evening) => lines(of).map((line) => `${toBuyText(line)} ${line.food}`)
  expect(texts(dinner(['190 g butter', '5 eggs', '1/4 tin butter beans', '1/2 bunch parsley', '250 g potatoes']))).toEqual([
    '2 × 250 g butter',
    '2 × 6 eggs',
    '1 tin butter beans',
    '1 bunch parsley',
    '500 g potatoes',
  ])
  const said = [note('butter|g', { pack: { n: '200', unit: 'g' } }), note('egg|', { buy: 9 }, 'n2')]
  expect(texts(dinner(['190 g butter', '5 eggs'], [], { shopping: said }))).toEqual(['2 × 200 g butter', '9 × 6 eggs'])
  expect(wantedText(lines(dinner(['190 g butter']))[0] as Line)).toBe('380 g wanted')
})

test('SH5 what is in the house is not bought; of another unit it says nothing; the first of two notes is right', () => {
  const have = (said: Partial<ShoppingNote>, more: readonly ShoppingNote[] = []) =>
    lines(dinner(['300 g flour'], [], { shopping: [note('flour|g', said), ...more] }))[0] as Line
  expect([have({ have: { n: '250', unit: 'g' } }).amount?.valueOf(), toBuyText(have({}))]).toEqual([350, '1 kg'])
  expect(have({ have: { n: '250', unit: 'ml' } }).amount?.valueOf()).toBe(600)
  expect(have({ have: { n: '700', unit: 'g' } }).standing.kind).toBe('have')
  expect(have({ have: 'all' }).standing.kind).toBe('have')
  expect(have({ shop: 'Mill' }, [note('flour|g', { shop: 'Market', price: 120 }, 'n2')])).toMatchObject({
    shop: 'Mill',
    price: 120,
  })
})

test('SH6 fish, bread and ice are bought on the day, poultry and mince a day before at most, by the order’s days', () => {
  const of = dinner(
    ['600 g salmon fillet', '1 chicken', '2 carrots', '100 g smoked trout'],
    ['1 sourdough loaf', '400 g salmon fillet'],
  )
  const when = (found: readonly Line[]) => found.map((line) => `${line.food}: ${whenText(line.when, '2026-12-05')}`)
  expect(when(lines(of))).toEqual([
    'salmon fillet: on Saturday, fresh',
    'chicken: not before Friday',
    'carrots: ',
    'smoked trout: ',
    'sourdough loaf: on Saturday, fresh',
  ])
  const cue = (id: string, start: string) => ({ step: id, start }) as never
  const order = { cues: [cue('cook', '2026-12-04T10:00:00Z'), cue('bake', '2026-12-05T10:00:00Z')] } as never
  const parted = listOf({ ...of, date: '2026-12-05' }, order, []).lines.filter(({ food }) => food === 'salmon fillet')
  expect(parted.map(({ key, amount, when: on }) => [key, amount?.valueOf(), on])).toEqual([
    ['salmon fillet|g|d-1', 1200, { kind: 'on', day: -1, said: false }],
    ['salmon fillet|g', 800, { kind: 'on', day: 0, said: false }],
  ])
  const [fish, chicken, carrot] = lines(of) as [Line, Line, Line]
  expect([-2, -1, 0].map((day) => [fish, chicken, carrot].map((line) => isFor(line, day)))).toEqual([
    [false, false, true],
    [false, true, true],
    [true, true, true],
  ])
})

test('SH7 each home shops for its own dishes, and a food of two homes is two lines', () => {
  const of = dinner(['200 g flour'], ['100 g flour'])
  const away = {
    ...of,
    kitchens: [...of.kitchens, kitchen('theirs', [], 20)],
    dishes: of.dishes.map((each) => (each.id === 'cake' ? { ...each, kitchen: 'theirs' } : each)),
  }
  expect(lines(away).map(({ key, amount, home }) => [key, amount?.valueOf(), home])).toEqual([
    ['flour|g', 400, null],
    ['flour|g|@theirs', 200, 'theirs'],
  ])
})

test('SH8 a line that was ticked for less asks for the rest; what nothing asks for any more is told, not lost', () => {
  const of = (covers: number, ticks: readonly Tick[]) => ({
    ...dinner(['100 g rice vinegar', '60 g onion']),
    covers,
    ticks: [...ticks],
  })
  const standing = (evening: Evening) => lines(evening).map((line) => line.standing.kind)
  expect(standing(of(8, [ticked('onion|g', 't1', '120')]))).toEqual(['open', 'got'])
  const more = lines(of(12, [ticked('onion|g', 't1', '120')]))[1]?.standing
  expect(more).toMatchObject({ kind: 'more' })
  expect(more?.kind === 'more' && more.n.valueOf()).toBe(60)
  expect(standing(of(12, [ticked('onion|g', 't1', '120'), ticked('onion|g', 't2', '180')]))).toEqual(['open', 'got'])
  // 2 × 500 g were bought for 520 g: they are enough for 900 g, too.
  expect(lines({ ...dinner(['450 g risotto rice']), ticks: [ticked('risotto rice|g', 't1', '1000')] })[0]?.standing.kind).toBe(
    'got',
  )
  expect(listOf(of(8, [ticked('leek|', 't3', '2', '')]), null, []).strays).toEqual([{ key: 'leek|', food: 'leek', by: [] }])
})

test('SH9 lines stand by shop, those with a name first, then along the aisles; what was typed of prices is added up', () => {
  const of = dinner(['1 chicken', '2 carrots', '500 g rice', '200 g salmon'], [], {
    shopping: [
      note('salmon|g', { shop: 'Quay', price: 1250 }),
      note('carrot|', { price: 90, aisle: 'By the door' }, 'n2'),
      { id: 'own1', order: 'a9', text: 'Candles', price: 300 },
    ],
  })
  const groups = groupLines(lines(of))
  expect(
    groups.map(({ shop, aisles }) => [shop, ...aisles.map(({ lines: here }) => here.map(({ food }) => food).join())]),
  ).toEqual([
    ['Quay', 'salmon'],
    [null, 'carrots', 'chicken', 'rice', 'Candles'],
  ])
  expect(priced(lines(of))).toEqual({ total: 1640, without: 2 })
  expect(['12', '12.4', '3,50 €', '£4.05', 'four', '1.234'].map(readMoney)).toEqual([1200, 1240, 350, 405, null, null])
  expect(leftText(lines(of))).toBe('5 of 5 left')
})

test('SH10 a label that matters to a guest is a task of its line; where their needs are not known every label is read', () => {
  const of = dinner(['200 g dark chocolate', '1 kg potatoes'])
  const unread = { ...of, ingredients: of.ingredients.map((each) => ({ ...each, checked: 'check-label' as const })) }
  const labels = (known: Parameters<typeof listOf>[2]) => listOf(unread, null, known).lines.map(labelText)
  expect(labels([])).toEqual(['', ''])
  expect(labels([{ need: 'milk', grade: 'severe', guests: 1 }])[0]).toMatch(/^Read the label: .*milk/)
  expect(labels(null).every((text) => text.startsWith('Read the label'))).toBe(true)
  expect(listOf(of, null, null).lines.map(labelText)).toEqual(['', ''])
})

test('SH11 drinks and ice stand on the list by the bottle, one drink of two courses on one line', () => {
  const drink = { id: 'd1', course: 'main', order: 'a0', name: 'Dry cider', role: 'with', mlEach: 150, abv: 5.5 } as const
  const of = dinner([], [], {
    drinks: [drink, { ...drink, id: 'd2', name: 'dry cider' }, { ...drink, id: 'd3', name: 'Cold tea', abv: 0, servedC: 6 }],
  })
  // Two of a sort share a course: 4 glasses of each of 8, 1.2 l together, in bottles of 50 cl; tea for all 8.
  expect(listOf(of, null, []).lines.map((line) => `${toBuyText(line)} ${line.food}`)).toEqual([
    '3 × 50 cl Dry cider',
    '2 × 1 l Cold tea',
    '4 l Water for the table',
    '4 kg Ice',
  ])
})

// USDA FSIS: about 24 hours in the fridge for every 4 to 5 lb; never less than a day (theirs too, from memory).
test('SH11 SH16 what has alcohol is bought for as many as drink it, the other for the rest; that nobody has said how many is said', () => {
  const glass = { course: 'main', order: 'a0', mlEach: 150 } as const
  const drinks: Evening['drinks'] = [
    { ...glass, id: 'd1', name: 'Red wine', role: 'with', abv: 13 },
    { ...glass, id: 'd2', name: 'Cold tea', role: 'without', abv: 0 },
  ]
  const shop = (change: Partial<Evening>) => {
    const of = dinner([], [], { drinks, ...change })
    const found = listOf(of, null, []).lines
    return [...found.map((line) => `${toBuyText(line)} ${line.food}`), drinksText(found, of)]
  }
  // 8 × 15 cl = 1.2 l of either
  expect(shop({})).toEqual([
    '2 × 75 cl Red wine',
    '2 × 1 l Cold tea',
    '4 l Water for the table',
    'There is enough of each drink for everybody: nobody has said how many drink alcohol.',
  ])
  // 3 × 15 = 45 cl, 5 × 15 = 75 cl
  expect(shop({ drinkers: 3 })).toEqual([
    '75 cl Red wine',
    '1 l Cold tea',
    '4 l Water for the table',
    'Drinks are for three with alcohol and for five without alcohol.',
  ])
  expect(shop({ drinkers: 0 })).toEqual(['2 × 1 l Cold tea', '4 l Water for the table', 'Drinks are for eight without alcohol.'])
  expect(shop({ drinks: [] })).toEqual([''])
})

// By hand: a dish for four, fed to 6 children (× 3/2) who eat before, or to the 8 of the table (× 2).
test('SH1 SH16 what children eat before is bought for the children, and water for them besides', () => {
  const of = dinner(['200 g flour'], ['100 g flour', '3 eggs'])
  const [main] = of.courses
  if (!main) throw new Error('the dinner has a course')
  const tea = { ...main, id: 'tea', welcome: true, children: { at: { day: 0, time: '18:00' }, covers: 6 } } as const
  const both: Evening = {
    ...of,
    courses: [tea, main],
    dishes: of.dishes.map((each) => (each.id === 'cake' ? { ...each, course: 'tea' } : each)),
    drinks: [{ id: 'd1', course: 'tea', order: 'a0', name: 'Apple juice', role: 'without', mlEach: 200, abv: 0 }],
  }
  // 2 × 200 + 1.5 × 100 g; 1.5 × 3 = 4.5 eggs; 6 × 20 cl; half a litre for each of 14
  expect(listOf(both, null, []).lines.map(({ food, amount }) => [food, amount?.valueOf()])).toEqual([
    ['flour', 550],
    ['eggs', 4.5],
    ['Apple juice', 1200],
    ['Water for the table', 7000],
  ])
  // A dish that says for how many it is keeps to that.
  const said = { ...both, dishes: both.dishes.map((each) => (each.id === 'cake' ? { ...each, portions: 4 } : each)) }
  expect(lines(said).map(({ amount }) => amount?.valueOf())).toEqual([500, 3])
})

test('SH12 frozen food thaws in the fridge by its weight, never in less than a day', () => {
  expect(thawHours(500)).toEqual({ least: 24, likely: 24, most: 24 })
  // 12 lb = 5443 g: 57.6 to 72 hours, in whole ones
  expect(thawHours(5443)).toEqual({ least: 58, likely: 65, most: 72 })
})
