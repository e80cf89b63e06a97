import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { msOfInstant, tickOfMs } from '#lib/domain/time.ts'
import { type Activity, type Cook, type Problem, type Serving, WEIGHTS, type Weights } from '#lib/scheduling/problem.ts'
import { type TickOf, tickReader } from './clock.ts'
import { cooksToProblem } from './cooks-to-problem.ts'
import { deliveriesToProblem, servingsToProblem } from './courses-to-problem.ts'
import { gatherFacts } from './facts.ts'
import { activityId } from './ids.ts'
import { kitToProblem } from './kit-to-problem.ts'
import { type LagOf, lagsToProblem } from './lags-to-problem.ts'
import { sparesToProblem } from './spares.ts'
import { activitiesToProblem, type PlannedStep, plannedSteps, togetherToProblem } from './steps-to-problem.ts'
import { toldCues, toPrevious } from './told.ts'

export interface ProblemOptions {
  /** RFC 3339: on the night, nothing new starts before it. */
  readonly now?: string
  /** What the cooks were last told. */
  readonly previous?: RunningOrder
}

/** The way back from the engine's terms. Kitchens, kit, cooks, courses and dishes keep their ids. */
export interface ProblemIndex {
  readonly activities: ReadonlyMap<string, PlannedStep & { readonly batch: number }>
  /** As long as the problem's lags, in their order. */
  readonly lags: readonly LagOf[]
}

/** On the night a step is not moved for less than some minutes at the table. */
const NIGHT_WEIGHTS: Weights = { ...WEIGHTS, moved: 10 * WEIGHTS.moved }

/**
 * Who says who hosts wants one of them at the table: a tick without is dearer than three of waiting, and no wish is broken for less than
 * some ticks of it. With the usual price brute force finds evenings whose cheapest order has both up though it need not.
 */
const NEVER_BOTH = 120

const weightsOf = ({ cooks, courses }: Evening, isNight: boolean): Weights => {
  const usual = isNight ? NIGHT_WEIGHTS : WEIGHTS
  const isCouple = cooks.filter(({ host }) => host).length > 1 && courses.some(({ hosts }) => hosts !== undefined)
  return isCouple ? { ...usual, allAway: NEVER_BOTH } : usual
}

/** 12 h at 30 s: how far past its own courses an evening that went wrong can still be planned. */
const GENEROUS = 1440

/**
 * The evening as the engine sees it, in ticks of 30 s from `originMsOf`: only what bears on the running order, sorted
 * so that the same plan gives the same problem however its document was written. Always succeeds.
 */
export const toProblem = (evening: Evening, options: ProblemOptions = {}): { problem: Problem; index: ProblemIndex } => {
  const tickOf = tickReader(evening)
  const facts = gatherFacts(evening)
  const told = toldCues(evening, options.previous)
  const cooks = cooksToProblem(evening, facts, tickOf)
  const steps = plannedSteps(evening)
  const servings = servingsToProblem(evening, facts, tickOf)
  const opens = Math.min(...cooks.flatMap((cook) => cook.presence.map((stay) => stay.from)))
  const asked = options.now === undefined ? undefined : tickOfMs(evening, msOfInstant(options.now), 'up')
  const activities = activitiesToProblem(
    { evening, tickOf, facts, told, now: asked, opens: Number.isFinite(opens) ? opens : 0 },
    steps,
  )
  const horizon = horizonOf(evening, tickOf, activities, cooks, servings, asked)
  const now = asked !== undefined && asked > horizon.from ? asked : undefined
  const previous = toPrevious(evening, activities, told, now)
  const { lags, of } = lagsToProblem(steps)
  const spares = sparesToProblem(evening, steps, tickOf)
  const problem: Problem = {
    horizon,
    activities,
    lags,
    together: togetherToProblem(steps),
    cooks,
    kit: kitToProblem(evening),
    servings,
    deliveries: deliveriesToProblem(evening, new Set(steps.flatMap(({ dish }) => (dish ? [dish.id] : [])))),
    ...(spares.length > 0 ? { spares } : {}),
    ...(now === undefined ? {} : { now }),
    ...(previous.length > 0 ? { previous } : {}),
    weights: weightsOf(evening, now !== undefined),
  }
  return { problem, index: { activities: indexActivities(steps), lags: of } }
}

const indexActivities = (steps: readonly PlannedStep[]): ProblemIndex['activities'] =>
  new Map(
    steps.flatMap((planned) =>
      Array.from({ length: planned.batches }, (_, batch) => [
        activityId(planned.step.id, batch, planned.batches),
        { ...planned, batch },
      ]),
    ),
  )

/** From the first thing that may happen to long after the last course. */
const horizonOf = (
  evening: Evening,
  tickOf: TickOf,
  activities: readonly Activity[],
  cooks: readonly Cook[],
  servings: readonly Serving[],
  now: number | undefined,
): Problem['horizon'] => {
  const starts = activities.flatMap((activity) => [activity.from ?? 0, ...(activity.fact ? [activity.fact.start] : [])])
  const served = servings.flatMap((serving) => (serving.fact ? [serving.fact.toTable] : []))
  const sitDown = tickOf(evening.sitDown, 'up')
  const courses = servings.reduce(
    (sum, { eating, clearing, pouring, wait }) => sum + eating + clearing + Math.max(pouring, wait.most),
    0,
  )
  const ends = [
    ...cooks.flatMap((cook) => cook.presence.map((stay) => stay.to)),
    ...activities.map((activity) => activity.to ?? 0),
    Math.max(sitDown, now ?? sitDown, ...served, ...servings.map((serving) => serving.earliest ?? 0)) + courses + GENEROUS,
  ]
  const from = Math.min(tickOf(evening.guestsFrom, 'up'), ...starts, ...served)
  return { from, to: Math.max(...ends) }
}
