import { expect, test } from 'vitest'
import { at, dinner, fromStore, inOven, onRing, oven, plan, ring, store } from '#tests/support/problem-builders.ts'
import { activity, cook, mode } from '#tests/support/small-problem.ts'

const dish = { delivery: 'dish' }

test('H1 S3 what nobody who claimed it can do is left out for want of a cook', () => {
  const made = plan(
    dinner({
      cooks: [cook('ann', { presence: [{ place: 'mill', from: 0, to: 200 }] }), cook('bo')],
      activities: [activity('a', mode('hands-on', 10), { ...dish, claimed: ['ann'] }), activity('b', mode('hands-on', 10), dish)],
    }),
  )
  expect(made.left).toEqual([{ activity: 'a', because: 'no-cook' }])
  expect(at(made, 'b').cooks).toEqual(['bo'])
})

test.each([
  ['there is none', mode('leave', 10, { uses: [onRing(3)] })],
  ['the oven is not made for so much heat', mode('leave', 10, { uses: [inOven(260, 280)] })],
  ['it is too small', mode('leave', 10, { uses: [fromStore('worktop', 4)] })],
])('H1 S3 what needs kit is left out when %s', (_, only) => {
  const made = plan(dinner({ kit: [ring(2), oven(), store('worktop', 3)], activities: [activity('a', only, dish)] }))
  expect(made.left).toEqual([{ activity: 'a', because: 'no-kit' }])
})

test('H1 S3 what has no kit left by the facts is left out for want of kit', () => {
  const made = plan(
    dinner({
      now: 50,
      kit: [ring(1)],
      activities: [
        activity('stew', mode('leave', 100, { uses: [onRing()] }), {
          fact: { kind: 'running', start: 40, atLeast: 150 },
        }),
        activity('fry', mode('leave', 10, { uses: [onRing()] }), { to: 100 }),
      ],
    }),
  )
  expect(made.left).toEqual([{ activity: 'fry', because: 'no-kit' }])
})

test('H1 S3 what its window is too short for is left out, for safety', () => {
  const made = plan(dinner({ activities: [activity('a', mode('leave', 10), { ...dish, from: 20, to: 25 })] }))
  expect(made.left).toEqual([{ activity: 'a', because: 'safety' }])
})

test('S3 a late course is better than one without a dish', () => {
  const made = plan(
    dinner({
      now: 80,
      cooks: [cook('ann')],
      activities: [activity('a', mode('hands-on', 30), dish), activity('b', mode('hands-on', 10), dish)],
    }),
  )
  expect(made.left).toEqual([])
  expect(made.servings).toEqual([{ serving: 'main', toTable: 120 }])
})
