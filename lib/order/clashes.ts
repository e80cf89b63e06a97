import { durationOfTicks } from '#lib/domain/duration.ts'
import type { Clash } from '#lib/domain/running-order.ts'
import { instantOfTick } from '#lib/domain/time.ts'
import type { Activity, Use } from '#lib/scheduling/problem.ts'
import type { Breach, LeftOut } from '#lib/scheduling/schedule.ts'
import { isServable } from '#lib/scheduling/verify/scene.ts'
import { carriedOver } from './carried-over.ts'
import { factClashes } from './fact-clashes.ts'
import { byText } from './ids.ts'
import type { Planned } from './planned.ts'

/** Every step left out, every fact that should not be and every broken wish, in steps, kit and minutes. */
export const clashesOf = (planned: Planned): Clash[] => [
  ...planned.schedule.left.map((left) => leftClash(planned, left)),
  ...factClashes(planned),
  ...planned.verdict.breaches.map((breach) => breachClash(planned, breach)),
]

const unique = (steps: readonly (string | undefined)[]): string[] => [
  ...new Set(steps.filter((step): step is string => step !== undefined)),
]

const between = ({ evening }: Planned, from: number, to: number) => ({
  from: instantOfTick(evening, from),
  to: instantOfTick(evening, Math.max(from, to)),
})

const courseOf = ({ evening }: Planned, dish: string | null): string | null =>
  evening.dishes.find((each) => each.id === dish)?.course ?? null

/** What keeps an activity from being later: the kit, and the step that holds it. */
const blockOf = ({ explained, index }: Planned, activity: string): { kit: string | null; step?: string } => {
  const cause = explained.get(activity)?.because.find((each) => each.kind === 'oven' || each.kind === 'kit')
  if (cause?.kind !== 'oven' && cause?.kind !== 'kit') return { kit: null }
  return { kit: cause.kit, step: index.activities.get(cause.activity)?.step.id }
}

const breachClash = (planned: Planned, breach: Breach): Clash => {
  const { problem, index } = planned
  const stepOf = (activity: string | undefined) => (activity === undefined ? undefined : index.activities.get(activity)?.step.id)
  const common = { ...between(planned, breach.from, breach.to), by: durationOfTicks(breach.by), ways: [] }
  switch (breach.kind) {
    case 'lag': {
      const lag = problem.lags[breach.lag]
      const dish = lag ? (index.activities.get(lag.to)?.dish?.id ?? null) : null
      const block = lag ? blockOf(planned, lag.from) : { kit: null }
      return {
        kind: 'lag',
        steps: unique([stepOf(lag?.from), stepOf(lag?.to), block.step]),
        dish,
        course: courseOf(planned, dish),
        kit: block.kit,
        ...common,
      }
    }
    case 'keeps':
    case 'carry': {
      const steps = breach.kind === 'keeps' ? lastSteps(planned, breach.delivery) : carrySteps(planned, breach.delivery)
      const block = blockOf(planned, steps[0] ?? '')
      return {
        kind: breach.kind,
        steps: unique([...steps.map(stepOf), block.step]),
        dish: breach.delivery,
        course: courseOf(planned, breach.delivery),
        kit: block.kit,
        ...common,
      }
    }
    case 'wait':
    case 'sit-down': {
      const last = problem.deliveries
        .filter(({ serving }) => serving === breach.serving)
        .flatMap(({ id }) => lastSteps(planned, id))
      return { kind: breach.kind, steps: unique(last.map(stepOf)), dish: null, course: breach.serving, kit: null, ...common }
    }
  }
}

/** The activities with which a dish is ready. */
const lastSteps = ({ scene }: Planned, delivery: string): string[] => {
  const of = scene.delivered.find((each) => each.delivery.id === delivery)
  return of ? of.placed.filter(({ end }) => end === of.ready).map(({ activity }) => activity.id) : []
}

const carrySteps = ({ scene }: Planned, delivery: string): string[] =>
  scene.delivered
    .filter((each) => each.delivery.id === delivery)
    .flatMap(({ placed }) => placed.filter(({ activity }) => activity.road))
    .map(({ activity }) => activity.id)
    .sort(byText)

/** The kit that a left-out activity wants: what its kitchen has of that kind, if anything. */
const wantedKit = ({ problem }: Planned, activity: Activity | undefined): string | null => {
  const uses: readonly Use[] = activity?.modes.flatMap((mode) => mode.uses) ?? []
  const unmet = uses.find((use) => !isServable(problem, use, activity?.place ?? '')) ?? uses[0]
  const kit = problem.kit.find(
    (each) =>
      each.place === activity?.place &&
      each.kind === unmet?.kind &&
      (each.kind !== 'store' || unmet.kind !== 'store' || each.of === unmet.of),
  )
  return kit?.id ?? null
}

/** A step for which nothing hard leaves room: from when to when it might have been, and for how long; on the road for too long: by how much. */
const leftClash = (planned: Planned, left: LeftOut): Clash => {
  const { problem, index, activities, scene } = planned
  const activity = activities.get(left.activity)
  const of = index.activities.get(left.activity)
  const dish = of?.dish?.id ?? null
  const moment = scene.served.find(({ serving }) => serving.id === of?.dish?.course)?.moment
  const length = Math.min(...(activity?.modes.map(({ likely }) => likely) ?? []))
  const over = activity && left.because === 'safety' ? carriedOver(planned, activity) : null
  if (over)
    return {
      kind: 'safety',
      steps: unique([of?.step.id]),
      dish,
      course: courseOf(planned, dish),
      kit: null,
      ...between(planned, over.from, over.to),
      by: durationOfTicks(over.by),
      ways: [],
    }
  return {
    kind: left.because,
    steps: unique([of?.step.id]),
    dish,
    course: courseOf(planned, dish),
    kit: left.because === 'no-kit' ? wantedKit(planned, activity) : null,
    ...between(planned, activity?.from ?? problem.horizon.from, activity?.to ?? moment ?? problem.horizon.to),
    by: durationOfTicks(Number.isFinite(length) ? length : 0),
    ways: [],
  }
}
