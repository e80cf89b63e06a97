import type { Evening } from '#lib/domain/evening.ts'
import type { Cue, RunningOrder } from '#lib/domain/running-order.ts'
import { instantOfTick, msOfInstant, tickOfMs } from '#lib/domain/time.ts'
import type { Activity, Previous } from '#lib/scheduling/problem.ts'
import { activityId } from './ids.ts'

/** 3 min at 30 s: what a cook was told to do so soon moves only when forced. */
export const FROZEN_TICKS = 6

/** What the cooks were last told, by activity. Empty when the order is of another evening, or of another date of it. */
export const toldCues = (evening: Evening, previous: RunningOrder | undefined): ReadonlyMap<string, Cue> => {
  if (previous?.evening !== evening.id || msOfInstant(previous.origin) !== msOfInstant(instantOfTick(evening, 0)))
    return new Map()
  const batches = new Map<string, number>()
  for (const cue of previous.cues) batches.set(cue.step, Math.max(batches.get(cue.step) ?? 0, cue.batch + 1))
  return new Map(previous.cues.map((cue) => [activityId(cue.step, cue.batch, batches.get(cue.step) ?? 1), cue]))
}

/** What is still there to be kept, each in a way that it still has. Of what happened it tells the way. */
export const toPrevious = (
  evening: Evening,
  activities: readonly Activity[],
  told: ReadonlyMap<string, Cue>,
  now: number | undefined,
): Previous[] =>
  activities.flatMap((activity) => {
    const cue = told.get(activity.id)
    if (!cue || cue.way >= activity.modes.length) return []
    const start = tickOfMs(evening, msOfInstant(cue.start), 'down')
    const frozen = !activity.fact && now !== undefined && start >= now && start < now + FROZEN_TICKS
    return [{ activity: activity.id, start, mode: cue.way, cooks: cue.cooks, frozen }]
  })
