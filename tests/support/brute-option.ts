import type { Activity, Problem, Use } from '#lib/scheduling/problem.ts'
import type { Placement } from '#lib/scheduling/schedule.ts'

/** A hold of an option, in numbers. */
interface OptionHold {
  readonly kit: string
  readonly unit: number
  readonly from: number
  readonly to: number
  readonly use: Use
}

/** One way of placing one activity, prepared for quick comparison. Masks have one bit for each tick of [0, 31). */
export interface Option {
  readonly of: number
  readonly activity: Activity
  readonly placement: Placement | null
  readonly start: number
  readonly end: number
  readonly holdEnd: number
  readonly planned: boolean
  readonly spot: string
  readonly vessel: string | null
  readonly isTrip: boolean
  /** For each cook who carries it: which hole between stays that is in; −1 otherwise. */
  readonly holes: readonly number[]
  /** For each cook: ticks in which its hands are busy, and in which it keeps an eye. */
  readonly hands: readonly number[]
  readonly eyes: readonly number[]
  readonly holds: readonly OptionHold[]
}

export const TICKS = 31

/** Bits of the ticks in [from, to) that fit the mask. */
export const maskOf = (from: number, to: number): number => {
  let mask = 0
  for (let tick = Math.max(0, from); tick < Math.min(TICKS, to); tick += 1) mask |= 1 << tick
  return mask
}

export const countBits = (mask: number): number => {
  let count = 0
  for (let rest = mask; rest !== 0; rest &= rest - 1) count += 1
  return count
}

/** `placement` null is the activity left out. */
export const optionOf = (problem: Problem, of: number, activity: Activity, placement: Placement | null): Option => {
  const mode = placement ? activity.modes[placement.mode] : undefined
  const [start, end] = [placement?.start ?? 0, placement?.end ?? 0]
  const hands = problem.cooks.map(() => 0)
  const eyes = problem.cooks.map(() => 0)
  let holdEnd = end
  const busy = (masks: number[], cook: string, from: number, to: number) => {
    const index = problem.cooks.findIndex(({ id }) => id === cook)
    if (index >= 0) masks[index] = (masks[index] ?? 0) | maskOf(from, to)
  }
  for (const cook of placement?.cooks ?? []) {
    if (mode?.care === 'hands-on') busy(hands, cook, start, end)
    if (mode?.care === 'eye') busy(eyes, cook, start, end)
  }
  for (const { touch, at, cook } of placement?.touches ?? []) {
    const kind = mode?.touches[touch]
    if (!kind) continue
    busy(hands, cook, at, at + kind.takes)
    if (kind.when === 'out') holdEnd = Math.max(holdEnd, at + kind.takes)
  }
  const holds = (mode?.uses ?? []).flatMap((use, index): OptionHold[] => {
    const kit = placement?.kit[index]
    return kit ? [{ kit: kit.id, unit: kit.unit, from: start, to: holdEnd, use }] : []
  })
  return {
    of,
    activity,
    placement,
    start,
    end,
    holdEnd,
    planned: !activity.fact,
    spot: `${activity.place}/${activity.at}`,
    vessel: activity.vessel === undefined ? null : `${activity.place}/${activity.vessel}`,
    isTrip: activity.road !== undefined,
    holes: problem.cooks.map(({ id, presence }) =>
      activity.road && placement?.cooks.includes(id)
        ? presence.findIndex((stay, at) => stay.to <= start && end <= (presence[at + 1]?.from ?? Number.NEGATIVE_INFINITY))
        : -1,
    ),
    hands,
    eyes,
    holds,
  }
}
