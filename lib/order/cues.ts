import { durationOfTicks } from '#lib/domain/duration.ts'
import type { Cue, Reason } from '#lib/domain/running-order.ts'
import { instantOfMs, instantOfTick, msOfInstant } from '#lib/domain/time.ts'
import type { Activity } from '#lib/scheduling/problem.ts'
import type { Cause, Placement } from '#lib/scheduling/schedule.ts'
import type { StepFact } from './facts.ts'
import type { Planned } from './planned.ts'
import { FROZEN_TICKS } from './told.ts'

/** Every placed activity as a cue, in order of start. What happened keeps its seconds. */
export const cuesOf = (planned: Planned): Cue[] => planned.schedule.placements.flatMap((placement) => cueOf(planned, placement))

const cueOf = (planned: Planned, placement: Placement): Cue[] => {
  const { evening, facts, explained } = planned
  const of = planned.index.activities.get(placement.activity)
  const activity = planned.activities.get(placement.activity)
  if (!of || !activity) return []
  const why = explained.get(placement.activity)
  return [
    {
      step: of.step.id,
      batch: of.batch,
      way: placement.mode,
      ...edges(planned, placement, of.batches === 1 ? facts.steps.get(of.step.id) : undefined),
      cooks: [...placement.cooks],
      kit: placement.kit.map(({ id, unit }) => ({ id, unit })),
      kitchen: activity.place,
      touches: placement.touches.map(({ at, cook }) => ({ at: instantOfTick(evening, at), cook })),
      state: stateOf(planned, activity, placement),
      slack: durationOfTicks(why?.slack ?? 0),
      because: [
        ...new Map(
          why?.because.flatMap((cause) => reasonOf(planned, cause)).map((each) => [JSON.stringify(each), each]),
        ).values(),
      ],
    },
  ]
}

const stateOf = ({ problem }: Planned, { fact }: Activity, { start }: Placement): Cue['state'] => {
  if (fact) return fact.kind
  return problem.now !== undefined && start < problem.now + FROZEN_TICKS ? 'frozen' : 'planned'
}

const edges = ({ evening }: Planned, { start, end }: Placement, said: StepFact | undefined): Pick<Cue, 'start' | 'end'> => {
  const exact = (instant: string) => instantOfMs(evening, msOfInstant(instant))
  const ended = said?.done === undefined ? instantOfTick(evening, end) : exact(said.done)
  const begun = said?.started === undefined ? instantOfTick(evening, start) : exact(said.started)
  return { start: msOfInstant(begun) <= msOfInstant(ended) ? begun : ended, end: ended }
}

const reasonOf = ({ index }: Planned, cause: Cause): Reason[] => {
  const stepOf = (activity: string) => index.activities.get(activity)?.step.id
  switch (cause.kind) {
    case 'after': {
      const step = stepOf(cause.activity)
      return step === undefined ? [] : [{ kind: 'after', step }]
    }
    case 'kit':
    case 'oven': {
      const step = stepOf(cause.activity)
      return step === undefined ? [] : [{ kind: cause.kind, kit: cause.kit, step }]
    }
    case 'cook': {
      const step = stepOf(cause.activity)
      return step === undefined ? [] : [{ kind: 'cook', cook: cause.cook, step }]
    }
    case 'serving':
      return [{ kind: 'course', course: cause.serving }]
    case 'window':
    case 'now':
      return [{ kind: cause.kind }]
    case 'presence':
      return [{ kind: 'presence', cook: cause.cook }]
  }
}
