import type { Kit, Problem, Use } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import { serves } from '#lib/scheduling/verify/scene.ts'
import { type Builder, type Expr, type Interval, type Literal, minus, not, plus } from './builder.ts'
import type { Act, Dish, Times, TouchAt } from './times.ts'

type OvenUse = Use & { readonly kind: 'oven' }
type OvenKit = Kit & { readonly kind: 'oven' }

/** Kit held from start to end while `held` holds. */
interface Hold {
  readonly use: Use
  readonly at: number
  readonly place: string
  readonly start: Expr
  readonly end: Expr
  readonly held: Literal
  readonly interval: Interval
  readonly act?: Act
  readonly dish?: Dish
  readonly touches: readonly TouchAt[]
  readonly options: readonly { readonly kit: Kit; readonly on: Literal; readonly interval: Interval }[]
}

export interface KitChoice {
  readonly act?: Act
  readonly dish?: Dish
  readonly at: number
  readonly options: readonly { readonly kit: Kit; readonly on: Literal }[]
}

/**
 * H11-H15 and the kit of H18. Rings are counted by size, not told apart: which ring is whose is settled afterwards, and
 * preheating from cold is left to the verifier. Gives for each use of an oven or store which kit is chosen.
 */
export const writeKit = (m: Builder, problem: Problem, times: Times, known: Schedule | undefined): readonly KitChoice[] => {
  const holds = [
    ...times.acts.flatMap((act) => holdsOfAct(m, problem, act)),
    ...times.dishes.flatMap((dish) => holdsOfDish(m, problem, dish, known)),
  ]
  writeRings(m, problem, times, holds)
  for (const kit of problem.kit) {
    if (kit.kind === 'ring') continue
    const here = holds.flatMap((hold) => {
      const option = hold.options.find((one) => one.kit.id === kit.id)
      return option ? [{ ...hold, ...option }] : []
    })
    m.cumulative(
      kit.kind === 'oven' ? kit.shelves : kit.capacity,
      here.map(({ interval, use }) => [interval, amountOf(use)]),
    )
    if (kit.kind === 'oven') writeOven(m, kit, here, times)
  }
  return holds.filter(({ use }) => use.kind !== 'ring')
}

const amountOf = (use: Use): number => (use.kind === 'oven' ? use.shelves : use.kind === 'store' ? use.amount : 1)

const canServe = (kit: Kit, use: Use, place: string): boolean =>
  serves(kit, 0, use, place) &&
  (kit.kind !== 'oven' || (use.kind === 'oven' && use.lowC <= kit.maxC && use.shelves <= kit.shelves)) &&
  (kit.kind !== 'store' || amountOf(use) <= kit.capacity)

const hold = (m: Builder, problem: Problem, parts: Omit<Hold, 'options' | 'interval'>, chosen: string | undefined): Hold => {
  const { use, place, start, end, held } = parts
  const interval = m.interval(start, minus(end, start), end, held)
  if (use.kind === 'ring') return { ...parts, interval, options: [] }
  const able = problem.kit.filter((kit) => canServe(kit, use, place))
  const only = able.length === 1
  const options = able.map((kit) => {
    const isKnown = m.holds(held)
    const on = only ? held : m.bool(isKnown === undefined ? undefined : isKnown && chosen === kit.id)
    return { kit, on, interval: only ? interval : m.interval(start, minus(end, start), end, on) }
  })
  if (!only) m.oneOf([...options.map(({ on }) => on), ...(held === m.yes ? [] : [not(held)])])
  return { ...parts, interval, options }
}

const holdsOfAct = (m: Builder, problem: Problem, act: Act): Hold[] =>
  act.ways.flatMap(({ mode, index, chosen, holdEnd, touches }) =>
    mode.uses.map((use, at) =>
      hold(
        m,
        problem,
        { use, at, place: act.activity.place, start: act.start, end: holdEnd, held: chosen, act, touches },
        act.known?.mode === index ? act.known.kit[at]?.id : undefined,
      ),
    ),
  )

/** A dish that waits for the table holds its keeping kit from ready to max(ready, moment − early). */
const holdsOfDish = (m: Builder, problem: Problem, dish: Dish, known: Schedule | undefined): Hold[] => {
  const { delivery, course, ready } = dish
  if (delivery.keeps.uses.length === 0) return []
  const wanted = plus(course.moment, -delivery.early)
  const waits = minus(wanted, ready)
  const value = m.value(waits)
  const held = m.bool(value === undefined ? undefined : value > 0)
  m.atLeast(waits, 1, held)
  m.atMost(waits, 0, not(held))
  const was = known?.keeping.find((one) => one.delivery === delivery.id)
  return delivery.keeps.uses.map((use, at) =>
    hold(
      m,
      problem,
      { use, at, place: delivery.keeps.place, start: ready, end: wanted, held, dish, touches: [] },
      was?.kit[at]?.id,
    ),
  )
}

/** H11, H12: of every size and above no more holds than rings; a vessel holds one from its first start to its last end. */
const writeRings = (m: Builder, problem: Problem, _times: Times, holds: readonly Hold[]): void => {
  const rings = holds.flatMap((one) => (one.use.kind === 'ring' ? [{ ...one, size: one.use.size }] : []))
  const alone = rings.filter((one) => vesselOf(one) === null)
  const vessels = new Map<string, typeof rings>()
  for (const one of rings) {
    const vessel = vesselOf(one)
    if (vessel !== null) vessels.set(vessel, [...(vessels.get(vessel) ?? []), one])
  }
  const spans = [...vessels.values()].flatMap((members) => {
    m.noOverlap(members.map(({ interval }) => interval))
    const place = members[0]?.place ?? ''
    const fixed = members.filter(({ held }) => held === m.yes)
    if (members.length === 1 || fixed.length === 0) return members
    const start = edgeOf(m, fixed, 'start')
    const end = edgeOf(m, fixed, 'end')
    return [{ place, size: Math.max(...fixed.map(({ size }) => size)), interval: m.interval(start, minus(end, start), end) }]
  })
  const all = [...alone, ...spans]
  for (const place of new Set(all.map((one) => one.place))) {
    const here = all.filter((one) => one.place === place)
    for (const size of new Set(here.map((one) => one.size)))
      m.cumulative(
        problem.kit.reduce(
          (count, kit) => count + (kit.kind === 'ring' && kit.place === place && kit.size >= size ? kit.count : 0),
          0,
        ),
        here.filter((one) => one.size >= size).map(({ interval }) => [interval, 1]),
      )
  }
}

const vesselOf = ({ act }: Hold): string | null =>
  act?.activity.vessel === undefined ? null : JSON.stringify([act.activity.place, act.activity.vessel])

const edgeOf = (m: Builder, members: readonly Hold[], edge: 'start' | 'end'): Expr => {
  const values = members.map((one) => m.value(one[edge]))
  const known = values.every((value) => value !== undefined)
  const ranges = members.map((one) => m.range(one[edge]))
  const [least, most] = [Math.min(...ranges.map(([a]) => a)), Math.max(...ranges.map(([, b]) => b))]
  const pick = edge === 'start' ? Math.min : Math.max
  const at = m.int(least, most, known ? pick(...values.map((value) => value ?? 0)) : undefined)
  for (const one of members) {
    const late = minus(one[edge], at)
    if (edge === 'start') m.atLeast(late, 0)
    else m.atMost(late, 0)
  }
  return at
}

type InOven = Hold & { readonly on: Literal }

/** H14 and H15 in one oven. */
const writeOven = (m: Builder, oven: OvenKit, holds: readonly InOven[], times: Times): void => {
  for (const [index, a] of holds.entries())
    for (const b of holds.slice(index + 1)) {
      if (a.use.kind !== 'oven' || b.use.kind !== 'oven' || (a.act && a.act === b.act)) continue
      if (doMeet(a.use, b.use)) continue
      const orders = [
        [a, b],
        [b, a],
      ] as const
      const possible = orders.filter(([x, y]) => !(x.act && y.act && times.isBefore(y.act, x.act)))
      const ways = possible.map(([x, y]) => {
        const gap = minus(y.start, x.end)
        const ramp = rampOf(oven, x.use as OvenUse, y.use as OvenUse)
        return orderedBy(m, gap, ramp)
      })
      m.anyOf([not(a.on), not(b.on), ...ways].filter((literal) => literal !== not(m.yes)))
    }
  for (const shut of holds) {
    const { use, act } = shut
    if (use.kind !== 'oven' || use.doorShut === undefined || !act) continue
    for (const other of holds) {
      if (!other.act || other.act === act) continue
      const moments = [other.start, other.end, ...other.touches.map(({ at }) => at)]
      for (const moment of moments) {
        const since = minus(moment, act.start)
        const open = [orderedBy(m, since, use.doorShut), orderedBy(m, minus(act.start, moment), 0)]
        m.anyOf([not(shut.on), not(other.on), ...open].filter((literal) => literal !== not(m.yes)))
      }
    }
  }
}

/** A literal under which gap ≥ least. */
const orderedBy = (m: Builder, gap: Expr, least: number): Literal => {
  const [low, high] = m.range(gap)
  if (low >= least) return m.yes
  if (high < least) return not(m.yes)
  const value = m.value(gap)
  const literal = m.bool(value === undefined ? undefined : value >= least)
  m.atLeast(gap, least, literal)
  return literal
}

const doMeet = (a: OvenUse, b: OvenUse): boolean => a.lowC <= b.highC && b.lowC <= a.highC

/** Ticks that the oven needs from one use to the next. */
const rampOf = ({ up, down }: OvenKit, from: OvenUse, to: OvenUse): number =>
  Math.ceil((to.lowC > from.highC ? (to.lowC - from.highC) / up : (from.lowC - to.highC) / down) - 1e-9)
