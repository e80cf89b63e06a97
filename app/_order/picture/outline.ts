export interface Box {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}
export interface Point {
  readonly x: number
  readonly y: number
}

const unique = (values: readonly number[]): number[] => [...new Set(values)].sort((a, b) => a - b)
const key = (point: Point): string => `${point.x},${point.y}`

/**
 * The outline of the union of boxes, as closed loops of corners: outer edges run clockwise (y down), holes the other way.
 * Boxes that share an edge become one shape. Cells of the grid through all edges are marked, then walked around.
 */
export const outline = (boxes: readonly Box[]): readonly (readonly Point[])[] => {
  const solid = boxes.filter((box) => box.width > 0 && box.height > 0)
  const xs = unique(solid.flatMap((box) => [box.x, box.x + box.width]))
  const ys = unique(solid.flatMap((box) => [box.y, box.y + box.height]))
  const filled = (column: number, row: number): boolean => {
    const [x, y] = [xs[column], ys[row]]
    return (
      x !== undefined &&
      y !== undefined &&
      column < xs.length - 1 &&
      row < ys.length - 1 &&
      solid.some((box) => box.x <= x && x < box.x + box.width && box.y <= y && y < box.y + box.height)
    )
  }
  const edges = new Map<string, Point[]>()
  const add = (from: Point, to: Point) => edges.set(key(from), [...(edges.get(key(from)) ?? []), to])
  for (let row = 0; row < ys.length - 1; row += 1)
    for (let column = 0; column < xs.length - 1; column += 1) {
      if (!filled(column, row)) continue
      const [left, right, top, bottom] = [xs[column] ?? 0, xs[column + 1] ?? 0, ys[row] ?? 0, ys[row + 1] ?? 0]
      if (!filled(column, row - 1)) add({ x: left, y: top }, { x: right, y: top })
      if (!filled(column + 1, row)) add({ x: right, y: top }, { x: right, y: bottom })
      if (!filled(column, row + 1)) add({ x: right, y: bottom }, { x: left, y: bottom })
      if (!filled(column - 1, row)) add({ x: left, y: bottom }, { x: left, y: top })
    }
  const loops: Point[][] = []
  for (const [start, ends] of edges)
    while (ends.length > 0) {
      const [startX = 0, startY = 0] = start.split(',').map(Number)
      const loop: Point[] = [{ x: startX, y: startY }]
      let at = ends.pop()
      while (at && key(at) !== start) {
        const previous = loop[loop.length - 1]
        loop.push(at)
        at = takeTurn(edges.get(key(at)), previous, at)
      }
      loops.push(corners(loop))
    }
  return loops
}

/** Where two loops touch in a corner, turn right (y down): each stays a shape of its own. */
const takeTurn = (ends: Point[] | undefined, previous: Point | undefined, at: Point): Point | undefined => {
  if (!ends || !previous || ends.length < 2) return ends?.pop()
  const turn = (end: Point): number => (at.x - previous.x) * (end.y - at.y) - (at.y - previous.y) * (end.x - at.x)
  const best = ends.reduce((chosen, end) => (turn(end) > turn(chosen) ? end : chosen))
  ends.splice(ends.indexOf(best), 1)
  return best
}

const corners = (loop: readonly Point[]): Point[] =>
  loop.filter((point, index) => {
    const before = loop[(index + loop.length - 1) % loop.length] ?? point
    const after = loop[(index + 1) % loop.length] ?? point
    return (after.x - before.x) * (point.y - before.y) !== (after.y - before.y) * (point.x - before.x)
  })

const between = (from: Point, to: Point, distance: number): Point => {
  const length = Math.hypot(to.x - from.x, to.y - from.y)
  const part = length === 0 ? 0 : distance / length
  return { x: from.x + (to.x - from.x) * part, y: from.y + (to.y - from.y) * part }
}

const round = (value: number): number => Math.round(value * 10) / 10

/** A loop as an SVG path with rounded corners; a corner's radius never exceeds half of its shorter edge. */
export const rounded = (loop: readonly Point[], radius: number): string => {
  const parts = loop.map((point, index) => {
    const before = loop[(index + loop.length - 1) % loop.length] ?? point
    const after = loop[(index + 1) % loop.length] ?? point
    const reach = Math.min(
      radius,
      Math.hypot(before.x - point.x, before.y - point.y) / 2,
      Math.hypot(after.x - point.x, after.y - point.y) / 2,
    )
    const [enter, leave] = [between(point, before, reach), between(point, after, reach)]
    return `${index === 0 ? 'M' : 'L'}${round(enter.x)} ${round(enter.y)}Q${round(point.x)} ${round(point.y)} ${round(leave.x)} ${round(leave.y)}`
  })
  return parts.length > 0 ? `${parts.join('')}Z` : ''
}

/** A loop moved inwards by `by` pixels (outwards for a hole): where the hem runs. */
export const inset = (loop: readonly Point[], by: number): readonly Point[] =>
  loop.map((point, index) => {
    const before = loop[(index + loop.length - 1) % loop.length] ?? point
    const after = loop[(index + 1) % loop.length] ?? point
    // Clockwise with y down, the inside lies to the right of the way along an edge: (dx, dy) turned to (-dy, dx).
    const side = (from: Point, to: Point): Point => ({ x: -Math.sign(to.y - from.y), y: Math.sign(to.x - from.x) })
    const [first, second] = [side(before, point), side(point, after)]
    return { x: point.x + (first.x + second.x) * by, y: point.y + (first.y + second.y) * by }
  })
