import type { Evening } from '#lib/domain/evening.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import type { Alarm, GuardLine, NextCourse, PlateNear } from './board.ts'
import { cooksHere, type Moment, type Presence } from './moment.ts'
import { MINUTE, stepTold, toldOf } from './told.ts'

/** Within this of the table a course is plated, or soon will be; common practice, no source. */
const PLATE_NEAR = 15 * MINUTE

/** Every allergen accident that was told, with who of those who are there has not confirmed it. */
export const alarmsOf = (moment: Presence): readonly Alarm[] => {
  const here = cooksHere(moment)
  return moment.told.alarms.map(({ alarm, dish, need, at, confirmed = [] }) => {
    const by = confirmed.map(({ cook }) => cook)
    return { alarm, dish, need, at: msOfInstant(at), confirmed: by, missing: here.filter((cook) => !by.includes(cook)) }
  })
}

/** Those that somebody who is there has not confirmed: nothing of a running order is needed to say so. */
export const openAlarms = (evening: Evening, nowMs: number): readonly Alarm[] =>
  alarmsOf({ evening, told: toldOf(evening), at: nowMs }).filter(({ missing }) => missing.length > 0)

/** The steps that keep plates of a course apart, in the method's order of time. */
export const guardsOf = ({ evening, order, told }: Moment, course: string): readonly GuardLine[] =>
  evening.dishes
    .filter((dish) => dish.course === course && dish.state === 'on')
    .flatMap((dish) =>
      evening.steps.flatMap((step): (GuardLine & { readonly at: number })[] => {
        if (step.dish !== dish.id || !step.guard) return []
        const cue = order.cues.find((each) => each.step === step.id)
        return [
          {
            dish: dish.id,
            need: step.guard.for,
            step: step.id,
            does: step.guard.does,
            isDone: stepTold(told, step.id).done !== null,
            cooks: cue?.cooks ?? [],
            at: cue ? msOfInstant(cue.start) : Number.POSITIVE_INFINITY,
          },
        ]
      }),
    )
    .sort((a, b) => a.at - b.at)
    .map(({ at: _at, ...line }) => line)

/** The allergy lines of a course that is near; null when none is. */
export const plateNear = (moment: Moment, next: NextCourse | null): PlateNear | null => {
  if (next === null || next.toTable - moment.at > PLATE_NEAR) return null
  const dishes = moment.evening.dishes.filter(({ course }) => course === next.course).map(({ id }) => id)
  return {
    course: next.course,
    at: next.toTable,
    guards: guardsOf(moment, next.course),
    alarms: alarmsOf(moment).filter(({ dish }) => dishes.includes(dish)),
  }
}
