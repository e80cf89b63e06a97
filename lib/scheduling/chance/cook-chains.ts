import { type CookId, EYE_PIECE, type Problem } from '#lib/scheduling/problem.ts'
import { type Arc, chain, type Hold, inTime } from './event.ts'
import type { Step } from './steps.ts'

interface Piece extends Hold {
  readonly kind: 'hands' | 'eye' | 'road'
  readonly spot: string
  readonly short: boolean
}

/** Each cook does things in the planned order where they exclude each other (H7, H8). */
export const cookArcs = (problem: Problem, steps: readonly Step[]): Arc[] =>
  problem.cooks.flatMap(({ id }) => chain(piecesOf(steps, id).sort(inTime), excludes))

const excludes = (a: Piece, b: Piece): boolean => {
  if (a.kind === 'eye' && b.kind === 'eye') return a.spot !== b.spot
  if (a.kind === 'eye' || b.kind === 'eye') return a.spot !== b.spot || !(a.kind === 'eye' ? b : a).short
  return a.kind !== 'road' || b.kind !== 'road'
}

const piecesOf = (steps: readonly Step[], cook: CookId): Piece[] =>
  steps.flatMap(({ index, placed: { activity, mode, placement }, begins, ends, touches }): Piece[] => {
    const spot = `${activity.at} ${activity.place}`
    const own = touches
      .filter((touch) => touch.cook === cook)
      .map(({ at, takes, event }): Piece => {
        const isFact = activity.fact && event === begins
        const common = { who: index, from: at, to: at + takes, ends: [{ event, lag: takes }] }
        return { ...common, begins: isFact ? undefined : event, kind: 'hands', spot, short: takes <= EYE_PIECE }
      })
    if (mode.care === 'leave' || !placement.cooks.includes(cook)) return own
    const { start, end } = placement
    const kind = mode.care === 'eye' ? 'eye' : activity.road ? 'road' : 'hands'
    const common = {
      who: index,
      from: start,
      to: end,
      begins: activity.fact ? undefined : begins,
      ends: [{ event: ends, lag: 0 }],
    }
    return [...own, { ...common, kind, spot, short: end - start <= EYE_PIECE }]
  })
