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

/** A dish is as it should be when `to` comes no later than `from` + `most`; `activity` is the one that was over by `from`. */
export interface Freshness extends Pull {
  readonly serving: number
  readonly activity: number
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
  readonly freshness: readonly Freshness[]
  readonly draws: readonly Draw[]
  readonly servings: readonly ServingEvent[]
  /** When each event is planned, and the number of its activity; −1 of a serving. Shorter than the events: helpers have neither. */
  readonly planned: readonly number[]
  readonly owner: readonly number[]
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
  const freshness = [...lagFreshness(problem, byId, servings), ...dishFreshness(problem, schedule, events, servings)]
  const arcs = [
    ...events.arcs,
    ...lagArcs(problem, byId),
    ...cookArcs(problem, events.steps),
    ...kitArcs(problem, events.steps, waiting),
    ...servingArcs(problem, events.steps, servings),
  ]
  return {
    release: events.release,
    arcs,
    gates,
    pulls: pullsOf(problem, byId),
    freshness,
    draws: events.draws,
    servings,
    ...plannedOf(events.steps, servings),
  }
}

const plannedOf = (steps: readonly Step[], servings: readonly ServingEvent[]) => {
  const planned: number[] = []
  const owner: number[] = []
  const tell = (event: EventId, at: Tick, of: number) => {
    planned[event] = at
    owner[event] = of
  }
  for (const { index, placed, begins, over, ends, touches } of steps) {
    for (const touch of touches) tell(touch.event, touch.at, index)
    tell(begins, placed.placement.start, index)
    tell(over, placed.placement.end, index)
    tell(ends, placed.placement.end, index)
  }
  for (const { event, due } of servings) tell(event, due, -1)
  return { planned, owner }
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

const tied = (problem: Problem, byId: ReadonlyMap<string, Step>) =>
  problem.lags.flatMap(({ from, edge, to, most }) => {
    const [before, after] = [byId.get(from), byId.get(to)]
    if (most === undefined || !before || !after || after.placed.activity.fact) return []
    const gap = after.placed.placement.start - before.placed.placement[edge]
    return [{ before, after, pull: { from: edgeOf(before, edge), to: after.begins, most: Math.max(most, gap) } }]
  })

const pullsOf = (problem: Problem, byId: ReadonlyMap<string, Step>): Pull[] => tied(problem, byId).map(({ pull }) => pull)

const lagFreshness = (problem: Problem, byId: ReadonlyMap<string, Step>, servings: readonly ServingEvent[]): Freshness[] =>
  tied(problem, byId).flatMap(({ before, after, pull }) => {
    const dish = problem.deliveries.find(({ id }) => id === after.placed.activity.delivery)
    const serving = servings.findIndex((one) => one.serving === dish?.serving)
    return serving < 0 ? [] : [{ ...pull, serving, activity: before.index }]
  })

/** A dish waits for the table since its last step was over. */
const dishFreshness = (problem: Problem, schedule: Schedule, events: Events, servings: readonly ServingEvent[]): Freshness[] =>
  arrivalsOf(problem, schedule).flatMap(({ delivery, ready, arrival }): Freshness[] => {
    const serving = servings.findIndex((one) => one.serving === delivery.serving)
    const moment = servings[serving]
    const own = deliveredBy(events.steps, delivery.id)
    const last = own.find(({ placed }) => placed.placement.end === ready)
    if (!moment || !last) return []
    const from = event(events, Number.NEGATIVE_INFINITY)
    for (const { ends } of own) events.arcs.push({ from: ends, to: from, lag: 0 })
    const most = Math.max(delivery.keeps.most, arrival - ready) + delivery.early
    return [{ from, to: moment.event, most, serving, activity: last.index }]
  })

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
