import { durationOf, secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { type NightFact, nightKey } from '#lib/domain/people.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import { beginsAfter } from './begins-by-itself.ts'
import { alarmOf, COURSE_FIELD, cookOf, courseOf, dishOf, nightOf, outOf, sitDownOf, stepOf } from './night-facts.ts'
import type { Said } from './say.ts'
import { nothing, refused, type TellDecision, type Write, wrote } from './tell-decision.ts'

interface Before {
  readonly told: string
  readonly was?: string | undefined
}

/**
 * Takes back what was told, as far as nobody has told anything else about it since: `before` is what was written for it then.
 */
export const takeBack = (
  evening: Evening,
  said: Said,
  before: Before,
  { told, by }: { readonly told: string; readonly by: string },
): TellDecision => {
  const { was } = before
  switch (said.kind) {
    case 'begin': {
      const fact = nightOf(evening)
      if (!fact || fact.closed !== undefined) return nothing
      if (was !== undefined) return wrote(told, { ...fact, closed: was })
      return fact.begun === before.told ? wrote(told, null, { key: 'night' }) : nothing
    }
    case 'close':
      return without(told, nightOf(evening), 'closed', before.told)
    case 'started':
      return without(told, stepOf(evening, said.step), 'started', before.told)
    case 'done': {
      const decision = without(told, stepOf(evening, said.step), 'done', before.told)
      const also = beginsAfter(evening, said.step, before.told).flatMap(({ step, started }) => {
        const fact = stepOf(evening, step)
        const taken = fact?.done === undefined ? without(told, fact, 'started', started) : nothing
        return taken.kind === 'write' ? taken.writes : []
      })
      return decision.kind === 'write' ? { ...decision, writes: [...decision.writes, ...also] } : decision
    }
    case 'longer':
      return backFromLonger(evening, said, was, told)
    case 'reading': {
      const fact = stepOf(evening, said.step)
      const readings = fact?.readings?.filter(({ at, coreC }) => at !== before.told || coreC !== said.coreC)
      if (!fact || !readings || readings.length === fact.readings?.length) return nothing
      const { readings: _readings, ...rest } = fact
      return kept(told, readings.length === 0 ? rest : { ...rest, readings })
    }
    case 'to-table':
    case 'nearly':
    case 'plates-off':
      return without(told, courseOf(evening, said.course), COURSE_FIELD[said.kind], before.told)
    case 'sit-down': {
      const fact = sitDownOf(evening)
      const isSo = said.to === null ? !fact : fact && msOfInstant(fact.sitDown) === msOfInstant(said.to)
      if (!isSo) return nothing
      if (was !== undefined) return wrote(told, { sitDown: was, by })
      return wrote(told, null, { key: 'sit-down' })
    }
    case 'gone': {
      const fact = cookOf(evening, said.cook)
      if (fact?.gone !== before.told || fact.back !== undefined) return nothing
      return wrote(told, null, { key: nightKey(fact) })
    }
    case 'back':
      return without(told, cookOf(evening, said.cook), 'back', before.told)
    case 'out':
      return backFromOut(evening, said.dish, before, told)
    case 'alarm':
      return refused('stays')
    case 'confirm': {
      const fact = alarmOf(evening, said.alarm)
      const confirmed = fact?.confirmed?.filter(({ cook, at }) => cook !== said.cook || at !== before.told)
      if (!fact || !confirmed || confirmed.length === fact.confirmed?.length) return nothing
      const { confirmed: _confirmed, ...rest } = fact
      return wrote(told, confirmed.length === 0 ? rest : { ...rest, confirmed })
    }
  }
}

/** The fact without one of its words, when that is the one that was told then. */
const without = <F extends NightFact>(told: string, fact: F | undefined, field: keyof F, value: string): TellDecision => {
  if (!fact || fact[field] !== value) return nothing
  const { [field]: _taken, ...rest } = fact
  return kept(told, rest as unknown as NightFact)
}

const SUBJECT: ReadonlySet<string> = new Set(['step', 'course', 'by'])

/** A fact that says nothing any more of its step or course is none. */
const kept = (told: string, fact: NightFact): TellDecision =>
  Object.keys(fact).every((name) => SUBJECT.has(name)) ? wrote(told, null, { key: nightKey(fact) }) : wrote(told, fact)

/** Extras add up, so that of them exactly what was added is taken away again; `was`: what had been there before. */
const backFromLonger = (
  evening: Evening,
  { step, minutes }: Extract<Said, { readonly kind: 'longer' }>,
  was: string | undefined,
  told: string,
): TellDecision => {
  const fact = stepOf(evening, step)
  if (!fact) return nothing
  const before = was === undefined ? 0 : secondsOf(was)
  const added = Math.max(0, before + minutes * 60) - before
  const now = fact.extra === undefined ? 0 : secondsOf(fact.extra)
  const after = Math.max(0, now - added)
  if (after === now) return nothing
  const { extra: _extra, ...rest } = fact
  return kept(told, after === 0 ? rest : { ...rest, extra: durationOf(after) })
}

/** The dish is on again, and its stand-in what it was, as far as nobody has changed either since. */
const backFromOut = (evening: Evening, dish: string, before: Before, told: string): TellDecision => {
  const fact = outOf(evening, dish)
  if (fact?.out !== before.told) return nothing
  const isDropped = dishOf(evening, dish)?.state === 'dropped'
  const other = fact.instead === undefined ? undefined : dishOf(evening, fact.instead)
  const state = before.was === 'spare' || before.was === 'dropped' ? before.was : null
  const dishes: Write[] = [
    ...(isDropped ? [{ root: 'dish', dish, state: 'on' } as const] : []),
    ...(other?.state === 'on' && state ? [{ root: 'dish', dish: other.id, state } as const] : []),
  ]
  return wrote(told, null, { key: nightKey(fact), also: dishes })
}
