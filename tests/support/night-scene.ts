import { type Delivery, EYE_PIECE, type Fact, type Mode, type Problem, type Serving, type Use } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'

interface LagBefore {
  readonly before: Placed
  readonly edge: 'start' | 'end'
  readonly least: number
  /** Never less than what the plan itself leaves between them. */
  readonly most: number | undefined
  readonly safety: boolean
}

/** A placement, as the night's simulation looks at it. */
export interface Placed {
  readonly id: string
  readonly start: number
  readonly end: number
  readonly mode: Mode
  readonly fact: Fact | undefined
  readonly pace: number
  /** Its length is one of likely..upTo. */
  readonly chosen: boolean
  readonly delivery: string | undefined
  readonly kind: 'hands' | 'eye' | 'road'
  readonly spot: string
  readonly short: boolean
  readonly cooks: readonly string[]
  readonly lagsBefore: LagBefore[]
  readonly holds: Hold[]
}

export interface Hold {
  readonly who: string
  readonly of: Placed | undefined
  readonly dish: Delivery | undefined
  readonly kit: string
  readonly unit: number
  readonly use: Use
  readonly pan: string | undefined
  readonly from: number
  readonly to: number
}

export interface TouchOf {
  readonly id: string
  readonly of: Placed
  readonly cook: string
  readonly when: 'in' | 'out' | 'every'
  readonly start: number
  readonly takes: number
  readonly lateBy: number
  readonly kind: 'hands'
  readonly short: boolean
}

/** What a night begins with: who does what with which kit, in the planned order. */
export const sceneOf = (problem: Problem, schedule: Schedule) => {
  const placed: Placed[] = []
  const touches: TouchOf[] = []
  const holds: Hold[] = []
  for (const placement of schedule.placements) {
    const activity = problem.activities.find(({ id }) => id === placement.activity)
    const mode = activity?.modes[placement.mode]
    if (!activity || !mode) throw new Error(`unknown ${placement.activity}`)
    const attends = mode.care === 'leave' ? [] : placement.cooks
    const paces = problem.cooks.filter(({ id }) => attends.includes(id)).map(({ pace }) => pace)
    const one: Placed = {
      id: activity.id,
      start: placement.start,
      end: placement.end,
      mode,
      fact: activity.fact,
      pace: mode.care === 'hands-on' ? Math.max(...paces) : 1,
      chosen: mode.care === 'leave' && mode.upTo !== undefined,
      delivery: activity.delivery,
      kind: mode.care === 'eye' ? 'eye' : activity.road ? 'road' : 'hands',
      spot: `${activity.place}/${activity.at}`,
      short: placement.end - placement.start <= EYE_PIECE,
      cooks: attends,
      lagsBefore: [],
      holds: [],
    }
    placed.push(one)
    let to = placement.end
    for (const [i, { touch, at, cook }] of placement.touches.entries()) {
      const kind = mode.touches[touch]
      if (!kind) throw new Error(`unknown touch of ${activity.id}`)
      if (kind.when === 'out') to = Math.max(to, at + kind.takes)
      touches.push({
        id: `${activity.id} ${i}`,
        of: one,
        cook,
        when: typeof kind.when === 'string' ? kind.when : 'every',
        start: at,
        takes: kind.takes,
        lateBy: kind.lateBy,
        kind: 'hands',
        short: kind.takes <= EYE_PIECE,
      })
    }
    for (const [i, use] of mode.uses.entries()) {
      const held = placement.kit[i]
      if (!held) continue
      const pan = use.kind === 'ring' && activity.vessel !== undefined ? `${activity.vessel}/${activity.place}` : undefined
      const common = { who: activity.id, of: one, dish: undefined, use, pan, from: placement.start, to }
      one.holds.push({ ...common, kit: held.id, unit: held.unit })
    }
    holds.push(...one.holds)
  }
  for (const lag of problem.lags) {
    const [before, after] = [lag.from, lag.to].map((id) => placed.find((one) => one.id === id))
    if (!before || !after || after.fact) continue
    const gap = after.start - (lag.edge === 'start' ? before.start : before.end)
    const most = lag.most === undefined ? undefined : Math.max(lag.most, gap)
    after.lagsBefore.push({ before, edge: lag.edge, least: lag.least, most, safety: lag.bound === 'safety' })
  }
  for (const { delivery, from, to, kit } of schedule.keeping) {
    const dish = problem.deliveries.find(({ id }) => id === delivery)
    for (const [i, use] of (dish?.keeps.uses ?? []).entries()) {
      const held = kit[i]
      if (held)
        holds.push({
          who: `keeping ${delivery}`,
          of: undefined,
          dish,
          kit: held.id,
          unit: held.unit,
          use,
          pan: undefined,
          from,
          to,
        })
    }
  }
  const servings = schedule.servings.map(({ serving: id, toTable }): Serving & { readonly due: number } => {
    const serving = problem.servings.find((one) => one.id === id)
    if (!serving) throw new Error(`unknown ${id}`)
    return { ...serving, due: toTable }
  })
  return { placed, touches, holds, servings }
}

/** Ticks between two dishes in one oven whose windows do not meet; 0 when they do. */
export const rampBetween = (oven: { readonly up: number; readonly down: number }, before: Use, after: Use): number => {
  if (before.kind !== 'oven' || after.kind !== 'oven') return 0
  const hotter = after.lowC - before.highC
  const cooler = before.lowC - after.highC
  return Math.max(0, Math.ceil(hotter / oven.up - 1e-9), Math.ceil(cooler / oven.down - 1e-9))
}
