import type { Piece, Work } from './work.ts'

const SHORT_MS = 10 * 60_000

/**
 * Whether one cook could see to both: apart in time, or as the running order lets it be. Touches are anybody's, what is
 * carried goes in one trip, and whoever keeps an eye on something may do up to ten minutes' work beside it in that kitchen.
 */
const fitTogether = (a: Piece, b: Piece): boolean => {
  if (a.to <= b.from || b.to <= a.from) return true
  if (a.kind === 'touch' || b.kind === 'touch') return true
  if (a.kind === 'road' && b.kind === 'road') return true
  if (a.kitchen !== b.kitchen || a.atTable !== b.atTable) return false
  const besideEye = (eye: Piece, other: Piece): boolean =>
    eye.kind === 'eye' && (other.kind === 'eye' || (other.kind === 'hands' && other.to - other.from <= SHORT_MS))
  return besideEye(a, b) || besideEye(b, a)
}

/** Whether one cook could do both steps when the running order has them. */
export const canDoBoth = (a: Work, b: Work): boolean =>
  a.pieces.every((one) => b.pieces.every((other) => fitTogether(one, other)))
