import type { Span } from '#lib/domain/atoms.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Step } from '#lib/domain/menu.ts'

/** A pan or tray by its inside measures in centimetres. */
export type Pan =
  | { readonly kind: 'round'; readonly across: number }
  | { readonly kind: 'square'; readonly side: number }
  | { readonly kind: 'oblong'; readonly length: number; readonly width: number }

/** The floor of a pan in cm². */
export const panArea = (pan: Pan): number => {
  if (pan.kind === 'round') return (Math.PI * pan.across ** 2) / 4
  return pan.kind === 'square' ? pan.side ** 2 : pan.length * pan.width
}

/** How many times what one pan holds the other holds at the same depth; the time and heat of a cake do not follow it. */
export const panFactor = (from: Pan, to: Pan): number => panArea(to) / panArea(from)

/** Whole pieces that lie on a pan's floor when each needs a square of `side` cm: rows by columns, or by area on a round pan. */
export const piecesOn = (pan: Pan, side: number): number => {
  if (!(side > 0)) throw new RangeError('a piece has a size')
  const along = (length: number) => Math.floor(length / side + 1e-9)
  if (pan.kind === 'oblong') return along(pan.length) * along(pan.width)
  if (pan.kind === 'square') return along(pan.side) ** 2
  return roundRows(pan.across, side)
}

/** Squares in rows across a circle: each row is as long as the chord at its worse edge. */
const roundRows = (across: number, side: number): number => {
  const rows = Math.floor(across / side + 1e-9)
  const radius = across / 2
  let pieces = 0
  for (let row = 0; row < rows; row += 1) {
    const top = (row - rows / 2) * side
    const far = Math.max(Math.abs(top), Math.abs(top + side))
    pieces += Math.floor((2 * Math.sqrt(Math.max(0, radius ** 2 - far ** 2))) / side + 1e-9)
  }
  return pieces
}

export interface Batches {
  readonly count: number
  /** How often one starts anew, as many at once as may be. */
  readonly rounds: number
  /** Portions in the last batch, which may be part full. */
  readonly last: number
  /** The whole length in seconds, least, likely and most: a part-full batch takes as long as a full one. */
  readonly takes: { readonly least: number; readonly likely: number; readonly most: number }
}

/** What a limited pan or tray does to a step's length: ⌈portions ÷ batch.portions⌉ batches, at most `together` at once. */
export const batchesOf = (portions: number, batch: NonNullable<Step['batch']>, takes: Span): Batches => {
  if (!(portions > 0)) throw new RangeError(`not an amount of portions: ${portions}`)
  const count = Math.ceil(portions / batch.portions - 1e-9)
  const rounds = Math.ceil(count / batch.together)
  return {
    count,
    rounds,
    last: portions - (count - 1) * batch.portions,
    takes: {
      least: rounds * secondsOf(takes.least),
      likely: rounds * secondsOf(takes.likely),
      most: rounds * secondsOf(takes.most),
    },
  }
}
