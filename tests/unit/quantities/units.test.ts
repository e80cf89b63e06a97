import { describe, expect, test } from 'vitest'
import { type Measures, nameUnit, unitText } from '#lib/domain/unit-words.ts'
import { amountText, exact, handy, mixedText } from '#lib/quantities/exact.ts'
import { convert, readUnit, sizeOf, sum, UNITS, type Unit } from '#lib/quantities/units.ts'

const unit = (text: string, measures: Measures | null = null): Unit => {
  const reading = readUnit(text, measures)
  if (reading.kind !== 'unit') throw new Error(`${text} is ${reading.kind}`)
  return reading.unit
}

describe('exact sizes', () => {
  // CLDR 48.2 supplemental units.json, by its definitions: 1 in = 25.4 mm, US gallon = 231 in³, imperial gallon = 4.54609 l,
  // pound = 0.45359237 kg. The same factors stand in NIST Handbook 44, Appendix C.
  const usGallon = exact('2.54').pow(3)?.mul(231)
  const imperialGallon = exact('4546.09')
  const pound = exact('453.59237')
  test.each([
    ['US gallon', usGallon, 1],
    ['US quart', usGallon, 4],
    ['US pint', usGallon, 8],
    ['US cup', usGallon, 16],
    ['US fl oz', usGallon, 128],
    ['US tbsp', usGallon, 256],
    ['US tsp', usGallon, 768],
    ['imperial gallon', imperialGallon, 1],
    ['imperial quart', imperialGallon, 4],
    ['imperial pint', imperialGallon, 8],
    ['imperial cup', imperialGallon, 16],
    ['imperial fl oz', imperialGallon, 160],
    ['lb', pound, 1],
    ['oz', pound, 16],
    ['stone', pound.mul(14), 1],
  ])('Q1 one %s is exactly its part of the definition (CLDR 48.2, NIST HB 44)', (text, whole, parts) => {
    expect(sizeOf(exact('1'), unit(text)).toFraction()).toBe(whole?.div(parts).toFraction())
  })

  // NSW Health, "Conversion chart": 1 tablespoon 20 ml, 1 cup 250 ml, 1 teaspoon 5 ml. CLDR cup-metric: 250 ml.
  test.each([
    ['AU tbsp', '20'],
    ['AU cup', '250'],
    ['AU tsp', '5'],
    ['metric cup', '250'],
    ['metric fl oz', '30'],
  ])('Q1 one %s is %s ml (NSW Health; CLDR 48.2)', (text, ml) => {
    expect(sizeOf(exact('1'), unit(text)).toFraction()).toBe(ml)
  })
})

describe("a word is nobody's measure until it is said whose", () => {
  test.each(['cup', 'tbsp', 'teaspoons', 'pint', 'fl. oz.', 'quart'])('Q2 a bare %s is asked about', (text) => {
    const reading = readUnit(text, null)
    expect(reading.kind).toBe('which')
    if (reading.kind === 'which') expect(reading.units.length).toBeGreaterThan(1)
  })
  test.each<[string, Measures, string]>([
    ['tbsp', 'us', '14.78676478125'],
    ['tbsp', 'uk', '15'],
    ['tbsp', 'au', '20'],
    ['cup', 'us', '236.5882365'],
    ['cup', 'metric', '250'],
    ['pint', 'uk', '568.26125'],
    ['US pint', 'uk', '473.176473'],
  ])('Q2 a %s in a text of %s measures is %s ml', (text, measures, ml) => {
    expect(unit(text, measures).size).toBe(ml)
  })
  test('Q2 a text of Australian or metric measures does not say whose its pint is', () => {
    expect(readUnit('pint', 'au').kind).toBe('which')
    expect(readUnit('pint', 'metric').kind).toBe('which')
  })
  test.each(['tin', 'clove', '', 'cupboard', 'constructor', '__proto__'])('Q2 "%s" is no measure', (text) => {
    expect(readUnit(text, 'us').kind).toBe('none')
  })
  test('Q2 grams and litres need nobody', () => {
    expect(unit('grammes').size).toBe('1')
    expect(unit('Litre').size).toBe('1000')
  })
  test('Q2 case tells T from t', () => {
    expect(nameUnit('T')?.word).toBe('tbsp')
    expect(nameUnit('t')?.word).toBe('tsp')
  })
  test('Q2 what is printed reads back as the same unit', () => {
    expect(UNITS.length).toBeGreaterThan(25)
    for (const each of UNITS) expect(unit(unitText(each))).toBe(each)
  })
})

describe('conversion', () => {
  // Worked from CLDR 48.2: 236.5882365/250; 453.59237 + 2 × 28.349523125; 568.26125/236.5882365; 4 × 20; 4 × 14.78676478125.
  test('Q3 worked examples, from CLDR 48.2 factors', () => {
    const one = exact('1')
    const value = (amount: string, from: string, to: string) => {
      const converted = convert(exact(amount), unit(from), unit(to))
      if (!converted.ok) throw new Error(converted.error)
      return converted.value
    }
    expect(value('1', 'US cup', 'metric cup').toFraction()).toBe(exact('0.946352946').toFraction())
    expect(value('1', 'imperial pint', 'US cup').valueOf()).toBeCloseTo(2.4019, 6)
    expect(value('4', 'AU tbsp', 'ml').toFraction()).toBe('80')
    expect(value('4', 'US tbsp', 'ml').toFraction()).toBe(exact('59.147059125').toFraction())
    const weight = sum([
      { n: one, unit: unit('lb') },
      { n: exact('2'), unit: unit('oz') },
    ])
    expect(weight.ok && sizeOf(weight.value, unit('lb')).toFraction()).toBe(exact('510.29141625').toFraction())
  })
  test('Q3 there and back is the same for every pair of one kind', () => {
    for (const from of UNITS)
      for (const to of UNITS) {
        const there = convert(exact('7/3'), from, to)
        expect(there.ok).toBe(from.kind === to.kind)
        if (!there.ok) continue
        const back = convert(there.value, to, from)
        expect(back.ok && back.value.toFraction()).toBe('7/3')
      }
  })
  test('Q3 volume is never added to weight', () => {
    expect(
      sum([
        { n: exact('1'), unit: unit('ml') },
        { n: exact('1'), unit: unit('g') },
      ]),
    ).toEqual({ ok: false, error: 'needs-density' })
  })
})

describe('fractions', () => {
  test('Q1 five times 1 1/3 cups for nine quarters is exact', () => {
    // 1 1/3 × 9/4 = 3 by arithmetic.
    expect(exact('4/3').mul(exact('9/4')).toFraction()).toBe('3')
    expect(mixedText(exact('7/3'))).toBe('2 1/3')
  })
  test('Q1 what the evening can keep is kept, and what it cannot is said', () => {
    expect(amountText(exact('9/4'))).toEqual({ n: '9/4', kept: true })
    const rounded = amountText(exact('1/1000001'))
    expect(rounded).toEqual({ n: '0', kept: false })
    expect(amountText(exact('12345.6789012'))).toEqual({ n: '12346', kept: false })
    for (const text of ['-1', '10000000']) expect(() => amountText(exact(text))).toThrow(RangeError)
  })
  test.each(['', '1/0x', '½', '1,5', 'Infinity', 'NaN', '1e9'])('Q1 "%s" is no exact number', (text) => {
    expect(() => exact(text)).toThrow(RangeError)
  })
  test('Q1 a handy amount is near, measurable and never nothing', () => {
    expect(handy(exact('0.34')).value.toFraction()).toBe('1/3')
    expect(handy(exact('1.776')).value.toFraction()).toBe('7/4')
    expect(handy(exact('1/100')).value.toFraction()).toBe('1/8')
    expect(Math.abs(handy(exact('1.776')).by)).toBeLessThan(0.02)
  })
})
