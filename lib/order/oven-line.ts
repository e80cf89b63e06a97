import type { RunningOrder } from '#lib/domain/running-order.ts'
import { instantOfTick } from '#lib/domain/time.ts'
import type { Kit, Tick } from '#lib/scheduling/problem.ts'
import type { Planned } from './planned.ts'

const ROOM_C = 20

type Oven = Extract<Kit, { kind: 'oven' }>

/** The oven is at `low` or hotter in [from, to]; `warmsUp` when it may do its heating after the food has gone in. */
interface Hot {
  readonly from: Tick
  readonly to: Tick
  readonly low: number
  readonly high: number
  readonly warmsUp: boolean
}

/**
 * The coolest temperature that serves every dish: the least function above all lows that rises no faster than `up` and
 * falls no faster than `down` (McShane 1934, "Extension of range of functions", with two constants). As the dishes are
 * far enough apart for their windows, it is below all highs too.
 */
const coolest = (oven: Oven, hots: readonly Hot[], at: Tick): number =>
  hots.reduce((c, { from, to, low }) => {
    const here = at < from ? low - oven.up * (from - at) : at > to ? low - oven.down * (at - to) : low
    return Math.max(c, here)
  }, ROOM_C)

/** Where the line may bend between two neighbouring edges: where its steepest rise, fall and level meet. */
const bends = (oven: Oven, hots: readonly Hot[], a: Tick, b: Tick): number[] => {
  const rise = Math.max(
    Number.NEGATIVE_INFINITY,
    ...hots.filter(({ from }) => from >= b).map((hot) => hot.low - oven.up * hot.from),
  )
  const fall = Math.max(Number.NEGATIVE_INFINITY, ...hots.filter(({ to }) => to <= a).map((hot) => hot.low + oven.down * hot.to))
  const level = hots.filter(({ from, to }) => from <= a && b <= to).reduce((c, { low }) => Math.max(c, low), ROOM_C)
  return [(level - rise) / oven.up, (fall - level) / oven.down, (fall - rise) / (oven.up + oven.down)].filter(
    (at) => Number.isFinite(at) && at > a && at < b,
  )
}

const hotsOf = ({ scene }: Planned, oven: Oven): Hot[] =>
  scene.holds.flatMap(({ kit, use, from, to }) => {
    if (kit.id !== oven.id || use.kind !== 'oven' || use.lowC <= ROOM_C) return []
    const heating = use.preheated ? 0 : Math.ceil((use.lowC - ROOM_C) / oven.up)
    const hot = Math.min(to, from + heating)
    return [{ from: hot, to: Math.max(hot, to), low: use.lowC, high: use.highC, warmsUp: !use.preheated }]
  })

/** 30 min at 30 s: nobody turns an oven down for less. */
const SHORT_GAP = 60

/**
 * Between two dishes that follow closely the oven is left at the cooler one's temperature, unless a third dish cannot
 * have it. No slope gets steeper: the gap's ends are in the dishes' own time.
 */
const keptBetween = (hots: readonly Hot[]): Hot[] =>
  hots.flatMap((hot) =>
    hots.flatMap((next) => {
      const gap = next.from - hot.to
      if (gap <= 0 || gap > SHORT_GAP || next.warmsUp) return []
      const low = Math.min(hot.low, next.low)
      const others = hots.filter(({ from, to }) => from < next.from && to > hot.to)
      if (others.some(({ high }) => high < low)) return []
      return [{ from: hot.to, to: next.from, low, high: Math.max(hot.high, next.high), warmsUp: false }]
    }),
  )

const round = (c: number): number => Math.round(c * 10) / 10

const lineOf = (oven: Oven, hots: readonly Hot[]): { at: Tick; c: number }[] => {
  const cold = (hot: Hot) => [
    Math.floor(hot.from - (hot.low - ROOM_C) / oven.up),
    hot.from,
    hot.to,
    Math.ceil(hot.to + (hot.low - ROOM_C) / oven.down),
  ]
  const edges = [...new Set(hots.flatMap(cold))].sort((a, b) => a - b)
  const ticks = edges.flatMap((edge, at) => {
    const next = edges[at + 1]
    return next === undefined
      ? [edge]
      : [edge, ...bends(oven, hots, edge, next).flatMap((bend) => [Math.floor(bend), Math.ceil(bend)])]
  })
  const points = [...new Set(ticks)].sort((a, b) => a - b).map((at) => ({ at, c: coolest(oven, hots, at) }))
  return points.filter((point, at) => {
    const [before, after] = [points[at - 1], points[at + 1]]
    if (!before || !after) return true
    const straight = before.c + ((after.c - before.c) * (point.at - before.at)) / (after.at - before.at)
    return Math.abs(straight - point.c) > 1e-6
  })
}

/** Where somebody must turn an oven on or up before the food goes in: where the line begins to rise. */
const preheatsOf = (line: readonly { at: Tick; c: number }[], hots: readonly Hot[]): Tick[] =>
  line.flatMap((point, k) => {
    const [before, after] = [line[k - 1], line[k + 1]]
    if (!after || after.c <= point.c || (before && before.c < point.c)) return []
    const next = hots.filter(({ from }) => from >= after.at).sort((a, b) => a.from - b.from)[0]
    return next?.warmsUp ? [] : [point.at]
  })

/** Each oven's temperature through the evening, from a cold oven to a cold one, and when to turn it on or up. */
export const ovensOf = (planned: Planned): RunningOrder['ovens'] =>
  planned.problem.kit.flatMap((kit) => {
    if (kit.kind !== 'oven') return []
    const dishes = hotsOf(planned, kit)
    const hots = [...dishes, ...keptBetween(dishes)]
    const line = lineOf(kit, hots)
    const instant = (tick: Tick) => instantOfTick(planned.evening, tick)
    return [
      {
        kit: kit.id,
        line: line.map(({ at, c }) => ({ at: instant(at), c: round(c) })),
        preheats: preheatsOf(line, hots).map(instant),
      },
    ]
  })
