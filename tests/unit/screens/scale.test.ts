import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Demand, elastic, type Pace } from '#app/_order/picture/scale.ts'

const FROM = 1_000_000_000
const TO = FROM + 6 * 3_600_000
const moment = fc.integer({ min: FROM, max: TO })
const pace: fc.Arbitrary<Pace> = fc.record({ at: moment, perMinute: fc.double({ min: 0.05, max: 4, noNaN: true }) })
const demand: fc.Arbitrary<Demand> = fc
  .tuple(moment, moment, fc.double({ min: 0, max: 90, noNaN: true }))
  .map(([a, b, px]) => ({ from: Math.min(a, b), to: Math.max(a, b), px }))

test('U2 elastic time never runs backwards, and every demand for room holds', () => {
  fc.assert(
    fc.property(
      fc.array(pace, { maxLength: 6 }),
      fc.array(demand, { maxLength: 40 }),
      fc.array(moment, { minLength: 2, maxLength: 30 }),
      (paces, demands, moments) => {
        const scale = elastic(FROM, TO, paces, demands)
        const sorted = moments.toSorted((a, b) => a - b)
        for (const [index, at] of sorted.entries()) {
          const next = sorted[index + 1]
          if (next !== undefined) expect(scale.y(next)).toBeGreaterThanOrEqual(scale.y(at))
          expect(scale.y(at)).toBeGreaterThanOrEqual(0)
          expect(scale.y(at)).toBeLessThanOrEqual(scale.height)
        }
        for (const { from, to, px } of demands)
          if (to > from) expect(scale.y(to) - scale.y(from)).toBeGreaterThanOrEqual(px - 1e-6)
      },
    ),
  )
})

test('U2 without demands a minute is as high as its pace says', () => {
  const scale = elastic(
    FROM,
    TO,
    [
      { at: FROM, perMinute: 0.5 },
      { at: FROM + 3_600_000, perMinute: 3 },
    ],
    [],
  )
  expect(scale.y(FROM + 3_600_000)).toBeCloseTo(30)
  expect(scale.y(FROM + 3_660_000)).toBeCloseTo(33)
  expect(scale.folds).toEqual([FROM + 3_600_000])
})
