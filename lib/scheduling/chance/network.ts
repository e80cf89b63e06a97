import { arrivalsOf, momentOf } from '#lib/scheduling/placed.ts'
import type { Problem, ServingId, Tick } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import { cookArcs } from './cook-chains.ts'
import type { Arc, Edge, EventId, Gate, Hold } from './event.ts'
import { kitArcs, kitGates, type Waiting } from './kit-chains.ts'
import { type Draw, type Events, event, type Step, stepsOf } from './steps.ts'

/** `to` comes no later than `from` + `most` for want of being planned so: it is brought forward. */
export interface Pull {
  readonly from: EventId
  readonly to: EventId
  readonly most: number
}

/** What a lag that is never bent allows, for a serving to be fit to eat. */
export interface Safety extends Pull {
  readonly serving: number
}

export interface ServingEvent {
  readonly serving: ServingId
  readonly event: EventId
  readonly due: Tick
  /** It has been served: nothing is open. */
  readonly served: boolean
}

/** The partial order of a schedule: its events with their releases, and who waits for whom. */
export interface Network {
  readonly release: readonly number[]
  readonly arcs: readonly Arc[]
  readonly gates: readonly Gate[]
  readonly pulls: readonly Pull[]
  readonly safeties: readonly Safety[]
  readonly draws: readonly Draw[]
  readonly servings: readonly ServingEvent[]
}

/**
 * The order in which a schedule is carried out, without its clock times but for releases: lags, each cook's and each kit's
 * planned sequence, and servings that wait for their dishes. Post: with planned lengths nothing is later than planned.
 */
export const networkOf = (problem: Problem, schedule: Schedule): Network => {
  const events = stepsOf(problem, schedule)
  const byId = new Map(events.steps.map((step) => [step.placed.activity.id, step]))
  const servings = servingEvents(problem, schedule, events)
  const waiting = waitingOf(problem, schedule, events, servings)
  const gates = kitGates(problem, events.steps, waiting, (hold) => lastOf(events, hold))
  const arcs = [
    ...events.arcs,
    ...lagArcs(problem, byId),
    ...cookArcs(problem, events.steps),
    ...kitArcs(problem, events.steps, waiting),
    ...servingArcs(problem, events.steps, servings),
  ]
  return { release: events.release, arcs, gates, ...mostsOf(problem, byId, servings), draws: events.draws, servings }
}

/** One event for the last of a hold's ends. */
const lastOf = (events: Events, { ends }: Hold): EventId => {
  const [first, ...others] = ends
  if (first && first.lag === 0 && others.length === 0) return first.event
  const last = event(events, Number.NEGATIVE_INFINITY)
  for (const end of ends) events.arcs.push({ from: end.event, to: last, lag: end.lag })
  return last
}

const servingEvents = (problem: Problem, schedule: Schedule, events: Events): ServingEvent[] =>
  problem.servings.flatMap(({ id, fact }) => {
    const due = momentOf(schedule, id)
    return due === undefined ? [] : [{ serving: id, event: event(events, due), due, served: fact !== undefined }]
  })

const edgeOf = (step: Step, edge: 'start' | 'end'): EventId => (edge === 'start' ? step.begins : step.ends)

const lagArcs = (problem: Problem, byId: ReadonlyMap<string, Step>): Arc[] =>
  problem.lags.flatMap(({ from, edge, to, least }) => {
    const [before, after] = [byId.get(from), byId.get(to)]
    if (!before || !after || after.placed.activity.fact) return []
    return [{ from: edgeOf(before, edge), to: after.begins, lag: least }]
  })

const mostsOf = (problem: Problem, byId: ReadonlyMap<string, Step>, servings: readonly ServingEvent[]) => {
  const servingOf = new Map(problem.deliveries.map(({ id, serving }) => [id, serving]))
  const pulls: Pull[] = []
  const safeties: Safety[] = []
  for (const { from, edge, to, most, bound } of problem.lags) {
    const [before, after] = [byId.get(from), byId.get(to)]
    if (most === undefined || !before || !after || after.placed.activity.fact) continue
    const gap = after.placed.placement.start - before.placed.placement[edge]
    const pull = { from: edgeOf(before, edge), to: after.begins, most: Math.max(most, gap) }
    pulls.push(pull)
    const serving = servings.findIndex((one) => one.serving === servingOf.get(after.placed.activity.delivery ?? ''))
    if (bound === 'safety' && serving >= 0) safeties.push({ ...pull, serving })
  }
  return { pulls, safeties }
}

const deliveredBy = (steps: readonly Step[], delivery: string): Step[] =>
  steps.filter(({ placed }) => placed.activity.delivery === delivery)

/** A dish that waits gives its kit back once it is at the table, which is when it is ready or so much before its serving. */
const waitingOf = (problem: Problem, schedule: Schedule, events: Events, servings: readonly ServingEvent[]): Waiting[] => {
  const arrivals = new Map(arrivalsOf(problem, schedule).map((one) => [one.delivery.id, one]))
  return schedule.keeping.flatMap(({ delivery, from, to, kit }) => {
    const of = arrivals.get(delivery)?.delivery
    const serving = servings.find((one) => one.serving === of?.serving)
    if (!of || !serving) return []
    const own = deliveredBy(events.steps, delivery).map(({ ends }): Edge => ({ event: ends, lag: 0 }))
    const ends = [{ event: serving.event, lag: -of.early }, ...own]
    return [{ who: -1, from, to, begins: undefined, ends, uses: of.keeps.uses, kit }]
  })
}

/** A serving waits for its dishes, and for the one before it to be eaten, cleared and poured after. */
const servingArcs = (problem: Problem, steps: readonly Step[], servings: readonly ServingEvent[]): Arc[] =>
  servings.flatMap(({ serving, event: to, served }, i) => {
    if (served) return []
    const dishes = problem.deliveries
      .filter((delivery) => delivery.serving === serving)
      .flatMap(({ id, late }) => deliveredBy(steps, id).map(({ ends }): Arc => ({ from: ends, to, lag: -late })))
    const before = servings[i - 1]
    const meal = problem.servings.find(({ id }) => id === before?.serving)
    const own = problem.servings.find(({ id }) => id === serving)
    if (!before || !meal || !own) return dishes
    const off = meal.fact?.platesOff
    const lag = (off === undefined ? meal.eating + meal.clearing : off - before.due) + own.pouring
    return [...dishes, { from: before.event, to, lag }]
  })
