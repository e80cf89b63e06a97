import { expect, test } from 'vitest'
import { breaches } from '#lib/scheduling/breaches.ts'
import { compile } from '#lib/scheduling/compile.ts'
import { impossibleCycles, longestPaths } from '#lib/scheduling/lags.ts'
import type { Problem } from '#lib/scheduling/problem.ts'
import { at, dinner, lag, plan } from '#tests/support/problem-builders.ts'
import { activity, cook, mode, problem } from '#tests/support/small-problem.ts'

const dish = { delivery: 'dish' }
const leave = (id: string, length: number, parts = {}) => activity(id, mode('leave', length), { ...dish, ...parts })

test('H4 the least of a lag is kept, from ends and from starts', () => {
  const made = plan(
    dinner({
      activities: [leave('a', 10), leave('b', 10), leave('c', 10)],
      lags: [lag('a', 'b', { least: 7 }), lag('b', 'c', { edge: 'start', least: 4 })],
    }),
  )
  expect([at(made, 'a').start, at(made, 'b').start, at(made, 'c').start]).toEqual([69, 86, 90])
})

test('W1 W6 a wish between two steps is bent when nothing else is possible, and reported with by how much', () => {
  const of = dinner({
    cooks: [cook('ann', { presence: [{ place: 'home', from: 0, to: 60 }] }), cook('bo')],
    activities: [
      activity('carve', mode('hands-on', 10), { ...dish, claimed: ['ann'] }),
      activity('plate', mode('hands-on', 5), { ...dish, claimed: ['bo'] }),
    ],
    lags: [lag('carve', 'plate', { most: 12 })],
  })
  const made = plan(of)
  expect([at(made, 'carve').end, at(made, 'plate').start]).toEqual([60, 95])
  expect(breaches(of, made)).toEqual([{ kind: 'lag', lag: 0, from: 60, to: 95, by: 23 }])
})

test('H4 a safety limit is never bent: what cannot keep it is left out', () => {
  const made = plan(
    dinner({
      cooks: [cook('ann', { presence: [{ place: 'home', from: 0, to: 60 }] }), cook('bo')],
      activities: [
        activity('cook', mode('hands-on', 10), { ...dish, claimed: ['ann'] }),
        activity('chill', mode('hands-on', 5), { ...dish, claimed: ['bo'], from: 90 }),
      ],
      lags: [lag('cook', 'chill', { most: 12, bound: 'safety' })],
    }),
  )
  expect(made.left.map(({ because }) => because)).toEqual(['safety'])
  expect(made.placements).toHaveLength(1)
})

const circle = (): Problem =>
  problem({
    activities: ['a', 'b', 'c', 'd'].map((id) => activity(id, mode('leave', 5))),
    lags: [lag('a', 'b', { least: 3 }), lag('b', 'c'), lag('c', 'a'), lag('c', 'd')],
  })

test('S3 lags that ask for each other in a circle are named, and all but one of them are planned', () => {
  const of = circle()
  const [cycle, ...others] = impossibleCycles(compile(of).acts)
  expect(others).toEqual([])
  expect([...(cycle ?? [])].sort()).toEqual(['a', 'b', 'c'])
  const made = plan(of)
  expect(made.left).toHaveLength(1)
  expect(made.left[0]?.because).toBe('safety')
})

test('H4 longest paths add lags and lengths, and bound back through safety limits', () => {
  const of = problem({
    activities: ['a', 'b', 'c'].map((id) => activity(id, mode('leave', 5))),
    lags: [lag('a', 'b', { least: 3, most: 4, bound: 'safety' }), lag('b', 'c', { edge: 'start', least: 2 })],
  })
  const paths = longestPaths(compile(of).acts)
  expect(Array.from(paths[0] ?? [])).toEqual([0, 8, 10])
  expect(paths[1]?.[0]).toBe(-9)
  expect(paths[2]?.[0]).toBe(Number.NEGATIVE_INFINITY)
})
