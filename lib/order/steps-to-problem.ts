import { ticksDown, ticksUp } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Dish, Step, Way } from '#lib/domain/menu.ts'
import { nearestClaims } from '#lib/domain/nearest-claim.ts'
import type { Claim } from '#lib/domain/people.ts'
import { portionsAt } from '#lib/domain/portions.ts'
import type { Cue } from '#lib/domain/running-order.ts'
import { msOfInstant, tickOfMs } from '#lib/domain/time.ts'
import type { Activity, CookId, Mode, Problem } from '#lib/scheduling/problem.ts'
import type { TickOf } from './clock.ts'
import { factsOfBatches, isAway, type NightFacts } from './facts.ts'
import { activityId, byText } from './ids.ts'
import { useToProblem } from './kit-to-problem.ts'

/** A step that is to be done tonight, and how many times. */
export interface PlannedStep {
  readonly step: Step
  readonly dish: Dish | null
  readonly batches: number
}

/** More pans of one thing than this are not a kitchen, but a slip of the pen that would drown the engine. */
const MOST_BATCHES = 100

const batchesOf = (evening: Evening, step: Step, dish: Dish | null): number => {
  if (!step.batch) return 1
  const portions = dish ? portionsAt(evening, dish, step.id) : evening.covers
  // 0.9 / 0.3 is a little more than 3 in binary: three pans are enough.
  return Math.min(MOST_BATCHES, Math.max(1, Math.ceil(portions / step.batch.portions - 1e-9)))
}

/** The steps of dishes that are on, and the chores, by id. */
export const plannedSteps = (evening: Evening): PlannedStep[] => {
  const dishes = new Map(evening.dishes.map((dish) => [dish.id, dish]))
  return evening.steps
    .flatMap((step) => {
      const dish = step.dish === null ? null : dishes.get(step.dish)
      if (dish === undefined || (dish !== null && dish.state !== 'on')) return []
      return [{ step, dish, batches: batchesOf(evening, step, dish) }]
    })
    .sort((a, b) => byText(a.step.id, b.step.id))
}

const ATTENDING: Readonly<Record<Way['care'], (cooks: number) => number>> = {
  'hands-on': (cooks) => cooks,
  eye: () => 1,
  leave: () => 0,
}

/** On the road the plan reckons with the most: what follows waits for nobody who is still under way. */
const onTheRoad = (mode: Mode): Mode => (mode.likely === mode.most ? mode : { ...mode, likely: mode.most, usual: mode.likely })

const modeOf = (way: Way, extra: number): Mode => {
  const [least, likely, most] = [way.takes.least, way.takes.likely, way.takes.most].map((takes) => ticksUp(takes) + extra) as [
    number,
    number,
    number,
  ]
  return {
    care: way.care,
    cooks: ATTENDING[way.care](way.cooks),
    least,
    likely,
    most,
    ...(way.upTo === undefined || way.care !== 'leave' ? {} : { upTo: Math.max(ticksDown(way.upTo), most) }),
    touches: way.touches.map((touch) => ({
      when: typeof touch.when === 'object' ? { every: Math.max(1, ticksDown(touch.when.every)) } : touch.when,
      takes: ticksUp(touch.takes),
      lateBy: ticksDown(touch.lateBy),
    })),
    uses: way.uses.map(useToProblem),
  }
}

const placeOf = (evening: Evening, { step, dish }: PlannedStep): string =>
  dish && (step.role === 'make' || step.role === 'carry') ? dish.kitchen : evening.host

interface Context {
  readonly evening: Evening
  readonly tickOf: TickOf
  readonly facts: NightFacts
  readonly told: ReadonlyMap<string, Cue>
  readonly now?: number
  /** Where an activity without an `earliest` may begin. */
  readonly opens: number
}

/** What the night says of each batch of a step: in the way, and by the cooks, that were told, claimed it or said so. */
const happenedOf = (
  { evening, facts, told, now }: Context,
  planned: PlannedStep,
  modes: readonly Mode[],
  claimed: readonly CookId[],
) => {
  const { step, batches } = planned
  const said = facts.steps.get(step.id)
  if (!said) return []
  const cue = told.get(activityId(step.id, 0, batches))
  const mode = modes[cue?.way ?? 0] ?? modes[0]
  if (!mode) return []
  const there = (ids: readonly CookId[]) => (said.done === undefined ? ids.filter((id) => !isAway(facts, id)) : ids)
  // What a cook who has gone was at stays theirs until somebody takes it: it is told as a clash.
  const known = [there(cue?.cooks ?? []), claimed, cue?.cooks ?? [], [said.by]].find((cooks) => cooks.length > 0) ?? []
  const cooks = known.slice(0, mode.cooks)
  const paces = cooks.map((id) => evening.cooks.find((cook) => cook.id === id)?.pace ?? 1)
  const pace = mode.care === 'hands-on' && paces.length > 0 ? Math.max(...paces) : 1
  const together = Math.min(batches, step.batch?.together ?? 1)
  const starts = Array.from({ length: batches }, (_, batch) => {
    const start = told.get(activityId(step.id, batch, batches))?.start
    return start === undefined ? undefined : tickOfMs(evening, msOfInstant(start), 'down')
  })
  return factsOfBatches(evening, said, {
    batches,
    together,
    length: Math.ceil(mode.likely * pace - 1e-9),
    cooks,
    now,
    told: starts,
  })
}

const activitiesOf = (
  context: Context & { readonly heldBy: ReturnType<typeof nearestClaims> },
  planned: PlannedStep,
): Activity[] => {
  const { evening, tickOf, facts, opens, heldBy } = context
  const { step, dish, batches } = planned
  const said = facts.steps.get(step.id)
  const place = placeOf(evening, planned)
  const isRoad = step.role === 'carry' && place !== evening.host
  const modes = step.ways.map((way) => {
    const mode = modeOf(way, said && said.started === undefined && said.done === undefined ? said.extra : 0)
    return isRoad ? onTheRoad(mode) : mode
  })
  const claim = heldBy(step)
  const claimed = claim ? [...new Set([claim.cook, ...(claim.also ?? [])])] : []
  const happened = happenedOf(context, planned, modes, claimed)
  return Array.from({ length: batches }, (_, batch) => {
    const fact = happened[batch]
    return {
      id: activityId(step.id, batch, batches),
      place,
      at: step.where,
      ...(isRoad ? { road: { to: evening.host } } : {}),
      from: step.earliest ? tickOf(step.earliest, 'up') : opens,
      ...(step.latest ? { to: tickOf(step.latest, 'down') } : {}),
      ...(dish ? { delivery: dish.id } : {}),
      plating: step.role === 'plate',
      ...(step.vessel === undefined ? {} : { vessel: step.vessel }),
      claimed,
      modes,
      ...(fact ? { fact } : {}),
    }
  })
}

/** The claims of those who are there: whoever has gone holds nothing until they are back. */
const claimsThere = ({ evening, facts }: Context): Claim[] =>
  evening.claims.flatMap((claim) => {
    const [cook, ...also] = [claim.cook, ...(claim.also ?? [])].filter((id) => !isAway(facts, id))
    return cook === undefined ? [] : [{ target: claim.target, cook, also }]
  })

/** Every step with its batches as activities, by step and batch. */
export const activitiesToProblem = (context: Context, steps: readonly PlannedStep[]): Activity[] => {
  const heldBy = nearestClaims({ ...context.evening, claims: claimsThere(context) })
  return steps.flatMap((planned) => activitiesOf({ ...context, heldBy }, planned))
}

/** Batches that may not all run at once. */
export const togetherToProblem = (steps: readonly PlannedStep[]): Problem['together'][number][] =>
  steps.flatMap(({ step, batches }) =>
    step.batch && batches > step.batch.together
      ? [
          {
            activities: Array.from({ length: batches }, (_, batch) => activityId(step.id, batch, batches)),
            most: step.batch.together,
          },
        ]
      : [],
  )
