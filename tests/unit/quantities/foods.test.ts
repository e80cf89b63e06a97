import { describe, expect, test } from 'vitest'
import type { Measures } from '#lib/domain/unit-words.ts'
import { toBuy } from '#lib/quantities/buy.ts'
import { exact } from '#lib/quantities/exact.ts'
import { REFUSE } from '#lib/quantities/sr28-refuse.ts'
import { WEIGHTS } from '#lib/quantities/sr28-weights.ts'
import { readUnit, type Unit } from '#lib/quantities/units.ts'
import { fill, weigh, weighPieces } from '#lib/quantities/weigh.ts'

const unit = (text: string, measures: Measures | null = null): Unit => {
  const reading = readUnit(text, measures)
  if (reading.kind !== 'unit') throw new Error(`${text} is ${reading.kind}`)
  return reading.unit
}
const grams = (food: string, n: string, text: string) => weigh(food, exact(n), unit(text)).map((each) => each.value.valueOf())

describe('volume and weight', () => {
  // USDA Standard Reference 28 (2016), table WEIGHT: the NDB number beside each.
  test.each([
    ['plain flour', '2', 'US cup', 250], // 20081: 1 cup 125 g
    ['granulated sugar', '1', 'US cup', 200], // 19335
    ['sugar', '1', 'US tsp', 4.2], // 19335
    ['butter', '1', 'US tbsp', 14.2], // 01145
    ['unsalted butter, softened', '1', 'US cup', 227], // 01145
    ['honey', '1', 'US tbsp', 21], // 19296
    ['whole milk', '1', 'US fl oz', 30.5], // 01077
    ['salt', '1', 'US tbsp', 18], // 02047
    ['baking powder', '1', 'US tsp', 4.6], // 18369
    ['red wine', '5', 'US fl oz', 147], // 14096: 1 fl oz 29.4 g
  ])('Q4 %s, %s %s: the grams of USDA SR28', (food, n, text, expected) => {
    expect(grams(food, n, text)).toHaveLength(1)
    expect(grams(food, n, text)[0]).toBeCloseTo(expected, 9)
  })
  test('Q4 brown sugar lies packed or loose: both are given (SR28 19334: 220 and 145 g a cup)', () => {
    const found = weigh('brown sugar', exact('1'), unit('US cup'))
    expect(found.map((each) => [each.how, each.value.valueOf()])).toEqual([
      ['packed', 220],
      ['unpacked', 145],
    ])
    expect(found[0]?.source.ref).toBe('NDB 19334')
  })
  test('Q4 another cup is weighed by the density of the US one (SR28 20081: 125 g in 236.5882365 ml)', () => {
    expect(grams('flour', '1', 'metric cup')[0]).toBeCloseTo((125 * 250) / 236.5882365, 9)
    expect(grams('honey', '1', 'AU tbsp')[0]).toBeCloseTo((339 * 20) / 236.5882365, 9)
  })
  test.each([
    'rice flour',
    'butter beans',
    'peanut butter',
    'coconut milk',
    'almond milk',
    'salted caramel',
    'flour tortillas',
    'stock',
    '',
  ])('Q4 %s has no sourced density, and is not taken for what it resembles', (food) => {
    expect(weigh(food, exact('1'), unit('US cup'))).toEqual([])
  })
  test('Q4 a weight is no volume to be weighed', () => {
    expect(weigh('flour', exact('1'), unit('g'))).toEqual([])
  })
  test('Q4 a weight fills the volume that weighs it', () => {
    let seen = 0
    for (const row of WEIGHTS)
      for (const [i, back] of fill(row.names[0] ?? '', exact('100'), unit('US cup')).entries()) {
        seen += 1
        expect(weigh(row.names[0] ?? '', back.value, unit('US cup'))[i]?.value.toFraction()).toBe('100')
      }
    expect(seen).toBeGreaterThan(50)
  })
  test('Q4 eggs, onions and cloves are weighed by size (SR28 01123, 11282, 11215)', () => {
    const eggs = weighPieces('large eggs', exact('9/4'))
    expect(eggs.find((each) => each.how === 'large')?.value.valueOf()).toBe(112.5)
    expect(weighPieces('onions', exact('2')).map((each) => each.value.valueOf())).toEqual([300, 220, 140])
    expect(weighPieces('garlic', exact('3'))[0]?.value.valueOf()).toBe(9)
    expect(weighPieces('brick', exact('1'))).toEqual([])
  })
  test('Q4 every row has its number, and no name means two foods', () => {
    const names = WEIGHTS.flatMap((row) => row.names)
    expect(names.length).toBeGreaterThan(80)
    expect(new Set(names).size).toBe(names.length)
    for (const row of WEIGHTS) expect(row.ndb).toMatch(/^\d{5}$/)
  })
})

describe('what to buy', () => {
  // USDA SR28 FOOD_DES, Refuse; as purchased = edible ÷ (1 − refuse).
  test.each([
    ['carrots', 1000, 1123.6], // 11124: 11 %
    ['fresh peas', 800, 2105.3], // 11304: 62 %
    ['green beans', 880, 1000], // 11052: 12 %
    ['leeks', 440, 1000], // 11246: 56 %
    ['raw prawns', 870, 1000], // 15270: 13 %
    ['leg of lamb', 780, 1000], // 17230: 22 %
  ])('Q5 for %s of %d g ready to cook, buy %d g (USDA SR28)', (food, edible, bought) => {
    expect(toBuy(food, exact(String(edible)))?.grams.valueOf()).toBeCloseTo(bought, 1)
  })
  test('Q5 an unknown refuse is not none', () => {
    expect(toBuy('salmon fillet', exact('500'))).toBeNull()
    expect(toBuy('carrot cake', exact('500'))).toBeNull()
    expect(toBuy('frozen peas', exact('500'))).toBeNull()
  })
  test('Q5 every percentage is one, and says what is thrown away', () => {
    expect(REFUSE.length).toBeGreaterThan(45)
    for (const row of REFUSE) {
      expect(row.refuse).toBeGreaterThan(0)
      expect(row.refuse).toBeLessThan(100)
      expect(row.what).not.toBe('')
    }
    const names = REFUSE.flatMap((row) => row.names)
    expect(new Set(names).size).toBe(names.length)
  })
})
