import { durationOf } from '#lib/domain/duration.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { epochMsOfTick, instantOfMs, instantOfTick, msOfInstant } from '#lib/domain/time.ts'
import type { Planned } from './planned.ts'

/**
 * The served courses in order. The wait of the first course runs from sit-down, that of a welcome from when the guests
 * come, any other from the plates before it; never below zero. What happened keeps its seconds, and has no chance any more.
 */
export const coursesOf = ({ evening, facts, scene, chances, waitFree, index }: Planned): RunningOrder['courses'] => {
  let since = 0
  return scene.served.map(({ serving, moment, platesOff }) => {
    const said = facts.courses.get(serving.id)
    const exact = (instant: string | undefined, tick: number) =>
      instant === undefined ? epochMsOfTick(evening, tick) : msOfInstant(instant)
    const toTable = exact(said?.toTable, moment)
    const off = Math.max(toTable, exact(said?.platesOff, platesOff))
    if (serving.role.kind === 'first') since = epochMsOfTick(evening, serving.role.sitDown)
    if (serving.role.kind === 'welcome') since = epochMsOfTick(evening, serving.earliest ?? moment)
    const wait = Math.max(0, Math.floor((toTable - since) / 1000))
    since = off
    const chance = serving.fact ? undefined : chances.servings.find((one) => one.serving === serving.id)
    const later = waitFree.find((one) => one.serving === serving.id)?.by ?? null
    return {
      course: serving.id,
      toTable: instantOfMs(evening, toTable),
      platesOff: instantOfMs(evening, off),
      wait: durationOf(wait),
      onTime: chance?.onTime ?? null,
      decidedBy: index.activities.get(chance?.decidedBy ?? '')?.step.id ?? null,
      waitFreeUntil: later === null ? null : instantOfTick(evening, moment + later),
    }
  })
}

/** Finished dishes that wait for the table, with what they hold meanwhile. */
export const keepingOf = ({ evening, schedule }: Planned): RunningOrder['keeping'] =>
  schedule.keeping.map(({ delivery, from, to, kit }) => ({
    dish: delivery,
    from: instantOfTick(evening, from),
    to: instantOfTick(evening, to),
    kit: kit.map(({ id, unit }) => ({ id, unit })),
  }))
