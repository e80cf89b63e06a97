import type { ActivityId, Problem, ServingId } from '#lib/scheduling/problem.ts'
import { randomFrom } from '#lib/scheduling/random.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import type { EventId } from './event.ts'
import { type Network, networkOf } from './network.ts'
import { chanceWithin, type Quantiles, quantile, quantilesOf, type Shape } from './spread.ts'
import { heldBackBy, pass, type Walk, walkOf } from './walk.ts'

/** A course is on time when it reaches the table no later than this after the told moment: 2 min at 30 s. */
export const GRACE = 4

/** Sums of fractions differ by less. */
const EQUAL = 1e-9

export interface ChanceOptions {
  readonly samples: number
  readonly seed: number
  /** Of lengths. Triangular when absent. */
  readonly shape?: Shape
}

export interface ServingChance {
  readonly serving: ServingId
  /** 0..1. */
  readonly onTime: number
  /** The step whose taking longer than planned most often makes it late; null when it never is. */
  readonly decidedBy: ActivityId | null
}

export interface Chances {
  /** In the order of the schedule's servings. Served ones are as they were. */
  readonly servings: readonly ServingChance[]
  /** That all of them are on time. */
  readonly all: number
}

/**
 * How likely a schedule is to keep its times, by Monte Carlo over its partial order (Van Slyke 1963, "Monte Carlo methods
 * and the PERT problem"): M1-M7 in docs/spec.md. The same schedule, seed and samples give the same.
 */
export const chances = (problem: Problem, schedule: Schedule, options: ChanceOptions): Chances => {
  const { samples, servings, late, anyLate } = simulate(problem, schedule, options)
  return {
    servings: servings.map((serving, s) => ({
      serving,
      onTime: 1 - (late[s]?.samples ?? 0) / samples,
      decidedBy: problem.activities[most(late[s]?.decided)]?.id ?? null,
    })),
    all: 1 - anyLate / samples,
  }
}

/** Enough late samples to know who is to blame. */
const BLAMED = 200

/** In how many samples a serving was late, and in how many of the first of them each activity decided it, or held it back at all. */
export interface Lateness {
  samples: number
  readonly decided: Int32Array
  readonly heldBack: Int32Array
}

/** The counts behind `chances`. */
export interface Simulated {
  readonly samples: number
  readonly servings: readonly ServingId[]
  readonly late: readonly Lateness[]
  /** Samples in which any serving was late. */
  readonly anyLate: number
}

export const simulate = (
  problem: Problem,
  schedule: Schedule,
  { samples, seed, shape = 'triangular' }: ChanceOptions,
): Simulated => {
  const network = networkOf(problem, schedule)
  const walk = walkOf(network)
  const draw = drawer(network, walk, seed, shape)
  const acts = problem.activities.length
  const late = network.servings.map(
    (): Lateness => ({ samples: 0, decided: new Int32Array(acts), heldBack: new Int32Array(acts) }),
  )
  let anyLate = 0
  for (let sample = 0; sample < samples; sample++) {
    draw()
    pass(walk)
    let any = false
    for (const [s, count] of late.entries()) {
      const fault = faultOf(network, walk, s)
      if (!fault) continue
      any = true
      count.samples++
      if (count.samples <= BLAMED) blame(network, walk, fault, count)
    }
    if (any) anyLate++
  }
  return { samples, servings: network.servings.map(({ serving }) => serving), late, anyLate }
}

/** Draws all lengths anew into the walk. */
const drawer = ({ draws }: Network, { arcOf, lag }: Walk, seed: number, shape: Shape): (() => void) => {
  const random = randomFrom(seed)
  const open: OpenLength[] = []
  for (const [i, { spread, extra, longer }] of draws.entries()) {
    const arc = arcOf[i] as number
    const quantiles = quantilesOf(spread, shape)
    if (arc < 0) continue
    lag[arc] = Math.max(longer, spread.likely + extra)
    if (spread.most > spread.least) open.push({ arc, quantiles, extra, longer, above: chanceWithin(quantiles, longer - extra) })
  }
  return () => {
    for (const { arc, quantiles, extra, longer, above } of open)
      lag[arc] = Math.max(longer, quantile(quantiles, above + (1 - above) * random.unit()) + extra)
  }
}

interface OpenLength {
  readonly arc: number
  readonly quantiles: Quantiles
  readonly extra: number
  /** It has lasted so long already, which chance is passed. */
  readonly longer: number
  readonly above: number
}

/** What came too late for a serving to be good, and the step since whose end something has waited too long, or −1. */
interface Fault {
  readonly event: EventId
  readonly activity: number
}

const faultOf = ({ servings, freshness }: Network, { at, time }: Walk, index: number): Fault | null => {
  const serving = servings[index]
  if (!serving || serving.served) return null
  if ((time[at[serving.event] as number] as number) > serving.due + GRACE + EQUAL) return { event: serving.event, activity: -1 }
  for (const { serving: of, from, to, most, activity } of freshness) {
    if (of !== index) continue
    const waited = (time[at[to] as number] as number) - (time[at[from] as number] as number)
    if (waited > most + GRACE + EQUAL) return { event: to, activity }
  }
  return null
}

/** Counts the steps that took longer than planned on the way that held it back; the one that went furthest over decides. */
const blame = ({ draws }: Network, walk: Walk, { event, activity }: Fault, { decided, heldBack }: Lateness): void => {
  let decides = activity
  let most = 0
  if (activity >= 0) heldBack[activity] = (heldBack[activity] as number) + 1
  for (const arc of heldBackBy(walk, walk.at[event] as number)) {
    const draw = draws[walk.drawOf[arc] as number]
    const over = draw ? (walk.lag[arc] as number) - draw.planned : 0
    if (!draw || over <= 0) continue
    heldBack[draw.activity] = (heldBack[draw.activity] as number) + 1
    if (over <= most) continue
    most = over
    decides = draw.activity
  }
  if (decides >= 0) decided[decides] = (decided[decides] as number) + 1
}

/** The first of the greatest counts; −1 when all are 0. */
const most = (counts: Int32Array | undefined): number => {
  let best = -1
  for (const [i, count] of (counts ?? []).entries()) if (count > (best < 0 ? 0 : (counts?.[best] as number))) best = i
  return best
}
