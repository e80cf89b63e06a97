import { expect, test } from 'vitest'
import type { Drink } from '#lib/domain/people.ts'
import { amountsOf, iceGrams, waterMl } from '#lib/drinks/amounts.ts'
import { bottleMinutes, chillings } from '#lib/drinks/cold.ts'
import { suggestions } from '#lib/drinks/pairing.ts'
import { demoEvening } from '#prisma/demo/demo-evening.ts'
import { readEvening } from '#tests/support/read-evening.ts'

const demo = demoEvening('2026-12-05')

test('DR5 a 75 cl bottle pours six glasses of 125 ml: arithmetic', () => {
  const wine: Drink = { id: 'w', course: 'main', order: 'a0', name: 'Red', role: 'with', mlEach: 125, abv: 13 }
  const bottles = (people: number) => amountsOf({ covers: 12, drinks: [wine] }, people)[0]?.bottles
  expect([1, 6, 7, 12].map(bottles)).toEqual([1, 1, 2, 2])
})

test('DR5 who drinks has the one, everybody else the other, and two of a sort are shared', () => {
  const amounts = new Map(amountsOf(demo, 4).map((amount) => [amount.drink, amount]))
  expect(amounts.get('white')).toMatchObject({ people: 4, ml: 440, bottles: 1, bottleMl: 750 })
  expect(amounts.get('jasmine')).toMatchObject({ people: 4, ml: 600, bottles: 1, bottleMl: 1000 })
  const two = { ...demo, drinks: [...demo.drinks, { ...(demo.drinks.find(({ id }) => id === 'white') as Drink), id: 'other' }] }
  expect(amountsOf(two, 4).find(({ drink }) => drink === 'other')?.people).toBe(2)
  expect(amountsOf(demo, 99).find(({ drink }) => drink === 'jasmine')?.people).toBe(0)
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
  const found = chillings(demo, amountsOf(demo, 4))
  expect(found.map(({ course, drinks }) => [course, drinks])).toEqual([
    ['welcome', ['perry', 'apple-bay']],
    ['starter', ['white', 'jasmine']],
    ['main', ['red', 'cherry']],
    ['pudding', ['sweet-cider']],
  ])
  expect(found[0]).toMatchObject({ bottles: 2, places: 1, wantIce: [] })
  const frosty = { ...demo, drinks: demo.drinks.map((drink) => (drink.id === 'perry' ? { ...drink, servedC: 3 } : drink)) }
  const [welcome] = chillings(frosty, amountsOf(frosty, 4))
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
