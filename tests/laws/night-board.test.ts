import { test } from 'vitest'
import type { Evening } from '#lib/domain/evening.ts'
import { needsNobody } from '#lib/domain/needs-nobody.ts'
import type { Cue, RunningOrder } from '#lib/domain/running-order.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import { actualsOf, closingOf, leftoversOf } from '#lib/night/afterwards.ts'
import { alertsOf } from '#lib/night/alerts.ts'
import { boardOf } from '#lib/night/board-of.ts'
import { catchUpOf } from '#lib/night/catch-up.ts'
import { changesFor } from '#lib/night/changes.ts'
import { jobsOf } from '#lib/night/jobs.ts'
import { platingOf } from '#lib/night/plating.ts'
import { planEvening } from '#lib/order/engine.ts'
import { randomEvening } from '#tests/support/random-evening.ts'
import { randomNight } from '#tests/support/random-night.ts'
import { holdsOnAll, seeds } from './seeds.ts'

const MINUTE = 60_000

interface Said {
  readonly done: boolean
  readonly started: boolean
}
const saidOf = (evening: Evening, step: string): Said => {
  const facts = evening.night.filter((fact) => 'step' in fact && fact.step === step)
  return { done: facts.some((fact) => 'done' in fact), started: facts.some((fact) => 'started' in fact) }
}

const isOver = (evening: Evening, cue: Cue): boolean => {
  const { done, started } = saidOf(evening, cue.step)
  if (done || (started && cue.state === 'done')) return true
  const step = evening.steps.find(({ id }) => id === cue.step)
  const way = step?.ways[cue.way]
  // What rests by itself is over when what comes after it has begun.
  const isRest = way?.care === 'leave' && way.touches.length === 0
  const after = evening.steps.filter((other) => other.after.some((lag) => lag.step === cue.step && lag.from === 'end'))
  return isRest && after.some(({ id }) => saidOf(evening, id).started || saidOf(evening, id).done)
}

const isBegun = (evening: Evening, cue: Cue): boolean =>
  saidOf(evening, cue.step).started && (cue.batch === 0 || cue.state === 'running')

/** How often a cue is to ring for its beginning, its touches and being overdue, worked out from the order alone. */
const alertFault = (evening: Evening, order: RunningOrder): string | null => {
  const alerts = alertsOf(evening, order)
  const ids = new Set(alerts.map(({ id }) => id))
  if (ids.size !== alerts.length) return 'one id twice'
  if (alerts.some(({ at }, index) => at < (alerts[index - 1]?.at ?? at))) return 'out of order'
  for (const cue of order.cues) {
    const own = alerts.filter(({ step, batch, kind }) => step === cue.step && batch === cue.batch && kind !== 'get-up')
    const count = (kind: string) => own.filter((alert) => alert.kind === kind).length
    const name = `${cue.step} ${cue.batch}`
    if (isOver(evening, cue)) {
      if (own.length > 0) return `${name} is over and rings`
      continue
    }
    const begun = isBegun(evening, cue)
    const step = evening.steps.find(({ id }) => id === cue.step)
    const way = step?.ways[cue.way]
    const goesIn = way?.touches.some(({ when }) => when === 'in')
    const touches = cue.touches.filter(({ at }) => !(goesIn && at === cue.start)).length
    if (!begun && step && needsNobody(step) && step.after.some((lag) => !saidOf(evening, lag.step).done)) {
      if (count('begin') + count('overdue') > 0) return `${name} begins by itself and rings`
      continue
    }
    if (count('begin') !== (begun ? 0 : 1)) return `${name} begins ${count('begin')} times`
    const last = Math.max(...order.cues.filter(({ step }) => step === cue.step).map(({ batch }) => batch))
    const isOpen = way?.upTo !== undefined && !way.touches.some(({ when }) => when === 'out')
    const isTold = begun ? cue.batch === last && !isOpen : cue.batch === 0
    if (count('overdue') !== (isTold ? 1 : 0)) return `${name} is overdue ${count('overdue')} times`
    if (count('touch') !== touches) return `${name} is touched ${count('touch')} times, not ${touches}`
    if (way?.care === 'hands-on' && count('look') > 0) return `${name} is looked at`
  }
  return null
}

const boardFault = (evening: Evening, order: RunningOrder, now: number): string | null => {
  const board = boardOf(evening, order, now, { cook: null })
  for (const { cook, free, hands } of board.now) {
    if (!free) continue
    if (hands) return `${cook} is free with hands full`
    for (const cue of order.cues) {
      if (isOver(evening, cue)) continue
      const begun = isBegun(evening, cue)
      // What an order from before it began says of its touches is moved along with its beginning.
      if (begun && cue.state !== 'running') continue
      const moments = [
        ...(cue.cooks.includes(cook) && !begun ? [cue.start] : []),
        ...cue.touches.filter((touch) => touch.cook === cook && !(begun && touch.at === cue.start)).map(({ at }) => at),
      ].map(msOfInstant)
      if (moments.some((at) => at > now + MINUTE && (free.until === null || free.until > at)))
        return `${cook} is free beyond ${cue.step}`
    }
  }
  if (board.course !== null && board.course.inMinutes < 0) return 'a course before now'
  return null
}

test('BO18 on random nights nobody is called for what is done, everything else rings once, and nobody sits too long', () => {
  holdsOnAll(seeds(1, 2), (seed) => {
    const evening = randomEvening(seed)
    const order = planEvening(evening, { budget: { steps: 10, seed }, quick: true })
    for (let night = 0; night < 6; night++) {
      const told = randomNight(evening, order, seed * 10 + night)
      const again =
        night === 0
          ? planEvening(told.evening, { budget: { steps: 10, seed }, quick: true, now: told.now, previous: order })
          : order
      const now = msOfInstant(told.now)
      const fault = alertFault(told.evening, again) ?? boardFault(told.evening, again, now)
      if (fault !== null) return `night ${night}: ${fault}`
      const cook = evening.cooks[0]?.id ?? null
      changesFor(order, again, told.evening, cook)
      catchUpOf(told.evening, again, now, { before: order })
      jobsOf(told.evening, again, now)
      actualsOf(told.evening, again)
      leftoversOf(told.evening, again)
      closingOf(told.evening, again, now)
      for (const { id } of evening.courses) platingOf(told.evening, again, id, now)
    }
    return null
  })
})
