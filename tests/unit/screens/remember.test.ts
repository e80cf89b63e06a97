import { expect, test } from 'vitest'
import { remember } from '#app/_order/remember.ts'

test('U76 what was worked out for the same things is not worked out again, and of other things never given', () => {
  let times = 0
  const sum = remember((a: { readonly n: number }, b: number) => {
    times += 1
    return { sum: a.n + b }
  })
  const [one, two] = [{ n: 1 }, { n: 2 }]
  const first = sum(one, 5)
  expect(first).toEqual({ sum: 6 })
  expect(sum(two, 5)).toEqual({ sum: 7 })
  expect(sum(one, 5)).toBe(first)
  expect(times).toBe(2)
  // Equal is not the same: what it is made of may be read later.
  expect(sum({ n: 1 }, 5)).not.toBe(first)
  expect(sum(one, 6)).toEqual({ sum: 7 })
  // Only the last two are kept.
  expect(sum(two, 5)).toEqual({ sum: 7 })
  expect(times).toBe(5)
})
