import type { Limit } from './explain-limits.ts'
import type { Placed } from './placed.ts'
import { type Cook, EYE_PIECE, type Problem } from './problem.ts'

/** A stretch of one cook's attention, of one placement. */
export interface Piece {
  readonly of: Placed
  readonly from: number
  readonly to: number
  readonly eye: boolean
  readonly touch: boolean
}

/** All that every cook is at, in the order of the placements. */
export const piecesByCook = (problem: Problem, placed: readonly Placed[]): ReadonlyMap<string, readonly Piece[]> =>
  new Map(problem.cooks.map((cook) => [cook.id, placed.flatMap((one) => piecesOf(one, cook))]))

/** What its cooks do next, and when they leave. */
export const cookLimits = (problem: Problem, pieces: ReadonlyMap<string, readonly Piece[]>, one: Placed): Limit[] =>
  problem.cooks.flatMap((cook) => {
    const own = piecesOf(one, cook)
    if (own.length === 0) return []
    const others = pieces.get(cook.id) ?? []
    return own.flatMap((piece) => [
      ...others.flatMap((other): Limit[] =>
        other.of === one || other.from < piece.to || together(piece, other)
          ? []
          : [{ by: other.from - piece.to, cause: { kind: 'cook', cook: cook.id, activity: other.of.activity.id } }],
      ),
      ...others.flatMap((other): Limit[] =>
        isOneTrip(piece, other) ? [{ by: 0, cause: { kind: 'cook', cook: cook.id, activity: other.of.activity.id } }] : [],
      ),
      ...stayLimits(cook, piece),
    ])
  })

const piecesOf = (of: Placed, cook: Cook): Piece[] => {
  const { placement, mode } = of
  const touches = placement.touches
    .filter((touch) => touch.cook === cook.id)
    .map(({ at, touch }) => ({ of, from: at, to: at + (mode.touches[touch]?.takes ?? 0), eye: false, touch: true }))
  if (mode.care === 'leave' || !placement.cooks.includes(cook.id)) return touches
  return [{ of, from: placement.start, to: placement.end, eye: mode.care === 'eye', touch: false }, ...touches]
}

/** Can one cook do both at once? */
const together = (one: Piece, other: Piece): boolean => {
  const { activity: a } = one.of
  const { activity: b } = other.of
  if (isCarried(one) && isCarried(other)) return true
  if (!one.eye && !other.eye) return false
  const sameSpot = a.place === b.place && a.at === b.at
  const short = (piece: Piece) => piece.eye || piece.to - piece.from <= EYE_PIECE
  return sameSpot && short(one) && short(other)
}

/** What leaves with something else cannot leave later alone. */
const isOneTrip = (one: Piece, other: Piece): boolean =>
  one.of !== other.of &&
  isCarried(one) &&
  isCarried(other) &&
  one.from === other.from &&
  !one.of.activity.fact &&
  !other.of.activity.fact

const isCarried = ({ of, touch, eye }: Piece): boolean => of.activity.road !== undefined && !touch && !eye

const stayLimits = (cook: Cook, piece: Piece): Limit[] => {
  const { activity } = piece.of
  const cause = { kind: 'presence', cook: cook.id } as const
  if (activity.road && !piece.touch)
    return cook.presence.flatMap((stay, i) => {
      const next = cook.presence[i + 1]
      return next && stay.to <= piece.from && next.from >= piece.to ? [{ by: next.from - piece.to, cause }] : []
    })
  return cook.presence.flatMap((stay) =>
    stay.place === activity.place && stay.from <= piece.from && stay.to >= piece.to ? [{ by: stay.to - piece.to, cause }] : [],
  )
}
