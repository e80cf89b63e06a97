import { crowdLimits, type Holder, type Limit } from './explain-limits.ts'
import { gapBetween } from './kit-fits.ts'
import { type Placed, placedOf } from './placed.ts'
import type { ActivityId, Kit, Problem, Use } from './problem.ts'
import type { KitUse, Schedule } from './schedule.ts'

type Oven = Extract<Kit, { kind: 'oven' }>
type OvenUse = Extract<Use, { kind: 'oven' }>

/** One use of one kit: by an activity, or by a dish that waits (named by its last activity). */
interface Hold extends Holder {
  readonly kit: KitUse
  readonly use: Use
  readonly vessel: string | undefined
  readonly points: readonly number[]
  readonly keeping: boolean
}

/** What wants its kit next: rings and stores that are full, ovens that are full, too hot, too cold or shut. */
export const kitLimits = (problem: Problem, schedule: Schedule, placed: readonly Placed[], one: Placed): Limit[] => {
  const others = [...placed.filter((other) => other !== one).flatMap(holdsOf), ...keepsOf(problem, schedule, one)]
  return holdsOf(one).flatMap((hold) => {
    const kit = problem.kit.find((model) => model.id === hold.kit.id)
    const rivals = others.filter((other) => other.kit.id === hold.kit.id && other.kit.unit === hold.kit.unit)
    if (!kit) return []
    if (kit.kind === 'ring') return ringLimits(hold, rivals)
    const room = (kit.kind === 'oven' ? kit.shelves : kit.capacity) - hold.amount - ownBeside(one, hold)
    const crowded = crowdLimits(rivals, room, hold.to, (activity) => ({ kind: 'kit', kit: kit.id, activity }))
    return kit.kind === 'oven' ? [...crowded, ...ovenLimits(kit, hold, rivals)] : crowded
  })
}

const holdsOf = (placed: Placed): Hold[] => {
  const { activity, mode, placement } = placed
  const outs = placement.touches
    .filter((touch) => mode.touches[touch.touch]?.when === 'out')
    .map((touch) => touch.at + (mode.touches[touch.touch]?.takes ?? 0))
  const to = Math.max(placement.end, ...outs)
  return mode.uses.flatMap((use, i) => {
    const kit = placement.kit[i]
    const points = [placement.start, to, ...placement.touches.map((touch) => touch.at)]
    const vessel = activity.vessel
    return kit
      ? [{ kit, use, from: placement.start, to, amount: amountOf(use), activity: activity.id, vessel, points, keeping: false }]
      : []
  })
}

const amountOf = (use: Use): number => (use.kind === 'ring' ? 1 : use.kind === 'oven' ? use.shelves : use.amount)

/** What the same activity holds of the same kit by its other uses. */
const ownBeside = (one: Placed, hold: Hold): number =>
  holdsOf(one)
    .filter((other) => other.use !== hold.use && other.kit.id === hold.kit.id && other.kit.unit === hold.kit.unit)
    .reduce((sum, other) => sum + other.amount, 0)

/** Waiting dishes; the one that waits for this very activity moves along with it. */
const keepsOf = (problem: Problem, schedule: Schedule, one: Placed): Hold[] =>
  schedule.keeping.flatMap((keeping) => {
    const delivery = problem.deliveries.find((other) => other.id === keeping.delivery)
    if (!delivery || (delivery.id === one.activity.delivery && keeping.from === one.placement.end)) return []
    const last = lastOf(problem, schedule, delivery.id)
    return delivery.keeps.uses.flatMap((use, i) => {
      const kit = keeping.kit[i]
      if (!kit || last === undefined) return []
      const { from, to } = keeping
      return [{ kit, use, from, to, amount: amountOf(use), activity: last, vessel: undefined, points: [], keeping: true }]
    })
  })

const lastOf = (problem: Problem, schedule: Schedule, delivery: string): ActivityId | undefined =>
  placedOf(problem, schedule)
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
    return other.keeping ? heat : [...heat, ...doorLimits(oven, hold, other, hold.use, other.use)]
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
