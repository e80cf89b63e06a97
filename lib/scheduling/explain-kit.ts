import { crowdLimits, type Holder, type Limit } from './explain-limits.ts'
import { gapBetween } from './kit-fits.ts'
import type { Placed } from './placed.ts'
import type { ActivityId, Kit, Problem, Use } from './problem.ts'
import type { KitUse, Schedule } from './schedule.ts'

type Oven = Extract<Kit, { kind: 'oven' }>
type OvenUse = Extract<Use, { kind: 'oven' }>

/** One use of one kit: by an activity, or by a dish that waits (named by its last activity). */
export interface Hold extends Holder {
  readonly kit: KitUse
  readonly use: Use
  readonly points: readonly number[]
  /** The activity that holds it; none when a dish waits there. */
  readonly of: Placed | null
  /** The dish that waits there. */
  readonly delivery: string | null
}

const unitOf = ({ id, unit }: KitUse): string => `${id} ${unit}`

/** What holds each kit, by kit and unit: placements in their order, then what waits. */
export const holdsByUnit = (
  problem: Problem,
  schedule: Schedule,
  placed: readonly Placed[],
): ReadonlyMap<string, readonly Hold[]> => {
  const holds = new Map<string, Hold[]>()
  for (const hold of [...placed.flatMap(holdsOf), ...keepsOf(problem, schedule, placed)]) {
    const known = holds.get(unitOf(hold.kit))
    if (known) known.push(hold)
    else holds.set(unitOf(hold.kit), [hold])
  }
  return holds
}

/** What wants its kit next: rings and stores that are full, ovens that are full, too hot, too cold or shut. */
export const kitLimits = (problem: Problem, holds: ReadonlyMap<string, readonly Hold[]>, one: Placed): Limit[] => {
  const own = holdsOf(one)
  return own.flatMap((hold) => {
    const kit = problem.kit.find((model) => model.id === hold.kit.id)
    // What waits for this very activity moves along with it.
    const rivals = (holds.get(unitOf(hold.kit)) ?? []).filter(
      (other) =>
        other.of !== one &&
        !(other.delivery !== null && other.delivery === one.activity.delivery && other.from === one.placement.end),
    )
    if (!kit) return []
    if (kit.kind === 'ring') return ringLimits(hold, rivals)
    const room = (kit.kind === 'oven' ? kit.shelves : kit.capacity) - hold.amount - beside(own, hold)
    const crowded = crowdLimits(rivals, room, hold.to, (activity) => ({ kind: 'kit', kit: kit.id, activity }))
    return kit.kind === 'oven' ? [...crowded, ...ovenLimits(kit, hold, rivals)] : crowded
  })
}

const holdsOf = (of: Placed): Hold[] => {
  const { activity, mode, placement } = of
  let to = placement.end
  for (const { touch, at } of placement.touches)
    if (mode.touches[touch]?.when === 'out') to = Math.max(to, at + (mode.touches[touch]?.takes ?? 0))
  return mode.uses.flatMap((use, i): Hold[] => {
    const kit = placement.kit[i]
    const points = [placement.start, to, ...placement.touches.map((touch) => touch.at)]
    if (!kit) return []
    return [{ kit, use, from: placement.start, to, amount: amountOf(use), activity: activity.id, points, of, delivery: null }]
  })
}

const amountOf = (use: Use): number => (use.kind === 'ring' ? 1 : use.kind === 'oven' ? use.shelves : use.amount)

/** What the same activity holds of the same kit by its other uses. */
const beside = (own: readonly Hold[], hold: Hold): number =>
  own
    .filter((other) => other.use !== hold.use && unitOf(other.kit) === unitOf(hold.kit))
    .reduce((sum, other) => sum + other.amount, 0)

/** Waiting dishes. */
const keepsOf = (problem: Problem, schedule: Schedule, placed: readonly Placed[]): Hold[] =>
  schedule.keeping.flatMap(({ delivery: id, from, to, kit: held }) => {
    const delivery = problem.deliveries.find((other) => other.id === id)
    const last = lastOf(placed, id)
    if (!delivery || last === undefined) return []
    return delivery.keeps.uses.flatMap((use, i): Hold[] => {
      const kit = held[i]
      return kit ? [{ kit, use, from, to, amount: amountOf(use), activity: last, points: [], of: null, delivery: id }] : []
    })
  })

const lastOf = (placed: readonly Placed[], delivery: string): ActivityId | undefined =>
  placed
    .filter(({ activity }) => activity.delivery === delivery)
    .reduce<Placed | undefined>((last, one) => (last && last.placement.end >= one.placement.end ? last : one), undefined)
    ?.activity.id

const ringLimits = (hold: Hold, rivals: readonly Hold[]): Limit[] =>
  rivals
    .filter((other) => other.from >= hold.to)
    .map((other) => ({ by: other.from - hold.to, cause: { kind: 'kit', kit: hold.kit.id, activity: other.activity } }))

const ovenLimits = (oven: Oven, hold: Hold, rivals: readonly Hold[]): Limit[] =>
  rivals.flatMap((other) => {
    if (hold.use.kind !== 'oven' || other.use.kind !== 'oven') return []
    const mine = heatOf(hold.use)
    const theirs = heatOf(other.use)
    const apart = mine.low > theirs.high || theirs.low > mine.high
    const by = other.from - gapBetween(oven, mine, theirs) - hold.to
    const heat: Limit[] =
      apart && other.from >= hold.to ? [{ by, cause: { kind: 'oven', kit: oven.id, activity: other.activity } }] : []
    return other.of === null ? heat : [...heat, ...doorLimits(oven, hold, other, hold.use, other.use)]
  })

const heatOf = (use: OvenUse) => ({ low: use.lowC, high: use.highC })

/** Its own moments must not move behind another's shut door, nor its own shut door over another's moments. */
const doorLimits = (oven: Oven, hold: Hold, other: Hold, mine: OvenUse, theirs: OvenUse): Limit[] => {
  const cause = { kind: 'kit', kit: oven.id, activity: other.activity } as const
  const shut = theirs.doorShut ?? 0
  const door = mine.doorShut ?? 0
  const behind = hold.points
    .filter((point) => shut > 1 && point <= other.from)
    .map((point) => ({ by: other.from - point, cause }))
  const over = other.points
    .filter((point) => door > 1 && point >= hold.from + door)
    .map((point) => ({ by: point - hold.from - door, cause }))
  return [...behind, ...over]
}
