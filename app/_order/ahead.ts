import { dayOf } from '#app/_words/clock.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Step } from '#lib/domain/menu.ts'
import type { Cue, RunningOrder } from '#lib/domain/running-order.ts'
import { epochMsOf } from '#lib/domain/time.ts'

/**
 * Later steps that could as well be done on a day before the evening: the method lets them be done by then, or says that
 * what they make keeps until it is wanted; what comes before them is done; and their cook is in that kitchen that day.
 */
export const couldBeDone = (evening: Evening, order: RunningOrder, day: number): readonly Cue[] => {
  const cues = new Map<string, readonly Cue[]>()
  for (const cue of order.cues) cues.set(cue.step, [...(cues.get(cue.step) ?? []), cue])
  return order.cues.filter((cue) => {
    const step = evening.steps.find((candidate) => candidate.id === cue.step)
    return step !== undefined && cue.batch === 0 && cue.state === 'planned' && isFree(evening, order, cues, step, cue, day)
  })
}

const isFree = (
  evening: Evening,
  order: RunningOrder,
  cues: ReadonlyMap<string, readonly Cue[]>,
  step: Step,
  cue: Cue,
  day: number,
): boolean => {
  if (step.vessel !== undefined || dayOf(evening, cue.start) <= day) return false
  const isSaid = step.earliest !== undefined && step.earliest.day <= day
  if (step.earliest !== undefined && !isSaid) return false
  if (step.role === 'chore' ? !isSaid : step.role !== 'make') return false
  const until = lastHour(evening, cue, day)
  if (until === null) return false
  const isReady = step.after.every(
    (lag) => lag.most === undefined && (cues.get(lag.step)?.every((before) => Date.parse(before.end) <= until) ?? true),
  )
  return isReady && keeps(evening, order, cues, step, until, isSaid)
}

/** When the last cook who may do it leaves the kitchen that day; null when none is there. */
const lastHour = (evening: Evening, cue: Cue, day: number): number | null => {
  const claimed = new Set(cue.cooks.length > 0 ? cue.cooks : cue.touches.map((touch) => touch.cook))
  const ends = evening.cooks
    .filter((cook) => claimed.has(cook.id))
    .flatMap((cook) => cook.presence)
    .filter(({ kitchen, from, to }) => kitchen === cue.kitchen && from.day <= day && to.day >= day)
    .map(({ to }) => epochMsOf(evening, to.day > day ? { day, time: '23:59' } : to))
  return ends.length === 0 ? null : Math.max(...ends)
}

/** Whether what it makes waits long enough for all that needs it; a dish's last step, for the table. */
const keeps = (
  evening: Evening,
  order: RunningOrder,
  cues: ReadonlyMap<string, readonly Cue[]>,
  step: Step,
  until: number,
  isSaid: boolean,
): boolean => {
  const next = evening.steps.flatMap((other) =>
    other.after.filter((lag) => lag.step === step.id).map((lag) => ({ lag, cues: cues.get(other.id) ?? [] })),
  )
  const isKept = next.every(({ lag, cues: theirs }) =>
    theirs.every((cue) =>
      // A method that does not say how long it keeps, says nothing about days.
      lag.most === undefined ? isSaid : Date.parse(cue.start) - until <= secondsOf(lag.most) * 1000,
    ),
  )
  if (!isKept || next.length > 0 || step.dish === null) return isKept
  const dish = evening.dishes.find((candidate) => candidate.id === step.dish)
  const course = order.courses.find((candidate) => candidate.course === dish?.course)
  return dish !== undefined && course !== undefined && Date.parse(course.toTable) - until <= secondsOf(dish.keeps.most) * 1000
}
