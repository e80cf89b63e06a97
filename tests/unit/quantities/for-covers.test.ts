import { describe, expect, test } from 'vitest'
import { amountText, numberText, shareText } from '#app/_words/amount.ts'
import { buysText, coversText, fillsText, scaleNoteText, weighsText } from '#app/_words/quantity.ts'
import { sourceText } from '#app/_words/source.ts'
import type { Ingredient } from '#lib/domain/ingredient.ts'
import type { Measures } from '#lib/domain/unit-words.ts'
import { exact } from '#lib/quantities/exact.ts'
import { forCovers } from '#lib/quantities/for-covers.ts'
import { scaleFactor } from '#lib/quantities/scale.ts'
import { sensible } from '#lib/quantities/sensible.ts'
import { readUnit } from '#lib/quantities/units.ts'
import { readAmount } from '#lib/recipes/make-ingredient.ts'

const line = (n: string, unit: string, food: string, scales: Ingredient['scales'] = 'yes') => ({
  food,
  amount: { n, unit },
  scales,
})
const shown = (ingredient: ReturnType<typeof line>, factor: string, reader: Measures | null = null) => {
  const quantity = forCovers(ingredient, exact(factor), reader)
  return { ...coversText(quantity), quantity, notes: quantity.notes.map((note) => scaleNoteText(note, ingredient.amount.unit)) }
}
const unit = (text: string) => {
  const reading = readUnit(text, null)
  return reading.kind === 'unit' ? reading.unit : null
}

describe('what is read beside an ingredient', () => {
  test('Q14 200 g for three made for four is 266⅔ g: shown as 265 g, the exact amount and the share beside it', () => {
    expect(shown(line('200', 'g', 'butter'), '4/3')).toMatchObject({ amount: '265 g', exactly: 'exactly 266⅔ g: 1 % less' })
    expect(shown(line('400', 'g', 'rice'), '2')).toMatchObject({ amount: '800 g', exactly: null })
    expect(shown(line('750', 'g', 'potatoes'), '2')).toMatchObject({ amount: '1.5 kg', exactly: null })
    expect(shown(line('4/3', 'US cup', 'flour'), '9/4')).toMatchObject({ amount: '3 US cups', exactly: null })
    expect(shown(line('1', 'US cup', 'flour'), '7/5')).toMatchObject({
      amount: '1⅜ US cups',
      exactly: 'exactly 1 2/5 US cups: 2 % less',
    })
  })

  test('Q14 once the dish an amount stands as it was written, however fine', () => {
    expect(shown(line('333', 'g', 'sugar'), '1')).toMatchObject({ amount: '333 g', exactly: null, notes: [] })
    expect(forCovers({ ...line('1', 'g', 'salt'), amount: null }, exact('2'), null)).toMatchObject({ amount: null, notes: [] })
  })

  test('Q14 kitchen figures are at most 5 % off above 10 g, and never nothing', () => {
    for (let grams = 10; grams < 20_000; grams = Math.ceil(grams * 1.037))
      expect(Math.abs(sensible(exact(String(grams)), unit('g')).by)).toBeLessThanOrEqual(0.05)
    for (const [n, of] of [
      ['1/100', 'US cup'],
      ['1/7', 'g'],
      ['1/1000', 'kg'],
    ] as const)
      expect(sensible(exact(n), unit(of)).value.valueOf()).toBeGreaterThan(0)
  })

  test('Q7 2½ eggs become 3, and it is said that this is 20 % more egg', () => {
    // 3 ÷ 2½ = 6/5 by arithmetic.
    const eggs = shown(line('5', '', 'eggs', 'whole'), '1/2')
    expect(eggs.amount).toBe('3')
    expect(eggs.notes).toEqual(['2½ → 3, 20 % more'])
  })

  test('Q7 salt, spice, what raises and what thickens are flagged in words', () => {
    const [salt] = shown(line('1', 'tsp', 'salt', 'by-taste'), '2').notes
    expect(salt).toMatch(/as written: salt seldom grows in proportion; in proportion it would be 2 tsp/)
    for (const food of ['baking powder', 'cornflour', 'ground cumin'])
      expect(shown(line('2', 'tsp', food), '2').notes).toEqual([expect.stringMatching(/seldom grows like that, so look twice/)])
    expect(shown(line('2', 'tsp', 'olive oil'), '2').notes).toEqual([])
  })

  test('Q2 a bare cup is asked about, and nothing is weighed or converted meanwhile', () => {
    const bare = forCovers(line('2', 'cup', 'flour'), exact('2'), 'metric')
    expect(bare.whose.map((each) => each.owner)).toEqual(['us', 'metric', 'au', 'imperial'])
    expect(bare).toMatchObject({ asRead: null, weighs: [], fills: [], buys: null })
  })

  test('Q4 two US cups of flour weigh about 250 g (USDA SR28 20081: 125 g a cup), of an unknown food nothing is said', () => {
    const flour = forCovers(line('1', 'US cup', 'flour'), exact('2'), null)
    expect(weighsText(flour.weighs)).toBe('about 250 g')
    expect(flour.weighs[0] && sourceText(flour.weighs[0].source)).toMatch(/^USDA, .*release 28, 2016, NDB 20081$/)
    expect(forCovers(line('1', 'US cup', 'star dust'), exact('2'), null).weighs).toEqual([])
    expect(weighsText(forCovers(line('1', 'US cup', 'brown sugar'), exact('1'), null).weighs)).toBe(
      'about 220 g (packed) or 145 g (unpacked)',
    )
  })

  test('Q4 a weight is told in the reader’s cups only for such foods, and pieces by their size (SR28 01123: a large egg 50 g)', () => {
    expect(fillsText(forCovers(line('250', 'g', 'flour'), exact('1'), 'us').fills)).toBe('about 2 US cups')
    expect(forCovers(line('250', 'g', 'flour'), exact('1'), null).fills).toEqual([])
    expect(forCovers(line('250', 'g', 'star dust'), exact('1'), 'us').fills).toEqual([])
    expect(weighsText(forCovers(line('3', '', 'eggs', 'whole'), exact('1'), null).weighs)).toMatch(/150 g \(large/)
  })

  test('Q5 1 kg of peeled carrots is 1.12 kg to buy (USDA SR28 11124: refuse 11 %, 1000 ÷ 0.89)', () => {
    const { buys } = forCovers(line('500', 'g', 'carrots, peeled'), exact('2'), null)
    expect(buys && buysText(buys)).toBe('buy 1.12 kg if that is its weight ready to cook: 11 % is crown, tops and scrapings')
    expect(forCovers(line('500', 'g', 'rice'), exact('2'), null).buys).toBeNull()
  })

  test('Q15 in the reader’s measures: grams for ounces, US cups and spoons for millilitres, none where they are theirs', () => {
    const read = (n: string, of: string, reader: Measures) => {
      const { asRead } = forCovers(line(n, of, 'stock'), exact('1'), reader)
      return asRead && `${numberText(asRead.value, asRead.unit?.word ?? '')} ${asRead.unit?.owner ?? ''} ${asRead.unit?.word}`
    }
    // 8 oz = 226.796 g; 500 ml = 2.113 US cups; 30 ml = 2.03 US tbsp; 1 US cup = 236.588 ml (CLDR 48.2).
    expect(read('8', 'oz', 'metric')).toBe('225  g')
    expect(read('500', 'ml', 'us')).toBe('2⅛ us cup')
    expect(read('30', 'ml', 'us')).toBe('2 us tbsp')
    expect(read('1', 'US cup', 'uk')).toBe('235  ml')
    expect(read('2', 'metric tbsp', 'uk')).toBeNull()
    expect(read('2', 'US tbsp', 'us')).toBeNull()
    expect(read('200', 'g', 'uk')).toBeNull()
    expect(read('1', 'lb', 'us')).toBeNull()
  })

  test('Q6 with a factor of portions ÷ yields every amount text reads back as the same amount', () => {
    const factor = scaleFactor(4, [{ people: 9, portion: 1 }])
    for (const [n, of] of [
      ['1/3', 'US cup'],
      ['250', 'g'],
      ['3', ''],
      ['2', '400 g tin'],
      ['7/3', 'AU tbsp'],
      ['1', 'clove'],
      ['5', 'small bunch'],
    ] as const) {
      const scaled = exact(n).mul(factor).toFraction()
      for (const amount of [
        { n: scaled, unit: of },
        { n, upTo: scaled, unit: of },
      ])
        expect(readAmount(amountText(amount), '.')).toEqual(amount)
    }
  })

  test('Q14 numbers and shares are written as people write them', () => {
    expect(['5/2', '800/3', '17/5', '3', '1/8', '0'].map((n) => numberText(n))).toEqual(['2½', '266⅔', '3 2/5', '3', '⅛', '0'])
    expect(numberText('5/4', 'kg')).toBe('1.25')
    expect([0.2, -0.014, 0.001].map(shareText)).toEqual(['20 % more', '1 % less', ''])
  })
})
