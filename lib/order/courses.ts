import { durationOf, ticksUp } from '#lib/domain/duration.ts'
import type { RunningOrder, Suffers } from '#lib/domain/running-order.ts'
import { epochMsOfTick, instantOfMs, instantOfTick, msOfInstant } from '#lib/domain/time.ts'
import type { Hurt } from '#lib/scheduling/wait-free.ts'
import type { Planned } from './planned.ts'

/**
 * The served courses in order. The wait of the first course runs from sit-down, that of a welcome from when the guests
 * come, any other from the plates before it; never below zero. What happened keeps its seconds, and has no chance any more.
 */
export const coursesOf = (planned: Planned): RunningOrder['courses'] => {
  const { evening, facts, scene, chances, waitFree, index } = planned
  let since = 0
  return scene.served.map(({ serving, moment, platesOff }) => {
    const said = facts.courses.get(serving.id)
    const exact = (instant: string | undefined, tick: number) =>
      instant === undefined ? epochMsOfTick(evening, tick) : msOfInstant(instant)
    const toTable = exact(said?.toTable, moment)
    const off = Math.max(toTable, exact(said?.platesOff, eatenBeside(evening, serving.id, moment) ?? platesOff))
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
      ...beyondOf(planned, serving.id, moment),
    }
  })
}

/** Before everybody sits, courses do not wait for each other: when its plates are off all the same. */
const eatenBeside = ({ courses }: Planned['evening'], id: string, moment: number): number | undefined => {
  const course = courses.find((each) => each.id === id)
  return course?.welcome ? moment + ticksUp(course.eating.likely) + ticksUp(course.clearing) : undefined
}

const beyondOf = (planned: Planned, serving: string, moment: number): Pick<RunningOrder['courses'][number], 'waitBeyond'> => {
  const beyond = planned.waitBeyond.find((one) => one.serving === serving)?.beyond
  if (!beyond) return {}
  const { hurts, by } = beyond
  const named = new Map(hurts.flatMap((hurt) => sufferOf(planned, hurt)).map((one) => [Object.values(one).join(' '), one]))
  const suffers = [...named.values()]
  return { waitBeyond: { suffers, until: by === null ? null : instantOfTick(planned.evening, moment + by) } }
}

/** A lag that grows too long hurts the dish that waits in it, one that grows too short the step that has no time. */
const sufferOf = ({ problem, index }: Planned, hurt: Hurt): Suffers[] => {
  switch (hurt.kind) {
    case 'keeps':
    case 'carry':
      return [{ kind: 'dish', dish: hurt.delivery }]
    case 'presence':
      return [{ kind: 'cook', cook: hurt.cook }]
    case 'window':
      return stepOf(index, hurt.activity)
    case 'lag': {
      const lag = problem.lags[hurt.lag]
      const before = lag && index.activities.get(lag.from)
      if (before?.dish && lag?.bound === 'quality') return [{ kind: 'dish', dish: before.dish.id }]
      return lag ? stepOf(index, lag.to) : []
    }
  }
}

const stepOf = (index: Planned['index'], activity: string): Suffers[] => {
  const step = index.activities.get(activity)?.step.id
  return step === undefined ? [] : [{ kind: 'step', step }]
}

/** Finished dishes that wait for the table, with what they hold meanwhile. */
export const keepingOf = ({ evening, schedule }: Planned): RunningOrder['keeping'] =>
  schedule.keeping.map(({ delivery, from, to, kit }) => ({
    dish: delivery,
    from: instantOfTick(evening, from),
    to: instantOfTick(evening, to),
    kit: kit.map(({ id, unit }) => ({ id, unit })),
  }))
