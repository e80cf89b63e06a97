import { describe, expect, test } from 'vitest'
import { chanceWithin, quantile, quantilesOf, type Shape, type Spread } from '#lib/scheduling/chance/spread.ts'

/** Mean and variance by equal steps of chance: no dice. */
const momentsOf = (spread: Spread, shape: Shape, steps = 200_000) => {
  const quantiles = quantilesOf(spread, shape)
  let sum = 0
  let squares = 0
  for (let i = 0; i < steps; i++) {
    const x = quantile(quantiles, (i + 0.5) / steps)
    sum += x
    squares += x * x
  }
  const mean = sum / steps
  return { mean, variance: squares / steps - mean * mean }
}

describe('M1 triangular lengths', () => {
  // Mean (a + b + c)/3, variance (a² + b² + c² − ab − ac − bc)/18: Evans, Hastings, Peacock, "Statistical Distributions".
  test.each([
    [4, 5, 6],
    [25, 30, 38],
    [240, 270, 320],
    [10, 10, 20],
    [10, 20, 20],
  ])('M1 %i/%i/%i have the mean and the variance of a triangle', (least, likely, most) => {
    const { mean, variance } = momentsOf({ least, likely, most }, 'triangular')
    expect(mean).toBeCloseTo((least + likely + most) / 3, 3)
    const squares = least ** 2 + likely ** 2 + most ** 2 - least * likely - least * most - likely * most
    expect(Math.abs(variance / (squares / 18) - 1)).toBeLessThan(1e-3)
  })

  test('M1 a lamb of 240/270/320 min is done in 270 in 37.5 of 100 cases, in 306 in 95.1', () => {
    const lamb = quantilesOf({ least: 240, likely: 270, most: 320 }, 'triangular')
    expect(chanceWithin(lamb, 270)).toBeCloseTo(0.375, 6)
    expect(chanceWithin(lamb, 306)).toBeCloseTo(1 - 14 ** 2 / (80 * 50), 6)
    expect([chanceWithin(lamb, 240), chanceWithin(lamb, 320), chanceWithin(lamb, 400)]).toEqual([0, 1, 1])
  })
})

describe('M1 PERT lengths', () => {
  // te = (a + 4m + b)/6 and sigma = (b − a)/6: Malcolm, Roseboom, Clark, Fazar 1959, Operations Research 7:646-669.
  test('M1 5/8/14 has mean 8.5 and sigma 1.5', () => {
    // The example of schematex's documentation of PERT networks.
    const { mean, variance } = momentsOf({ least: 5, likely: 8, most: 14 }, 'pert')
    expect(mean).toBeCloseTo(8.5, 2)
    // The beta with that mean: variance (mean − a)(b − mean)/7, near sigma² = 2.25 (Vose 2008, "Risk Analysis").
    expect(variance).toBeCloseTo(((8.5 - 5) * (14 - 8.5)) / 7, 1)
    expect(Math.abs(Math.sqrt(variance) / 1.5 - 1)).toBeLessThan(0.12)
  })

  test('M1 the mean is (least + 4 likely + most)/6 also when the peak is at an end', () => {
    expect(momentsOf({ least: 10, likely: 10, most: 20 }, 'pert').mean).toBeCloseTo(70 / 6, 2)
    expect(momentsOf({ least: 10, likely: 20, most: 20 }, 'pert').mean).toBeCloseTo(110 / 6, 2)
  })
})

test('M1 a length never leaves [least, most], and what cannot vary does not', () => {
  for (const shape of ['triangular', 'pert'] as const) {
    const some = quantilesOf({ least: 3, likely: 4, most: 9 }, shape)
    for (const u of [0, 1e-9, 0.2, 0.5, 0.999999, 1]) {
      expect(quantile(some, u)).toBeGreaterThanOrEqual(3)
      expect(quantile(some, u)).toBeLessThanOrEqual(9)
    }
    expect(quantile(quantilesOf({ least: 5, likely: 5, most: 5 }, shape), 0.7)).toBe(5)
  }
})
