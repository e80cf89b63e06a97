import { durationOfTicks } from '#lib/domain/duration.ts'
import type { Clash } from '#lib/domain/running-order.ts'
import { instantOfTick } from '#lib/domain/time.ts'
import type { Tick } from '#lib/scheduling/problem.ts'
import { touchesToCome } from '#lib/scheduling/touches-to-come.ts'
import type { Hold, Placed } from '#lib/scheduling/verify/scene.ts'
import type { Planned } from './planned.ts'

/**
 * What is under way and should not be: two pans on one ring, an oven too hot for what is in it, one cook at two things, a
 * cook who is gone, a touch that nobody is free for, a dish that is not done though its course has been served. Facts break
 * no rule and are not planned around, but the cooks are told.
 */
export const factClashes = (planned: Planned): Clash[] => [
  ...kitClashes(planned),
  ...cookClashes(planned),
  ...touchClashes(planned),
  ...servedClashes(planned),
]

const clash = (
  { evening, index }: Planned,
  kind: Clash['kind'],
  placed: readonly Placed[],
  from: Tick,
  to: Tick,
  more: { readonly kit?: string; readonly course?: string } = {},
): Clash => {
  const of = placed.flatMap(({ activity }) => index.activities.get(activity.id) ?? [])
  const dish = of[0]?.dish ?? null
  return {
    kind,
    steps: [...new Set(of.map(({ step }) => step.id))],
    dish: dish?.id ?? null,
    course: more.course ?? dish?.course ?? null,
    kit: more.kit ?? null,
    from: instantOfTick(evening, from),
    to: instantOfTick(evening, to),
    by: durationOfTicks(to - from),
    ways: [],
  }
}

/** From now on: what is over can no longer be helped. */
const since = ({ problem }: Planned, from: Tick): Tick => Math.max(from, problem.now ?? from)

const pairsOf = <T>(all: readonly T[]): (readonly [T, T])[] =>
  all.flatMap((one, i) => all.slice(i + 1).map((other) => [one, other] as const))

interface Held {
  readonly hold: Hold
  readonly placed: Placed
}

const kitClashes = (planned: Planned): Clash[] => {
  const held = planned.scene.holds.flatMap((hold): Held[] =>
    'activity' in hold.by && hold.by.activity.fact ? [{ hold, placed: hold.by.activity }] : [],
  )
  const twice = pairsOf(held).flatMap(([a, b]): Clash[] => {
    const { kit, unit } = a.hold
    if (kit.id !== b.hold.kit.id || unit !== b.hold.unit || a.placed === b.placed) return []
    const from = since(planned, Math.max(a.hold.from, b.hold.from))
    const to = Math.min(a.hold.to, b.hold.to)
    return from < to && disagree(a, b) ? [clash(planned, 'no-kit', [a.placed, b.placed], from, to, { kit: kit.id })] : []
  })
  return [...twice, ...crowded(planned, held)]
}

/** Two pans on one ring, or two dishes that want the oven at temperatures that do not meet. */
const disagree = ({ hold: a, placed: one }: Held, { hold: b, placed: other }: Held): boolean => {
  if (a.use.kind === 'ring') return one.activity.vessel === undefined || one.activity.vessel !== other.activity.vessel
  if (a.use.kind !== 'oven' || b.use.kind !== 'oven') return false
  return a.use.lowC > b.use.highC || b.use.lowC > a.use.highC
}

/** More than an oven's shelves or a store's places at the moment when the last of it came, until enough of it is gone. */
const crowded = (planned: Planned, held: readonly Held[]): Clash[] =>
  [...new Set(held.map(({ hold }) => hold.kit))].flatMap((kit): Clash[] => {
    const room = kit.kind === 'oven' ? kit.shelves : kit.kind === 'store' ? kit.capacity : Number.POSITIVE_INFINITY
    const own = held.filter(({ hold }) => hold.kit === kit && since(planned, hold.from) < hold.to)
    const from = Math.max(...own.map(({ hold }) => since(planned, hold.from)))
    const there = own.filter(({ hold }) => hold.to > from).sort((a, b) => a.hold.to - b.hold.to)
    let sum = there.reduce((all, { hold }) => all + amountOf(hold), 0)
    if (sum <= room) return []
    const enough = there.find(({ hold }) => {
      sum -= amountOf(hold)
      return sum <= room
    })
    const to = enough?.hold.to ?? from
    return from < to
      ? [
          clash(
            planned,
            'no-kit',
            there.map(({ placed }) => placed),
            from,
            to,
            { kit: kit.id },
          ),
        ]
      : []
  })

const amountOf = ({ use }: Hold): number => (use.kind === 'oven' ? use.shelves : use.kind === 'store' ? use.amount : 1)

const cookClashes = (planned: Planned): Clash[] => {
  const busy = planned.scene.busy.filter(({ of, kind }) => of.fact && kind !== 'touch')
  const twice = pairsOf(busy).flatMap(([a, b]): Clash[] => {
    if (a.cook !== b.cook || (a.of.activity.road && b.of.activity.road)) return []
    const apart = a.of.activity.place !== b.of.activity.place
    const handsFull = a.kind === 'hands-on' && b.kind === 'hands-on'
    const from = since(planned, Math.max(a.from, b.from))
    const to = Math.min(a.to, b.to)
    return from < to && (apart || handsFull) ? [clash(planned, 'no-cook', [a.of, b.of], from, to)] : []
  })
  const gone = busy.flatMap(({ cook, of, from, to }): Clash[] => {
    const { place, road } = of.activity
    const begin = since(planned, from)
    const presence = planned.scene.cooks.get(cook)?.presence ?? []
    const stay = presence.find((one) => one.place === place && one.from <= begin && one.to > begin)
    const left = stay?.to ?? begin
    return !road && begin < to && left < to ? [clash(planned, 'no-cook', [of], left, to)] : []
  })
  return [...twice, ...gone]
}

const touchClashes = (planned: Planned): Clash[] =>
  planned.scene.placed.flatMap((placed) => {
    if (placed.fact?.kind !== 'running') return []
    const { touches } = placed.placement
    const missing = touchesToCome(placed.mode, placed.start, placed.end, planned.problem.now).filter(
      ({ touch, lo, hi }) => !touches.some((one) => one.touch === touch && one.at >= lo && one.at <= hi),
    )
    return missing.map(({ lo, takes }) => clash(planned, 'no-cook', [placed], lo, lo + takes))
  })

/** A dish that comes after its course: by how much later than it might have. */
const servedClashes = (planned: Planned): Clash[] =>
  planned.scene.delivered.flatMap(({ delivery, served, ready, placed }): Clash[] => {
    const due = served.moment + delivery.late
    if (served.planned || ready <= due || placed.every(({ fact }) => fact?.kind === 'done')) return []
    const last = placed.filter(({ end }) => end === ready)
    return [clash(planned, 'wait', last, due, ready, { course: served.serving.id })]
  })
