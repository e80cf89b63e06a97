import type * as Y from 'yjs'
import * as z from 'zod/mini'
import { durationOf, secondsOf } from '#lib/domain/duration.ts'
import { After, Dish, Way } from '#lib/domain/menu.ts'
import { fail } from '#lib/domain/result.ts'
import type { Remedy } from '#lib/domain/running-order.ts'
import type { Wish } from '#lib/plan/decide-claim.ts'
import { readPlan } from '#lib/plan/read.ts'
import { bringDishCold, type ColdWords } from './bring-dish-cold.ts'
import { refusedFor } from './fault.ts'
import { setWay } from './method.ts'
import { serveCourse } from './serve-course.ts'
import { type Edited, setEach, setFields } from './set.ts'
import { presentEntry } from './siblings.ts'

type Unpriced<T> = T extends unknown ? Omit<T, 'missed' | 'said'> : never
type Change = Unpriced<Remedy>
/** A way out that changes what is written in the plan. */
export type WrittenWay = Exclude<Change, { kind: 'give-to' }>
/** A way out that is a claim, which the server decides. */
export type ClaimedWay = Extract<Change, { kind: 'give-to' }>

const NO_WORDS: ColdWords = { chill: '', fridge: '', heat: '' }

/**
 * Takes a way out: one edit, with the meaning with which the planner tried it. What it names and is not there any more is
 * refused, and so is making longer what is a matter of safety. `words`: what the steps are called that a dish gets which is brought cold.
 */
export function takeRemedy(doc: Y.Doc, remedy: Exclude<WrittenWay, { kind: 'bring-cold' }>): Edited
export function takeRemedy(doc: Y.Doc, remedy: WrittenWay, words: ColdWords): Edited
export function takeRemedy(doc: Y.Doc, remedy: WrittenWay, words?: ColdWords): Edited {
  switch (remedy.kind) {
    case 'bring-cold':
      return bringDishCold(doc, remedy, words ?? NO_WORDS)
    case 'use-way':
      return changeWays(doc, remedy.step, (ways) => ways.filter((_, index) => index === remedy.way))
    case 'do-ahead':
      return setFields(doc, 'steps', remedy.step, { earliest: remedy.earliest })
    case 'other-oven':
      return changeWays(doc, remedy.step, (ways) => ways.map((way) => withOvens(way, { oven: remedy.kit })))
    case 'widen-temperature':
      return widen(doc, remedy)
    case 'wait-longer':
      return waitLonger(doc, remedy)
    case 'keep-longer':
      return keepLonger(doc, remedy)
    case 'drop':
      return drop(doc, remedy.dish)
    case 'course-later':
      return serveCourse(doc, remedy.course, secondsOf(remedy.by))
  }
}

/** What to ask for so that a step goes to somebody: of whom it is, if anybody has claimed the step itself. */
export const claimOfRemedy = (
  claims: readonly { readonly target: string; readonly cook: string }[],
  { step, cook }: ClaimedWay,
): Wish => {
  const held = claims.find(({ target }) => target === step)
  return held ? { kind: 'reassign', target: step, from: held.cook, cook } : { kind: 'claim', target: step, cook }
}

const waysOf = (doc: Y.Doc, step: string): readonly Way[] =>
  z.array(Way).safeParse(presentEntry(doc, 'steps', step)?.get('ways')).data ?? []

const changeWays = (doc: Y.Doc, step: string, change: (ways: readonly Way[]) => Way[]): Edited => {
  if (!presentEntry(doc, 'steps', step)) return fail({ kind: 'unknown-entry', root: 'steps', id: step })
  const ways = change(waysOf(doc, step))
  return ways.length === 0 ? fail(refusedFor('ways', 'there is no such way')) : setFields(doc, 'steps', step, { ways })
}

type OvenUse = Extract<Way['uses'][number], { kind: 'oven' }>

const withOvens = (way: Way, more: Partial<OvenUse>): Way => ({
  ...way,
  uses: way.uses.map((use) => (use.kind === 'oven' ? { ...use, ...more } : use)),
})

const widen = (doc: Y.Doc, { step, way, lowC, highC }: Extract<WrittenWay, { kind: 'widen-temperature' }>): Edited => {
  const found = waysOf(doc, step)[way]
  return found
    ? setWay(doc, step, way, withOvens(found, { lowC, highC }))
    : fail({ kind: 'unknown-entry', root: 'steps', id: step })
}

const longer = (most: string, by: string): string => durationOf(secondsOf(most) + secondsOf(by))

const waitLonger = (doc: Y.Doc, { step, after, by }: Extract<WrittenWay, { kind: 'wait-longer' }>): Edited => {
  const lags = z.array(After).safeParse(presentEntry(doc, 'steps', step)?.get('after')).data ?? []
  const bends = (lag: After) => lag.step === after && lag.most !== undefined && lag.kind === 'quality'
  if (!lags.some(bends)) return fail({ kind: 'unknown-entry', root: 'steps', id: step })
  return setFields(doc, 'steps', step, {
    after: lags.map((lag) => (bends(lag) && lag.most !== undefined ? { ...lag, most: longer(lag.most, by) } : lag)),
  })
}

const keepLonger = (doc: Y.Doc, { dish, by }: Extract<WrittenWay, { kind: 'keep-longer' }>): Edited => {
  const entry = presentEntry(doc, 'dishes', dish)
  const keeps = Dish.shape.keeps.safeParse(entry?.get('keeps')).data
  const carry = Dish.shape.carry.safeParse(entry?.get('carry')).data
  if (!keeps) return fail({ kind: 'unknown-entry', root: 'dishes', id: dish })
  if (keeps.kind === 'safety' && (carry === undefined || carry.kind === 'safety'))
    return fail(refusedFor('keeps', 'is a matter of safety, and stays as it is'))
  return setFields(doc, 'dishes', dish, {
    ...(keeps.kind === 'quality' ? { keeps: { ...keeps, most: longer(keeps.most, by) } } : {}),
    ...(carry?.kind === 'quality' ? { carry: { ...carry, most: longer(carry.most, by) } } : {}),
  })
}

/** Its stand-in, when it has one, takes its place. */
const drop = (doc: Y.Doc, dish: string): Edited => {
  const standIn = readPlan(doc).evening.dishes.find(({ id }) => id === dish)?.standIn
  return setEach(doc, 'dishes', [
    [dish, { state: 'dropped' }],
    ...(standIn === undefined ? [] : [[standIn, { state: 'on' }] as const]),
  ])
}
