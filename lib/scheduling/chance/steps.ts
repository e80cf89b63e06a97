import { roundUp } from '#lib/scheduling/pace.ts'
import { type Placed, placedOf } from '#lib/scheduling/placed.ts'
import type { Problem, Tick } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import type { Arc, Edge, EventId } from './event.ts'
import type { Spread } from './spread.ts'

/** A length to be drawn: longer than `longer`, plus `extra`; `planned` is what the plan reckons with. */
export interface Draw {
  readonly activity: number
  readonly spread: Spread
  readonly extra: number
  readonly longer: number
  readonly planned: number
}

/** A placement as events. `over`: it is done; `end`: and whoever takes it out has been there. */
export interface Step {
  readonly index: number
  readonly placed: Placed
  readonly begins: EventId
  readonly over: EventId
  readonly ends: EventId
  /** Until when its kit is held: the last of these. */
  readonly holdEnds: readonly Edge[]
  readonly holdTo: Tick
  readonly touches: readonly TouchEvent[]
}

export interface TouchEvent {
  readonly cook: string
  readonly at: Tick
  readonly takes: number
  readonly event: EventId
}

/** The moments of a schedule, each with the earliest it may be, and what bounds them. */
export interface Events {
  readonly release: number[]
  readonly arcs: Arc[]
  readonly draws: Draw[]
  readonly steps: Step[]
}

/** Adds an event and answers its number. */
export const event = (events: Events, release: number): EventId => events.release.push(release) - 1

/** Every placement as events: begin → over → taken out, with what is drawn. What is done stands still. */
export const stepsOf = (problem: Problem, schedule: Schedule): Events => {
  const events: Events = { release: [], arcs: [], draws: [], steps: [] }
  const number = new Map(problem.activities.map(({ id }, index) => [id, index]))
  for (const placed of placedOf(problem, schedule)) {
    const index = number.get(placed.activity.id)
    if (index !== undefined) events.steps.push(stepOf(problem, events, placed, index))
  }
  return events
}

const stepOf = (problem: Problem, events: Events, placed: Placed, index: number): Step => {
  const { activity, mode, placement } = placed
  const begins = event(events, placement.start)
  const chosen = mode.care === 'leave' && mode.upTo !== undefined
  const isDone = activity.fact?.kind === 'done'
  const over = event(events, isDone || chosen ? placement.end : Number.NEGATIVE_INFINITY)
  if (!isDone) {
    events.arcs.push({ from: begins, to: over, lag: 0, draw: events.draws.length })
    events.draws.push(drawOf(problem, placed, index))
  }
  const isOut = (touch: number) => mode.touches[touch]?.when === 'out'
  const out = placement.touches.some(({ touch }) => isOut(touch))
  const ends = out ? event(events, Number.NEGATIVE_INFINITY) : over
  if (out) events.arcs.push({ from: over, to: ends, lag: 0 })
  const holdEnds: Edge[] = [{ event: ends, lag: 0 }]
  let holdTo = placement.end
  const touches = placement.touches.flatMap(({ touch, at, cook }): TouchEvent[] => {
    const kind = mode.touches[touch]
    if (!kind) return []
    if (kind.when === 'in') return [{ cook, at, takes: kind.takes, event: begins }]
    const moment = event(events, Number.NEGATIVE_INFINITY)
    if (kind.when === 'out') {
      events.arcs.push({ from: over, to: moment, lag: -kind.takes })
      events.arcs.push({ from: moment, to: ends, lag: kind.takes - kind.lateBy })
      holdEnds.push({ event: moment, lag: kind.takes })
      holdTo = Math.max(holdTo, at + kind.takes)
    } else events.arcs.push({ from: begins, to: moment, lag: at - placement.start })
    return [{ cook, at, takes: kind.takes, event: moment }]
  })
  return { index, placed, begins, over, ends, holdEnds, holdTo, touches }
}

/** Hands take longer at a slower pace. Of what is under way the length so far is known, and extra minutes are on top. */
const drawOf = (problem: Problem, { activity, mode, placement }: Placed, index: number): Draw => {
  const paces = problem.cooks.filter(({ id }) => placement.cooks.includes(id)).map((cook) => cook.pace)
  const pace = mode.care === 'hands-on' && paces.length > 0 ? Math.max(...paces) : 1
  const spread = { least: mode.least * pace, likely: (mode.usual ?? mode.likely) * pace, most: mode.most * pace }
  const likely = roundUp(mode.likely * pace)
  const running = activity.fact?.kind === 'running' ? activity.fact : undefined
  const extra = running ? Math.max(0, running.atLeast - likely) : 0
  const longer = running ? (problem.now ?? running.start) - running.start : 0
  return { activity: index, spread, extra, longer, planned: likely + extra }
}
