import { expect, test } from 'vitest'
import type { Drink } from '#lib/domain/people.ts'
import { headsOf } from '#lib/domain/portions.ts'
import { amountsOf, iceGrams, waterMl } from '#lib/drinks/amounts.ts'
import { bottleMinutes, chillings } from '#lib/drinks/cold.ts'
import { suggestions } from '#lib/drinks/pairing.ts'
import { demoEvening } from '#prisma/demo/demo-evening.ts'
import { readEvening } from '#tests/support/read-evening.ts'

const demo = demoEvening('2026-12-05')
const drunkBy = (drinkers: number | undefined, of = demo) => amountsOf({ ...of, drinkers })

test('DR5 a 75 cl bottle pours six glasses of 125 ml: arithmetic', () => {
  const wine: Drink = { id: 'w', course: 'main', order: 'a0', name: 'Red', role: 'with', mlEach: 125, abv: 13 }
  const bottles = (drinkers: number) => amountsOf({ covers: 12, courses: [], drinkers, drinks: [wine] })[0]?.bottles
  expect([1, 6, 7, 12].map(bottles)).toEqual([1, 1, 2, 2])
})

test('DR5 who drinks has the one, everybody else the other, and two of a sort are shared', () => {
  const amounts = new Map(drunkBy(4).map((amount) => [amount.drink, amount]))
  expect(amounts.get('white')).toMatchObject({ people: 4, ml: 440, bottles: 1, bottleMl: 750 })
  expect(amounts.get('jasmine')).toMatchObject({ people: 4, ml: 600, bottles: 1, bottleMl: 1000 })
  const two = { ...demo, drinks: [...demo.drinks, { ...(demo.drinks.find(({ id }) => id === 'white') as Drink), id: 'other' }] }
  expect(drunkBy(4, two).find(({ drink }) => drink === 'other')?.people).toBe(2)
  expect(drunkBy(99).find(({ drink }) => drink === 'jasmine')?.people).toBe(0)
})

// By hand, for the demo's eight: wine in 11 cl glasses from 75 cl, tea in 15 cl from a litre; three children have their own course before.
test.each([
  ['not said', undefined, { people: 8, ml: 880, bottles: 2 }, { people: 8, ml: 1200, bottles: 2 }],
  ['nobody', 0, { people: 0, ml: 0, bottles: 0 }, { people: 8, ml: 1200, bottles: 2 }],
  ['three', 3, { people: 3, ml: 330, bottles: 1 }, { people: 5, ml: 750, bottles: 1 }],
  ['all', 8, { people: 8, ml: 880, bottles: 2 }, { people: 0, ml: 0, bottles: 0 }],
] as const)('DR5 of eight %s drink alcohol: as many glasses of the one and of the other', (_, drinkers, wine, tea) => {
  const amounts = new Map(drunkBy(drinkers).map((amount) => [amount.drink, amount]))
  expect(amounts.get('white')).toMatchObject(wine)
  expect(amounts.get('jasmine')).toMatchObject(tea)
})

test('DR5 children have what has no alcohol with the course that is theirs, and are there for water and ice', () => {
  const [welcome, ...others] = demo.courses
  if (!welcome) throw new Error('the demo has courses')
  const children = { at: demo.guestsFrom, covers: 3 }
  const tea = { ...demo, courses: [{ ...welcome, children }, ...others] }
  const people = (drinkers?: number) => new Map(drunkBy(drinkers, tea).map((amount) => [amount.drink, amount.people]))
  for (const drinkers of [undefined, 0, 8])
    expect([people(drinkers).get('perry'), people(drinkers).get('apple-bay')]).toEqual([0, 3])
  expect(people(8).get('white')).toBe(8)
  expect([headsOf(demo), headsOf(tea)]).toEqual([8, 11])
  // The same three at a second course of their own are not three more.
  const twice = { ...tea, courses: tea.courses.map((course) => ({ ...course, children })) }
  expect(headsOf(twice)).toBe(11)
})

test('DR5 water and ice are planned: half a litre and half a kilo each, common practice, no source', () => {
  expect([waterMl(8), iceGrams(8, demo.drinks), iceGrams(8, [{ servedC: 15 }])]).toEqual([4000, 4000, 0])
})

test('DR6 a bottle is chilled by Newton’s law: two to three hours in the fridge to 8 °C, twenty to thirty minutes in ice', () => {
  expect(bottleMinutes('fridge', 8)).toEqual({ least: 120, likely: 150, most: 180 })
  const ice = bottleMinutes('ice', 8)
  expect([ice?.least, ice?.likely, ice?.most].map((minutes) => Math.round(minutes ?? 0))).toEqual([20, 25, 30])
  // 20 → 6 °C in 4 °C: ln 8 / ln 4 = 1.5 times as long.
  expect(bottleMinutes('fridge', 6)?.likely).toBeCloseTo(225, 8)
  expect(bottleMinutes('fridge', 4)).toBeNull()
  expect(bottleMinutes('ice', 4)).not.toBeNull()
  expect(bottleMinutes('fridge', 21)).toEqual({ least: 0, likely: 0, most: 0 })
})

test('DR6 course by course: what goes in, its room and its minutes; what is served warm stays out, what a fridge cannot do wants ice', () => {
  const found = chillings(demo, drunkBy(4))
  expect(found.map(({ course, drinks }) => [course, drinks])).toEqual([
    ['welcome', ['perry', 'apple-bay']],
    ['starter', ['white', 'jasmine']],
    ['main', ['red', 'cherry']],
    ['pudding', ['sweet-cider']],
  ])
  expect(found[0]).toMatchObject({ bottles: 2, places: 1, wantIce: [] })
  const frosty = { ...demo, drinks: demo.drinks.map((drink) => (drink.id === 'perry' ? { ...drink, servedC: 3 } : drink)) }
  const [welcome] = chillings(frosty, drunkBy(4, frosty))
  expect(welcome?.wantIce).toEqual(['perry'])
  expect(welcome?.minutes.likely).toBeCloseTo(bottleMinutes('fridge', 5)?.likely ?? 0, 8)
})

test('DR7 kinds are suggested by principle, each with its reason', () => {
  const best = (evening: typeof demo, course: string, role: 'with' | 'without') => suggestions(evening, course, role)[0]
  expect(best(demo, 'welcome', 'with')?.because).toContain('to-begin')
  expect(best(demo, 'pudding', 'with')).toMatchObject({ kind: 'sweet-wine' })
  expect(best(demo, 'pudding', 'without')?.because).toContain('sweet-not-drier')
  const lamb = readEvening('a-lamb')
  const main = lamb.courses[1]?.id ?? ''
  expect(best(lamb, main, 'with')).toMatchObject({ kind: 'full-red' })
  expect(best(lamb, main, 'with')?.because).toEqual(expect.arrayContaining(['full-with-full', 'tannin-with-meat']))
  expect(suggestions({ ...demo, dishes: [], ingredients: [] }, 'main', 'with')).toEqual([])
})

test('DR7 with something sweet nothing drier, otherwise nothing sweet, and one without alcohol has none', () => {
  for (const evening of [demo, readEvening('a-lamb'), readEvening('c-pork')])
    for (const { id } of evening.courses) {
      const all = [...suggestions(evening, id, 'with'), ...suggestions(evening, id, 'without')]
      expect(all.every(({ because }) => because.length > 0)).toBe(true)
      const sweets = all.filter(({ kind }) => ['sweet-wine', 'sweet-grape', 'warm-apple'].includes(kind))
      expect([0, all.length]).toContain(sweets.length)
      expect(suggestions(evening, id, 'without').every(({ abv }) => abv === 0)).toBe(true)
    }
})
