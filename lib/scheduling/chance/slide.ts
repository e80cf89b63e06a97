import type { ActivityId, Problem } from '#lib/scheduling/problem.ts'
import type { Keeping, Schedule } from '#lib/scheduling/schedule.ts'
import type { Network } from './network.ts'

/** How far apart the partial order lets activities move: `slack` ticks closer for an arc, `play` ticks further for a most. */
export interface Slides {
  readonly problem: Problem
  readonly schedule: Schedule
  /** By activity number: what must come before it and how much room is left, and so on for what comes after. */
  readonly before: readonly Bond[][]
  readonly after: readonly Bond[][]
}

/** `other` is −1 for what does not move: servings and what has happened. `room`: before it drags the other along. */
interface Bond {
  readonly other: number
  readonly room: number
}

/** The bonds of a schedule's network. A most binds the other way round: what is left behind too far is dragged along. */
export const slidesOf = (problem: Problem, schedule: Schedule, network: Network): Slides => {
  const before: Bond[][] = problem.activities.map(() => [])
  const after: Bond[][] = problem.activities.map(() => [])
  const { planned, owner } = network
  const bind = (from: number, to: number, room: number) => {
    const [a, b] = [owner[from] ?? -1, owner[to] ?? -1]
    if (a === b) return
    if (b >= 0) before[b]?.push({ other: a, room })
    if (a >= 0) after[a]?.push({ other: b, room })
  }
  for (const { from, to, lag, draw } of network.arcs)
    if (draw === undefined) bind(from, to, Math.max(0, (planned[to] ?? 0) - (planned[from] ?? 0) - lag))
  for (const { from, to, most } of network.pulls) bind(to, from, Math.max(0, most - ((planned[to] ?? 0) - (planned[from] ?? 0))))
  return { problem, schedule, before, after }
}

/**
 * The schedule with one activity so many ticks earlier (later when below 0) and whatever that drags along, in the same order
 * and with the same hands and kit; undefined when something that does not move is in the way. Windows, presences and
 * shelves are not looked at: that is the judge's.
 */
export const slide = ({ problem, schedule, before, after }: Slides, activity: number, by: number): Schedule | undefined => {
  const bonds = by > 0 ? before : after
  const moved = new Map<number, number>([[activity, Math.abs(by)]])
  const open = [activity]
  for (let i = open.pop(); i !== undefined; i = open.pop()) {
    const far = moved.get(i) ?? 0
    if (problem.activities[i]?.fact) return undefined
    for (const { other, room } of bonds[i] ?? []) {
      const dragged = far - room
      if (dragged <= (moved.get(other) ?? 0)) continue
      if (other < 0) return undefined
      moved.set(other, dragged)
      open.push(other)
    }
  }
  const sign = by > 0 ? -1 : 1
  const shift = new Map<ActivityId, number>()
  for (const [i, far] of moved) {
    const id = problem.activities[i]?.id
    if (id !== undefined) shift.set(id, sign * far)
  }
  return shifted(problem, schedule, shift)
}

const shifted = (problem: Problem, schedule: Schedule, shift: ReadonlyMap<ActivityId, number>): Schedule => {
  const placements = schedule.placements
    .map((one) => {
      const by = shift.get(one.activity)
      if (by === undefined) return one
      return {
        ...one,
        start: one.start + by,
        end: one.end + by,
        touches: one.touches.map((touch) => ({ ...touch, at: touch.at + by })),
      }
    })
    .sort((a, b) => a.start - b.start || (a.activity < b.activity ? -1 : 1))
  const ends = new Map(placements.map(({ activity, end }) => [activity, end]))
  const moments = new Map(schedule.servings.map(({ serving, toTable }) => [serving, toTable]))
  const kits = new Map(schedule.keeping.map(({ delivery, kit }) => [delivery, kit]))
  const keeping = problem.deliveries.flatMap((delivery): Keeping[] => {
    const own = problem.activities.flatMap(({ id, delivery: of }) => (of === delivery.id ? (ends.get(id) ?? []) : []))
    const moment = moments.get(delivery.serving)
    if (own.length === 0 || moment === undefined) return []
    const ready = Math.max(...own)
    const arrival = Math.max(ready, moment - delivery.early)
    const was = schedule.keeping.find((one) => one.delivery === delivery.id)
    const isFact = problem.servings.find(({ id }) => id === delivery.serving)?.fact !== undefined
    if (isFact) return was ? [was] : []
    return ready < arrival ? [{ delivery: delivery.id, from: ready, to: arrival, kit: kits.get(delivery.id) ?? [] }] : []
  })
  return { ...schedule, placements, keeping }
}
