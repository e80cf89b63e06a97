import { expect, test } from 'vitest'
import { ethanolGrams, ethanolMl, measured, measureOf } from '#lib/drinks/alcohol.ts'

const FLUID_OUNCE = 29.5735295625

// Each as its publisher prints it. NHS and Alcohol Change UK round to a tenth, a half or a whole unit, so the printed figure is met within 0.15.
test.each([
  [750, 13.5, 10.125, 10, 'NHS, Alcohol units'],
  [250, 12, 3, 3, 'NHS, Alcohol units (quoted)'],
  [568, 5.2, 2.9536, 3, 'NHS, Alcohol units, its own worked example (quoted)'],
  [25, 40, 1, 1, 'NHS, Alcohol units (quoted)'],
  [125, 12, 1.5, 1.5, 'NHS, Leicestershire trust'],
  [175, 12, 2.1, 2.1, 'UK Chief Medical Officers 2016, press (quoted)'],
  [568, 3.6, 2.0448, 2, 'Alcohol Change UK, units table'],
  [568, 4, 2.272, 2.3, 'Alcohol Change UK, units table'],
  [330, 5, 1.65, 1.7, 'Alcohol Change UK, units table'],
  [500, 5.5, 2.75, 2.8, 'Alcohol Change UK, units table'],
  [125, 13, 1.625, 1.6, 'Alcohol Change UK, units table'],
  [175, 13, 2.275, 2.3, 'Alcohol Change UK, units table'],
  [250, 13, 3.25, 3.3, 'Alcohol Change UK, units table'],
  [275, 5.5, 1.5125, 1.5, 'Alcohol Change UK, units table'],
  [50, 40, 2, 2, 'Alcohol Change UK, units table'],
])('DR1 %d ml of %d %% are %d UK units, printed as %d: %s', (ml, abv, exact, printed) => {
  const units = measured(ethanolMl(ml, abv), 'uk-unit')
  expect(units).toBeCloseTo(exact, 10)
  expect(Math.abs(units - printed)).toBeLessThanOrEqual(0.15)
})

test.each([
  [12, 5, 'beer'],
  [5, 12, 'wine'],
  [1.5, 40, 'spirits'],
])('DR1 %d fl oz of %d %% are one US standard drink of 14 g: NIAAA (quoted), %s', (ounces, abv) => {
  const ethanol = ethanolMl(ounces * FLUID_OUNCE, abv)
  expect(measured(ethanol, 'us-drink')).toBeCloseTo(1, 2)
  expect(ethanolGrams(ethanol)).toBeCloseTo(14, 1)
})

// The formula litres × percent × 0.789: Australian Department of Health, NHMRC (quoted).
test.each([
  [375, 3.5, 1.036],
  [100, 13, 1.026],
  [30, 40, 0.947],
  [285, 4.9, 1.102],
])('DR1 %d ml of %d %% are %d Australian standard drinks', (ml, abv, drinks) => {
  expect(measured(ethanolMl(ml, abv), 'au-drink')).toBeCloseTo(drinks, 3)
})

test('DR1 each rules has its measure, and where none is named the smallest, which counts the most', () => {
  expect([measureOf('uk'), measureOf('us'), measureOf('au')]).toEqual(['uk-unit', 'us-drink', 'au-drink'])
  const counted = (['uk-unit', 'us-drink', 'au-drink'] as const).map((measure) => measured(100, measure))
  expect(measured(100, measureOf('strictest'))).toBe(Math.max(...counted))
})

test('DR1 half a bottle of 13 % is 4.9 units', () => {
  expect(measured(ethanolMl(375, 13), 'uk-unit')).toBeCloseTo(4.875, 10)
})
