import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Box, inset, outline, type Point, rounded } from '#app/_order/picture/outline.ts'

const box: fc.Arbitrary<Box> = fc.record({
  x: fc.integer({ min: 0, max: 12 }),
  y: fc.integer({ min: 0, max: 12 }),
  width: fc.integer({ min: 1, max: 8 }),
  height: fc.integer({ min: 1, max: 8 }),
})

const signedArea = (loop: readonly Point[]): number =>
  loop.reduce((sum, point, index) => {
    const next = loop[(index + 1) % loop.length] ?? point
    return sum + (point.x * next.y - next.x * point.y) / 2
  }, 0)

const cells = (boxes: readonly Box[]): number => {
  const seen = new Set<string>()
  for (const { x, y, width, height } of boxes)
    for (let column = x; column < x + width; column += 1)
      for (let row = y; row < y + height; row += 1) seen.add(`${column},${row}`)
  return seen.size
}

test('U3 the outline of boxes encloses their union: holes are taken away, nothing is counted twice', () => {
  fc.assert(
    fc.property(fc.array(box, { minLength: 1, maxLength: 9 }), (boxes) => {
      const loops = outline(boxes)
      expect(loops.length).toBeGreaterThan(0)
      expect(loops.reduce((sum, loop) => sum + signedArea(loop), 0)).toBeCloseTo(cells(boxes))
      for (const loop of loops)
        for (const [index, point] of loop.entries()) {
          const next = loop[(index + 1) % loop.length] ?? point
          expect(Number(point.x === next.x) + Number(point.y === next.y)).toBe(1)
        }
    }),
  )
})

test('U3 a box beside another is one cloth, a box apart from it a second', () => {
  const table = { x: 10, y: 0, width: 5, height: 20 }
  expect(outline([table, { x: 0, y: 5, width: 10, height: 5 }])).toHaveLength(1)
  expect(outline([table, { x: 0, y: 5, width: 9, height: 5 }])).toHaveLength(2)
})

test('U3 the hem lies inside the cloth by its distance', () => {
  const [loop = []] = outline([{ x: 0, y: 0, width: 40, height: 30 }])
  expect(
    inset(loop, 3)
      .map(({ x, y }) => `${x},${y}`)
      .sort(),
  ).toEqual(['3,27', '3,3', '37,27', '37,3'].sort())
  expect(rounded(loop, 10)).toMatch(/^M[\d. ]+Q.*Z$/)
})
