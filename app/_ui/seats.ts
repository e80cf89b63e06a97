interface Box {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

export interface Seat {
  readonly chair: { readonly x: number; readonly y: number; readonly rx: number; readonly ry: number }
  readonly plate: { readonly x: number; readonly y: number; readonly r: number }
  readonly name: { readonly x: number; readonly y: number; readonly anchor: 'start' | 'middle' | 'end' }
}

const MOST = 22

/** Seats around a table for so many people: its two ends when there are at least six, the rest along its sides. */
export const seatsAround = (covers: number, box: Box): readonly Seat[] => {
  const count = Math.min(Math.max(covers, 1), MOST)
  const ends = count >= 6 && box.width > 240 ? 2 : 0
  const top = Math.ceil((count - ends) / 2)
  const bottom = count - ends - top
  const inner =
    ends > 0 ? { x: box.x + box.height * 0.3, width: box.width - box.height * 0.6 } : { x: box.x + 8, width: box.width - 16 }
  const most = Math.max(top, bottom, 1)
  const r = Math.min(box.height * 0.14, (inner.width / most) * 0.42, 30)
  const side = (at: number, of: number, isTop: boolean): Seat => {
    const x = inner.x + (inner.width / of) * (at + 0.5)
    const edge = isTop ? box.y : box.y + box.height
    const out = isTop ? -1 : 1
    return {
      chair: { x, y: edge + out * 7, rx: r * 0.8, ry: 8 },
      plate: { x, y: edge - out * (r + 12), r },
      name: { x, y: isTop ? edge - 22 : edge + 34, anchor: 'middle' },
    }
  }
  const end = (isLeft: boolean): Seat => {
    const x = isLeft ? box.x : box.x + box.width
    const out = isLeft ? -1 : 1
    const y = box.y + box.height / 2
    return {
      chair: { x: x + out * 7, y, rx: 8, ry: r * 0.8 },
      plate: { x: x - out * (r + 12), y, r },
      name: { x: x + out * 22, y: y + 5, anchor: isLeft ? 'end' : 'start' },
    }
  }
  return [
    ...(ends > 0 ? [end(true)] : []),
    ...Array.from({ length: top }, (_, at) => side(at, top, true)),
    ...(ends > 0 ? [end(false)] : []),
    ...Array.from({ length: bottom }, (_, at) => side(at, bottom, false)),
  ]
}
