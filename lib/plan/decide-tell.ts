import { durationOf, secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { instantOfMs, msOfInstant } from '#lib/domain/time.ts'
import { beginsAfter } from './begins-by-itself.ts'
import type { Asker } from './decide-claim.ts'
import { isInTime, isNearEvening, isNight, speakerOf } from './may-tell.ts'
import { alarmOf, COURSE_FIELD, cookOf, courseOf, dishOf, nightOf, sitDownOf, stepOf } from './night-facts.ts'
import type { Said, Say } from './say.ts'
import { takeBack } from './take-back.ts'
import { factWrite, nothing, refused, type TellDecision, wrote } from './tell-decision.ts'

/** What is told, and the cook who tells it where whoever sits there is none. */
export interface Tell {
  readonly say: Say
  readonly as?: string | undefined
}

/** What was written for something told before by the same member; null when that is not known. */
export type Earlier = (op: string) => { readonly told: string; readonly was?: string | undefined } | null

const NOTHING_EARLIER: Earlier = () => null

/** No step needs more than that on top. */
const MOST_EXTRA_SECONDS = 12 * 3600
const MOST_READINGS = 12
/** The same temperature so soon again is the same reading. */
const SAME_READING_MS = 30_000

/**
 * What a word of the night comes to, seen from the plan as it stands; `atMs`: when it was told, in ms since 1970 by the server's clock.
 * The first word about a thing counts and the same again is nothing; extras add up, sitting down is as told last.
 */
export const decideTell = (
  evening: Evening,
  asker: Asker,
  { say, as }: Tell,
  atMs: number,
  earlier: Earlier = NOTHING_EARLIER,
): TellDecision => {
  const by = speakerOf(evening, asker, as)
  if (by.kind === 'refused') return by
  const told = instantOfMs(evening, atMs)
  if (say.kind !== 'take-back') return decideSaid(evening, say, by.cook, atMs)
  if (say.said.kind === 'alarm') return refused('stays')
  const before = earlier(say.of)
  if (!before) return refused('stays')
  return isInTime(say.said, before.told, atMs) ? takeBack(evening, say.said, before, { told, by: by.cook }) : refused('too-late')
}

const decideSaid = (evening: Evening, say: Said, by: string, atMs: number): TellDecision => {
  const ms = atMs - ('ago' in say ? (say.ago ?? 0) * 60_000 : 0)
  if (say.kind !== 'close' && say.kind !== 'confirm' && !isNearEvening(evening, ms)) return refused('not-tonight')
  const told = instantOfMs(evening, ms)
  switch (say.kind) {
    case 'begin': {
      if (!isNight(evening, ms)) return refused('not-tonight')
      const fact = nightOf(evening)
      if (!fact) return wrote(told, { night: 'begun', begun: told, by })
      return fact.closed === undefined ? nothing : wrote(told, { night: 'begun', begun: fact.begun, by }, { was: fact.closed })
    }
    case 'close': {
      const fact = nightOf(evening)
      return fact && fact.closed === undefined ? wrote(told, { ...fact, closed: told, by }) : nothing
    }
    case 'started':
    case 'done':
    case 'longer':
    case 'reading':
      return evening.steps.some(({ id }) => id === say.step) ? decideStep(evening, say, told, by) : refused('unknown-target')
    case 'to-table':
    case 'nearly':
    case 'plates-off': {
      if (!evening.courses.some(({ id }) => id === say.course)) return refused('unknown-target')
      const fact = courseOf(evening, say.course) ?? { course: say.course, by }
      const field = COURSE_FIELD[say.kind]
      return fact[field] === undefined ? wrote(told, { ...fact, [field]: told, by }) : nothing
    }
    case 'sit-down':
      return decideSitDown(evening, say.to, told, by)
    case 'gone':
    case 'back':
      return evening.cooks.some(({ id }) => id === say.cook) ? decidePresence(evening, say, told, by) : refused('unknown-cook')
    case 'out':
      return decideOut(evening, say, told, by)
    case 'alarm': {
      if (!evening.dishes.some(({ id }) => id === say.dish)) return refused('unknown-target')
      if (alarmOf(evening, say.alarm)) return nothing
      return wrote(told, { alarm: say.alarm, dish: say.dish, need: say.need, at: told, by })
    }
    case 'confirm': {
      const fact = alarmOf(evening, say.alarm)
      if (!fact) return refused('unknown-target')
      if (!evening.cooks.some(({ id }) => id === say.cook)) return refused('unknown-cook')
      const confirmed = fact.confirmed ?? []
      if (confirmed.some(({ cook }) => cook === say.cook)) return nothing
      return wrote(told, { ...fact, confirmed: [...confirmed, { cook: say.cook, at: told }] })
    }
  }
}

type About<K extends Said['kind']> = Extract<Said, { readonly kind: K }>

/** Done without a start is fine; a start after the end is none. What only has to stand from then on has begun with it. */
const decideStep = (
  evening: Evening,
  say: About<'started' | 'done' | 'longer' | 'reading'>,
  told: string,
  by: string,
): TellDecision => {
  const fact = stepOf(evening, say.step) ?? { step: say.step, by }
  switch (say.kind) {
    case 'started':
      if (fact.started !== undefined || (fact.done !== undefined && isLater(told, fact.done))) return nothing
      return wrote(told, { ...fact, started: told, by })
    case 'done': {
      if (fact.done !== undefined) return nothing
      const { started, ...rest } = fact
      const kept = started === undefined || isLater(started, told) ? {} : { started }
      const also = beginsAfter(evening, say.step, told).flatMap(({ step, started: begun }) => {
        const next = stepOf(evening, step) ?? { step, by }
        return next.started === undefined && next.done === undefined ? [factWrite({ ...next, started: begun, by })] : []
      })
      return wrote(told, { ...rest, ...kept, done: told, by }, { also })
    }
    case 'longer': {
      const { extra, ...rest } = fact
      const before = extra === undefined ? 0 : secondsOf(extra)
      const after = Math.max(0, before + say.minutes * 60)
      if (after > MOST_EXTRA_SECONDS) return refused('too-long')
      if (after === before) return nothing
      const more = extra === undefined ? {} : { was: extra }
      return wrote(told, { ...rest, ...(after === 0 ? {} : { extra: durationOf(after) }), by }, more)
    }
    case 'reading': {
      const readings = fact.readings ?? []
      if (readings.some(({ at, coreC }) => coreC === say.coreC && isNear(at, told))) return nothing
      const all = [...readings, { at: told, coreC: say.coreC }]
      all.sort((a, b) => msOfInstant(a.at) - msOfInstant(b.at) || a.coreC - b.coreC)
      return wrote(told, { ...fact, readings: all.slice(-MOST_READINGS), by })
    }
  }
}

const decideSitDown = (evening: Evening, to: string | null, told: string, by: string): TellDecision => {
  const before = sitDownOf(evening)
  const more = before ? { was: before.sitDown } : {}
  if (to === null) return before ? wrote(told, null, { ...more, key: 'sit-down' }) : nothing
  if (!isNight(evening, msOfInstant(to))) return refused('not-tonight')
  const sitDown = instantOfMs(evening, msOfInstant(to))
  return before?.sitDown === sitDown ? nothing : wrote(told, { sitDown, by }, more)
}

/** Whoever is back is not made to be gone by a word from before that. */
const decidePresence = (evening: Evening, { kind, cook }: About<'gone' | 'back'>, told: string, by: string): TellDecision => {
  const fact = cookOf(evening, cook)
  const isGone = fact !== undefined && fact.back === undefined
  if (kind === 'back') {
    if (!isGone) return nothing
    const back = isLater(fact.gone, told) ? fact.gone : told
    return wrote(back, { ...fact, back, by })
  }
  if (isGone || (fact?.back !== undefined && !isLater(told, fact.back))) return nothing
  return wrote(told, { cook, gone: told, by })
}

/** A dish that is on goes, and what stands in for it comes on. */
const decideOut = (evening: Evening, { dish, why, instead }: About<'out'>, told: string, by: string): TellDecision => {
  const found = dishOf(evening, dish)
  const other = instead === undefined || instead === dish ? undefined : dishOf(evening, instead)
  if (!found || (instead !== undefined && !other)) return refused('unknown-target')
  if (found.state !== 'on') return nothing
  const comesOn = other && other.state !== 'on'
  const fact = { dish, out: told, why, ...(other ? { instead: other.id } : {}), by }
  return wrote(told, fact, {
    ...(comesOn ? { was: other.state } : {}),
    also: [
      { root: 'dish', dish, state: 'dropped' },
      ...(comesOn ? [{ root: 'dish', dish: other.id, state: 'on' } as const] : []),
    ],
  })
}

const isNear = (a: string, b: string): boolean => Math.abs(msOfInstant(a) - msOfInstant(b)) <= SAME_READING_MS

const isLater = (a: string, b: string): boolean => msOfInstant(a) > msOfInstant(b)
