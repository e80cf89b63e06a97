import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Step, Way } from '#lib/domain/menu.ts'
import { nearestClaims } from '#lib/domain/nearest-claim.ts'
import type { Cue, RunningOrder } from '#lib/domain/running-order.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import { type Hours, hoursOf } from './hours.ts'

/** A stretch for which a step wants somebody. Milliseconds since 1970. */
export interface Piece {
  readonly kind: 'hands' | 'eye' | 'touch' | 'road'
  readonly kitchen: string
  readonly from: number
  readonly to: number
  /** Done at the table: nobody is missed there meanwhile. */
  readonly atTable: boolean
}

/** A step that is still to be done, as the running order has it. */
export interface Work {
  readonly step: string
  readonly dish: string | null
  readonly course: string | null
  /** Who has it by the nearest claim; null: nobody. */
  readonly held: string | null
  readonly pieces: readonly Piece[]
  /** Hands-on minutes, touches among them. */
  readonly minutes: number
  /** Minutes of keeping an eye on it. */
  readonly watched: number
  /** Who is where it is done whenever it wants somebody; where nobody is there throughout, who is there as it begins. */
  readonly able: readonly string[]
  /** The running order's own cooks, whom it mainly falls to first. */
  readonly team: readonly string[]
  /** Its batches are done by more cooks than stand at any one of them. */
  readonly isParted: boolean
  readonly plates: boolean
}

const MINUTE = 60_000

/** How long a touch takes: that which its moment belongs to, going in, coming out or in between. */
const touchMs = (way: Way, cue: Cue, at: number): number => {
  const [start, end] = [msOfInstant(cue.start), msOfInstant(cue.end)]
  const ms = (when: 'in' | 'out'): number | null => {
    const touch = way.touches.find((each) => each.when === when)
    return touch ? secondsOf(touch.takes) * 1000 : null
  }
  const [goesIn, comesOut] = [ms('in'), ms('out')]
  const between = way.touches.find((each) => typeof each.when === 'object')
  if (goesIn !== null && at === start) return goesIn
  if (comesOut !== null && (at >= end - comesOut || !between)) return comesOut
  return between ? secondsOf(between.takes) * 1000 : (goesIn ?? MINUTE)
}

/** When a cue wants somebody: its own stretch unless it is left alone, then its touches in their order. */
export const piecesOf = (evening: Evening, step: Step, cue: Cue): Piece[] => {
  const way = step.ways[cue.way]
  if (!way) return []
  const shared = { kitchen: cue.kitchen, atTable: step.where === 'table' }
  const touches = cue.touches.map(({ at }): Piece => {
    const from = msOfInstant(at)
    return { ...shared, kind: 'touch', from, to: from + touchMs(way, cue, from) }
  })
  if (way.care === 'leave') return touches
  const isCarried = step.role === 'carry' && cue.kitchen !== evening.host
  const kind = isCarried ? 'road' : way.care === 'eye' ? 'eye' : 'hands'
  return [{ ...shared, kind, from: msOfInstant(cue.start), to: msOfInstant(cue.end) }, ...touches]
}

const isThere = (hours: Hours, cook: string, { kind, kitchen, from, to }: Piece): boolean =>
  kind === 'road' ? hours.isOnTheWay(cook, kitchen, from, to) : hours.isIn(cook, kitchen, from, to)

const ableOf = (evening: Evening, hours: Hours, pieces: readonly Piece[]): string[] => {
  const cooks = evening.cooks.map(({ id }) => id)
  const throughout = cooks.filter((cook) => pieces.every((piece) => isThere(hours, cook, piece)))
  const [first, ...others] = pieces
  if (throughout.length > 0 || first === undefined) return throughout
  const begins = others.reduce((earliest, piece) => (piece.from < earliest.from ? piece : earliest), first)
  return cooks.filter((cook) => isThere(hours, cook, begins))
}

const minutesOfKinds = (pieces: readonly Piece[], kinds: readonly Piece['kind'][]): number =>
  pieces.reduce((sum, { kind, from, to }) => sum + (kinds.includes(kind) ? (to - from) / MINUTE : 0), 0)

/** Cooks by how often they are named, the oftenest first. */
const byCount = (named: readonly string[]): string[] => {
  const counts = new Map<string, number>()
  for (const cook of named) counts.set(cook, (counts.get(cook) ?? 0) + 1)
  return [...counts].sort(([a, n], [b, m]) => m - n || (a < b ? -1 : 1)).map(([cook]) => cook)
}

/** The steps that are on and not begun, in the order's time, and those for which it has found no place. */
export const workOf = (evening: Evening, order: RunningOrder): { work: readonly Work[]; unplaced: readonly string[] } => {
  const hours = hoursOf(evening)
  const heldBy = nearestClaims(evening)
  const dishes = new Map(evening.dishes.map((dish) => [dish.id, dish]))
  const cues = new Map<string, Cue[]>()
  for (const cue of order.cues) cues.set(cue.step, [...(cues.get(cue.step) ?? []), cue])
  const work: Work[] = []
  const unplaced: string[] = []
  for (const step of evening.steps) {
    const dish = step.dish === null ? null : dishes.get(step.dish)
    if (dish === undefined || (dish !== null && dish.state !== 'on')) continue
    const held = heldBy(step)
    const placed = cues.get(step.id) ?? []
    if (placed.length === 0 && held === null) unplaced.push(step.id)
    const toCome = placed.filter((cue) => cue.state === 'planned' || cue.state === 'frozen')
    if (toCome.length === 0) continue
    const pieces = toCome.flatMap((cue) => piecesOf(evening, step, cue))
    const hands = toCome.flatMap((cue) => cue.cooks)
    const named = byCount(hands.length > 0 ? hands : toCome.flatMap((cue) => cue.touches.map(({ cook }) => cook)))
    const seats = Math.max(1, ...toCome.map((cue) => cue.cooks.length))
    work.push({
      step: step.id,
      dish: dish?.id ?? null,
      course: dish?.course ?? null,
      held: held?.cook ?? null,
      pieces,
      minutes: minutesOfKinds(pieces, ['hands', 'touch', 'road']),
      watched: minutesOfKinds(pieces, ['eye']),
      able: ableOf(evening, hours, pieces),
      team: named.slice(0, seats),
      isParted: hands.length > 0 && named.length > seats,
      plates: step.role === 'plate',
    })
  }
  const begins = (one: Work): number => Math.min(...one.pieces.map(({ from }) => from), Number.MAX_SAFE_INTEGER)
  return { work: work.sort((a, b) => begins(a) - begins(b) || (a.step < b.step ? -1 : 1)), unplaced }
}
