import { expect, test } from 'vitest'
import { at, dinner, lag, plan } from '#tests/support/problem-builders.ts'
import { activity, cook, mode } from '#tests/support/small-problem.ts'

const dish = { delivery: 'dish' }

test('H6 an activity for two cooks has two different ones, and the claimed one is among them', () => {
  const made = plan(
    dinner({
      cooks: [cook('ann'), cook('bo'), cook('cy')],
      activities: [activity('plate', mode('hands-on', 6, { cooks: 2 }), { ...dish, claimed: ['cy'] })],
    }),
  )
  expect(at(made, 'plate')).toMatchObject({ start: 94, end: 100 })
  expect(at(made, 'plate').cooks).toHaveLength(2)
  expect(at(made, 'plate').cooks).toContain('cy')
})

test('H3 hands-on work takes as long as the slowest of its cooks', () => {
  const made = plan(
    dinner({
      cooks: [cook('ann', { pace: 1.5 }), cook('bo', { pace: 0.8 })],
      activities: [
        activity('alone', mode('hands-on', 10), { ...dish, claimed: ['bo'] }),
        activity('both', mode('hands-on', 10, { cooks: 2 }), dish),
      ],
      lags: [lag('alone', 'both')],
    }),
  )
  expect(at(made, 'both')).toMatchObject({ start: 85, end: 100 })
  expect(at(made, 'alone')).toMatchObject({ start: 77, end: 85, cooks: ['bo'] })
})

test('H7 one cook does one hands-on thing after the other', () => {
  const made = plan(
    dinner({
      cooks: [cook('ann')],
      activities: [activity('a', mode('hands-on', 10), dish), activity('b', mode('hands-on', 5), dish)],
    }),
  )
  expect(made.placements.map(({ start, end }) => [start, end])).toEqual([
    [85, 95],
    [95, 100],
  ])
  expect(at(made, 'a').end === 95 || at(made, 'b').end === 95).toBe(true)
})

test('H8 while watching a pan a cook does short things beside it, but nothing long', () => {
  const made = plan(
    dinner({
      cooks: [cook('ann')],
      activities: [
        activity('watch', mode('eye', 30), dish),
        activity('short', mode('hands-on', 20), dish),
        activity('long', mode('hands-on', 21), dish),
      ],
    }),
  )
  expect(at(made, 'watch')).toMatchObject({ start: 70, end: 100 })
  expect(at(made, 'short')).toMatchObject({ start: 80, end: 100 })
  expect(at(made, 'long')).toMatchObject({ start: 49, end: 70 })
})

test('H10 a touch is done by whoever is free, and as late as it may be when nobody is at once', () => {
  const made = plan(
    dinner({
      cooks: [cook('ann', { presence: [{ place: 'home', from: 0, to: 88 }] }), cook('bo')],
      activities: [
        activity('stir', mode('hands-on', 12), { ...dish, claimed: ['bo'] }),
        activity('bake', mode('leave', 30, { touches: [{ when: 'out', takes: 2, lateBy: 6 }] }), dish),
      ],
      lags: [lag('bake', 'stir', { most: 0 })],
    }),
  )
  expect(at(made, 'stir')).toMatchObject({ start: 88, end: 100 })
  expect(at(made, 'bake')).toMatchObject({ start: 58, end: 88, touches: [{ touch: 0, at: 86 }] })
})

test('H10 a turn every ten ticks falls into another’s hands-on step when its cook is somebody else', () => {
  const made = plan(
    dinner({
      cooks: [cook('ann'), cook('bo')],
      activities: [
        activity('knead', mode('hands-on', 30), { ...dish, claimed: ['ann'] }),
        activity('roast', mode('leave', 30, { touches: [{ when: { every: 10 }, takes: 1, lateBy: 0 }] }), dish),
      ],
    }),
  )
  expect(at(made, 'knead')).toMatchObject({ start: 70, end: 100 })
  expect(at(made, 'roast').touches).toEqual([
    { touch: 0, at: 80, cook: 'bo' },
    { touch: 0, at: 90, cook: 'bo' },
  ])
})

test('H9 a dish made elsewhere is carried in the hole between two presences', () => {
  const made = plan(
    dinner({
      cooks: [
        cook('ann', {
          presence: [
            { place: 'mill', from: 0, to: 50 },
            { place: 'home', from: 70, to: 200 },
          ],
        }),
      ],
      activities: [
        activity('bake', mode('hands-on', 10), { ...dish, place: 'mill' }),
        activity('carry', mode('hands-on', 15), { ...dish, place: 'mill', at: 'outside', road: { to: 'home' } }),
        activity('warm', mode('hands-on', 5), dish),
      ],
      lags: [lag('bake', 'carry'), lag('carry', 'warm')],
    }),
  )
  expect(at(made, 'bake')).toMatchObject({ start: 40, end: 50 })
  expect(at(made, 'carry')).toMatchObject({ start: 55, end: 70, cooks: ['ann'] })
  expect(at(made, 'warm')).toMatchObject({ start: 95, end: 100 })
})
