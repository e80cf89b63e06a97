import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { foodNature } from '#lib/domain/food-nature.ts'
import { Ingredient } from '#lib/domain/ingredient.ts'
import { batchesOf, panFactor, piecesOn } from '#lib/quantities/batches.ts'
import { exact } from '#lib/quantities/exact.ts'
import { bakersPercent, scaleAmount, scaleFactor } from '#lib/quantities/scale.ts'

const of = (food: string, n: string, unit: string, scales: Ingredient['scales'], upTo?: string) => ({
  food,
  amount: { n, unit, ...(upTo ? { upTo } : {}) },
  scales,
})

describe('to covers and portions', () => {
  test('Q6 35 portions of 185 g made into 50 of 230 g: 11.50/6.475 (Gisslen, Professional Cooking, "The Recipe")', () => {
    const factor = scaleFactor(35, [{ people: 50, portion: 230 / 185 }])
    expect(factor.valueOf()).toBeCloseTo(11.5 / 6.475, 5)
  })
  test('Q6 ten made into fifteen is one and a half; a child counts half, who does not come not at all', () => {
    expect(scaleFactor(10, [{ people: 15, portion: 1 }]).toFraction()).toBe('3/2')
    const eaters = [
      { people: 4, portion: 1 },
      { people: 2, portion: 0.5 },
      { people: 0, portion: 1 },
    ]
    expect(scaleFactor(4, eaters).toFraction()).toBe('5/4')
    expect(() => scaleFactor(0, eaters)).toThrow(RangeError)
  })
  test('Q6 amounts in proportion are exact, ranges at both ends', () => {
    expect(scaleAmount(of('flour', '4/3', 'US cup', 'yes'), exact('9/4'))).toEqual({
      amount: { n: '3', unit: 'US cup' },
      notes: [],
    })
    expect(scaleAmount(of('olive oil', '2', 'tbsp', 'yes', '3'), exact('3/2')).amount).toEqual({
      n: '3',
      upTo: '9/2',
      unit: 'tbsp',
    })
  })
})

describe('what does not simply grow', () => {
  test('Q7 2.25 eggs become 2, and it is said that the rest should be 8/9 of it to match', () => {
    const scaled = scaleAmount(of('large eggs', '3', '', 'whole'), exact('3/4'))
    expect(scaled.amount).toEqual({ n: '2', unit: '' })
    expect(scaled.notes).toEqual([{ kind: 'rounded', wanted: '9/4', given: '2', share: '8/9' }])
  })
  test('Q7 halves are rounded up, and one is never rounded to none', () => {
    expect(scaleAmount(of('eggs', '1', '', 'whole'), exact('5/2')).amount?.n).toBe('3')
    expect(scaleAmount(of('eggs', '1', '', 'whole'), exact('1/4')).amount?.n).toBe('1')
  })
  test.each([
    ['fine salt', 'salt'],
    ['baking powder', 'leavening'],
    ['cornflour', 'thickener'],
    ['freshly ground black pepper', 'spice'],
  ] as const)('Q7 %s in proportion is flagged, by taste is left with the proportion beside it', (food, nature) => {
    const yes = scaleAmount(of(food, '1', 'tsp', 'yes'), exact('3'))
    expect(yes.amount?.n).toBe('3')
    expect(yes.notes).toEqual([{ kind: 'look-twice', nature }])
    const taste = scaleAmount(of(food, '1', 'tsp', 'by-taste'), exact('3'))
    expect(taste.amount?.n).toBe('1')
    expect(taste.notes).toEqual([{ kind: 'by-taste', nature, linear: '3' }])
  })
  test.each([
    'unsalted butter',
    'salt cod',
    'salted almonds',
    'red pepper',
    'pepper sauce',
    'eggplant',
    'ginger cake',
    'vanilla ice cream',
  ])('Q7 %s is neither salt nor spice', (food) => {
    expect(foodNature(food)).toBeNull()
  })
  test('Q7 what is not to be scaled stays and says so; once the dish nothing is said', () => {
    expect(scaleAmount(of('bay leaf', '1', '', 'no'), exact('2'))).toEqual({
      amount: { n: '1', unit: '' },
      notes: [{ kind: 'kept' }],
    })
    expect(scaleAmount(of('salt', '1', 'tsp', 'yes'), exact('1')).notes).toEqual([])
    expect(scaleAmount({ food: 'salt', amount: null, scales: 'by-taste' }, exact('2'))).toEqual({ amount: null, notes: [] })
  })
  test('Q7 a scaled amount is always one that the evening takes', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 9999 }),
        fc.integer({ min: 1, max: 999 }),
        fc.integer({ min: 1, max: 900 }),
        fc.integer({ min: 1, max: 97 }),
        fc.constantFrom('yes' as const, 'whole' as const, 'by-taste' as const, 'no' as const),
        (a, b, p, q, scales) => {
          const { amount } = scaleAmount(of('flour', `${a}/${b}`, 'g', scales), exact(`${p}/${q}`))
          expect(Ingredient.shape.amount.safeParse(amount).success).toBe(true)
        },
      ),
      { seed: 3, numRuns: 500 },
    )
  })
  test("Q6 baker's percentages (PMQ magazine, How to convert baker's percent)", () => {
    const flour = exact('640')
    const rest = ['11.2', '2.4', '6.4', '371.2'].map(exact)
    expect(bakersPercent(flour, rest).map((each) => each.valueOf())).toEqual([1.75, 0.375, 1, 58])
    const factor = exact('800').div(flour)
    expect(rest.map((each) => each.mul(factor).valueOf())).toEqual([14, 3, 8, 464])
  })
})

describe('batches', () => {
  const takes = { least: 'PT4M', likely: 'PT5M', most: 'PT7M' }
  test('Q8 fourteen pancakes, six fit the pan: three batches, three times as long', () => {
    expect(batchesOf(14, { portions: 6, together: 1 }, takes)).toEqual({
      count: 3,
      rounds: 3,
      last: 2,
      takes: { least: 720, likely: 900, most: 1260 },
    })
  })
  test('Q8 two pans at once halve the rounds, and a full last batch is full', () => {
    expect(batchesOf(24, { portions: 6, together: 2 }, takes)).toMatchObject({ count: 4, rounds: 2, last: 6 })
  })
  test('Q8 pans by their floor: 20 cm round to 24 cm round is 1.44 (geometry: (24/20)²)', () => {
    expect(panFactor({ kind: 'round', across: 20 }, { kind: 'round', across: 24 })).toBeCloseTo(1.44, 12)
    expect(panFactor({ kind: 'round', across: 20 }, { kind: 'square', side: 20 })).toBeCloseTo(4 / Math.PI, 12)
  })
  test('Q8 whole pieces on a tray', () => {
    expect(piecesOn({ kind: 'oblong', length: 40, width: 30 }, 8)).toBe(15)
    expect(piecesOn({ kind: 'square', side: 24 }, 8)).toBe(9)
    // Squares of side 1 in a circle of 2√2 across: the four of the square inscribed in it.
    expect(piecesOn({ kind: 'round', across: 2 * Math.SQRT2 }, 1)).toBe(4)
  })
})
