import { expect, test } from 'vitest'
import { at, dinner, fromStore, inOven, lag, onRing, oven, plan, ring, store } from '#tests/support/problem-builders.ts'
import { activity, cook, delivery, mode } from '#tests/support/small-problem.ts'

const dish = { delivery: 'dish' }
const alone = (uses: Parameters<typeof mode>[2]) => mode('leave', 20, uses)

test('H14 an oven needs longer to cool than to heat', () => {
  const baking = (first: [number, number], then: [number, number]) =>
    plan(
      dinner({
        kit: [oven()],
        activities: [
          activity('first', alone({ uses: [inOven(...first)] }), dish),
          activity('then', alone({ uses: [inOven(...then)] }), dish),
        ],
        lags: [lag('first', 'then')],
      }),
    )
  const heating = baking([140, 150], [200, 220])
  expect(at(heating, 'then')).toMatchObject({ start: 80, end: 100 })
  expect(at(heating, 'first').end).toBe(75)
  const cooling = baking([200, 220], [140, 150])
  expect(at(cooling, 'first').end).toBe(70)
})

test('H13 two dishes share an oven whose windows meet, as far as its shelves go', () => {
  const made = plan(
    dinner({
      kit: [oven()],
      activities: ['a', 'b', 'c'].map((id) => activity(id, alone({ uses: [inOven(180, 200)] }), dish)),
    }),
  )
  expect(made.placements.map(({ start }) => start)).toEqual([60, 80, 80])
})

test('H14 a preheated oven is hot before the first thing goes in', () => {
  const made = plan(
    dinner({
      kit: [oven()],
      activities: [activity('a', mode('leave', 10, { uses: [inOven(220, 230, { preheated: true })] }), { ...dish, to: 31 })],
    }),
  )
  expect(at(made, 'a').start).toBeGreaterThanOrEqual(20)
})

test('H15 nothing else goes in or out while the door is to stay shut', () => {
  const made = plan(
    dinner({
      kit: [oven()],
      activities: [
        activity('souffle', alone({ uses: [inOven(180, 200, { doorShut: 15 })] }), dish),
        activity('bread', mode('leave', 10, { uses: [inOven(180, 200)] }), { ...dish, to: 99 }),
      ],
    }),
  )
  const souffle = at(made, 'souffle')
  const bread = at(made, 'bread')
  for (const moment of [bread.start, bread.end]) expect(moment <= souffle.start || moment >= souffle.start + 15).toBe(true)
  expect(souffle.end).toBe(100)
})

test('H12 a pan keeps its ring across the gap between its steps', () => {
  const made = plan(
    dinner({
      kit: [ring(1)],
      cooks: [cook('ann')],
      activities: [
        activity('boil', mode('leave', 10, { uses: [onRing()] }), { ...dish, vessel: 'pot' }),
        activity('finish', mode('leave', 10, { uses: [onRing()] }), { ...dish, vessel: 'pot' }),
        activity('fry', mode('leave', 5, { uses: [onRing()] }), { ...dish, to: 80 }),
      ],
      lags: [lag('boil', 'finish', { least: 20, most: 40 })],
    }),
  )
  expect(at(made, 'finish')).toMatchObject({ start: 90, end: 100 })
  expect(at(made, 'boil')).toMatchObject({ start: 60, end: 70 })
  expect(at(made, 'fry')).toMatchObject({ start: 55, end: 60 })
})

test('H11 a bigger ring serves a smaller need, and the big one is left for who needs it', () => {
  const made = plan(
    dinner({
      kit: [ring(2), ring(1)],
      activities: [
        activity('small', alone({ uses: [onRing(1)] }), dish),
        activity('big', alone({ uses: [onRing(2)] }), dish),
        activity('late', alone({ uses: [onRing(1)] }), { ...dish, to: 80 }),
      ],
    }),
  )
  expect(at(made, 'small')).toMatchObject({ end: 100, kit: [{ id: 'ring-1', unit: 0 }] })
  expect(at(made, 'big')).toMatchObject({ end: 100, kit: [{ id: 'ring-2', unit: 0 }] })
  expect(at(made, 'late')).toMatchObject({ end: 80 })
})

test('H18 a dish that waits for the table keeps its oven warm, so that nothing hot goes in', () => {
  const made = plan(
    dinner({
      kit: [oven({ shelves: 4 })],
      cooks: [cook('ann', { presence: [{ place: 'home', from: 0, to: 90 }] })],
      deliveries: [
        delivery('dish', 'main', {
          early: 0,
          keeps: { most: 20, bound: 'quality', place: 'home', uses: [inOven(70, 80)] },
        }),
        delivery('tart', 'main', { early: 0, keeps: { most: 60, bound: 'quality', place: 'home', uses: [] } }),
      ],
      activities: [
        activity('carve', mode('hands-on', 10), dish),
        activity('bake', alone({ uses: [inOven(180, 200)] }), { delivery: 'tart' }),
      ],
    }),
  )
  expect(at(made, 'carve').end).toBe(90)
  expect(made.keeping[0]).toEqual({ delivery: 'dish', from: 90, to: 100, kit: [{ id: 'oven', unit: 0 }] })
  expect(at(made, 'bake').end).toBe(70)
})

test('H13 a worktop is never fuller than it is', () => {
  const made = plan(
    dinner({
      kit: [store('worktop', 5)],
      activities: [3, 3, 2].map((amount, i) => activity(`a${i}`, alone({ uses: [fromStore('worktop', amount)] }), dish)),
    }),
  )
  expect(made.placements.map(({ start }) => start)).toEqual([60, 80, 80])
})

test('H5 of the batches of one pan only so many run together', () => {
  const made = plan(
    dinner({
      activities: ['a', 'b', 'c', 'd'].map((id) => activity(id, mode('leave', 10), dish)),
      together: [{ activities: ['a', 'b', 'c', 'd'], most: 2 }],
    }),
  )
  expect(made.placements.map(({ start }) => start)).toEqual([80, 80, 90, 90])
})

test('H11 when the first way has no kit left, another way is taken', () => {
  const made = plan(
    dinner({
      kit: [oven({ shelves: 1 }), ring(1)],
      cooks: [cook('ann')],
      activities: [
        activity('roast', alone({ uses: [inOven(200, 210)] }), { ...dish, from: 80 }),
        activity('warm', mode('leave', 15), {
          ...dish,
          from: 80,
          modes: [mode('leave', 15, { uses: [inOven(160, 170)] }), mode('eye', 10, { uses: [onRing()] })],
        }),
      ],
    }),
  )
  expect(at(made, 'warm')).toMatchObject({ mode: 1, start: 90, end: 100, kit: [{ id: 'ring-1', unit: 0 }] })
})

test('H3 a rest is as long as what comes before and after it need', () => {
  const made = plan(
    dinner({
      kit: [store('fridge', 1)],
      cooks: [
        cook('ann', {
          presence: [
            { place: 'home', from: 0, to: 20 },
            { place: 'home', from: 85, to: 200 },
          ],
        }),
      ],
      activities: [
        activity('mix', mode('hands-on', 10), dish),
        activity('chill', mode('leave', 30, { upTo: 100, uses: [fromStore('fridge')] }), dish),
        activity('plate', mode('hands-on', 5), dish),
      ],
      lags: [lag('mix', 'chill', { most: 0 }), lag('chill', 'plate', { most: 0 })],
    }),
  )
  expect(at(made, 'mix')).toMatchObject({ start: 10, end: 20 })
  expect(at(made, 'chill')).toMatchObject({ start: 20, end: 95 })
  expect(at(made, 'plate')).toMatchObject({ start: 95, end: 100 })
})
