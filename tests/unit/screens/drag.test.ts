import { expect, test } from 'vitest'
import { landingAt, type Measured, scrollBy } from '#app/_ui/drag-place.ts'
import { numberAt } from '#app/_ui/move-place.ts'
import { movedText } from '#app/_words/moved.ts'

const lists: readonly Measured[] = [
  {
    id: 'starter',
    top: 100,
    bottom: 180,
    items: [
      { id: 'soup', top: 100, bottom: 140 },
      { id: 'bread', top: 140, bottom: 180 },
    ],
  },
  { id: 'main', top: 220, bottom: 220, items: [] },
  { id: 'sweet', top: 300, bottom: 340, items: [{ id: 'tart', top: 300, bottom: 340 }] },
]

test('U10 what is dragged lands behind the last item whose middle lies above it, in the nearest list', () => {
  expect(landingAt(lists, 105)).toEqual({ list: 'starter', after: null })
  expect(landingAt(lists, 121)).toEqual({ list: 'starter', after: 'soup' })
  expect(landingAt(lists, 190)).toEqual({ list: 'starter', after: 'bread' })
  expect(landingAt(lists, 215)).toEqual({ list: 'main', after: null })
  expect(landingAt(lists, -400)).toEqual({ list: 'starter', after: null })
  expect(landingAt(lists, 9000)).toEqual({ list: 'sweet', after: 'tart' })
  expect(landingAt([], 9000)).toBeNull()
})

test('U10 the page scrolls only while something is held near an edge of the window, faster the nearer', () => {
  expect(scrollBy(400, 800)).toBe(0)
  expect(scrollBy(72, 800)).toBe(0)
  expect(scrollBy(0, 800)).toBe(-14)
  expect(scrollBy(-500, 800)).toBe(-14)
  expect(scrollBy(764, 800)).toBe(7)
  expect(scrollBy(800, 800)).toBe(14)
})

test('U10 where something went is said in words, whether it was there before or came from elsewhere', () => {
  const siblings = ['a', 'b', 'c'].map((id) => ({ id }))
  expect(numberAt(siblings, 'a', { kind: 'after', id: 'b' })).toBe(1)
  expect(numberAt(siblings, 'c', { kind: 'first' })).toBe(0)
  expect(numberAt(siblings, 'x', { kind: 'after', id: 'b' })).toBe(2)
  expect(numberAt(siblings, 'x', { kind: 'last' })).toBe(3)
  expect(numberAt(siblings, 'a', { kind: 'after', id: 'gone' })).toBe(2)
  expect(movedText('Carrot soup', 1, 3, 'Starter')).toBe('Carrot soup is now second of three in Starter.')
  expect(movedText('Main', 11, 14)).toBe('Main is now number 12 of 14.')
})
