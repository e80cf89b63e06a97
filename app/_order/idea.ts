import type * as Y from 'yjs'
import type { At } from '#lib/domain/atoms.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { epochMsOf, wallTimeOfMs } from '#lib/domain/time.ts'
import { addCook } from '#lib/plan/commands/add.ts'
import { isFirst, serveCourse } from '#lib/plan/commands/serve-course.ts'
import { type Edited, setEvening } from '#lib/plan/commands/set.ts'
import { takeRemedy } from '#lib/plan/commands/take-remedy.ts'

/** Something that could be otherwise, to be tried before it is decided. */
export type Idea =
  | { readonly kind: 'sit-down'; readonly at: At }
  /** `minutes` below zero: sooner. */
  | { readonly kind: 'course'; readonly course: string; readonly minutes: number }
  | {
      readonly kind: 'cook'
      /** Of the cook that is added. */
      readonly id: string
      readonly name: string
      readonly eats: boolean
      readonly kitchen: string
      readonly from: At
      readonly to: At
    }
  | { readonly kind: 'covers'; readonly covers: number }
  | { readonly kind: 'way'; readonly step: string; readonly way: number }

export type IdeaKind = Idea['kind']

/** Carries an idea out, in the plan or in a copy of it: one edit. */
export const carryOut = (doc: Y.Doc, idea: Idea): Edited => {
  switch (idea.kind) {
    case 'sit-down':
      return setEvening(doc, { sitDown: idea.at })
    case 'course':
      return serveCourse(doc, idea.course, idea.minutes * 60)
    case 'cook': {
      const { id, name, eats, kitchen, from, to } = idea
      const made = addCook(doc, { id, name, eats, host: false, pace: 1, presence: [{ kitchen, from, to }] })
      return made.ok ? { ok: true, value: null } : made
    }
    case 'covers':
      return setEvening(doc, { covers: idea.covers })
    case 'way':
      return takeRemedy(doc, { kind: 'use-way', step: idea.step, way: idea.way })
  }
}

/** Whether only a host may keep it: the evening's own time and covers. */
export const isForHosts = (evening: Evening, idea: Idea): boolean =>
  idea.kind === 'sit-down' || idea.kind === 'covers' || (idea.kind === 'course' && isFirst(evening, idea.course))

const QUARTER = 15
const HOUR_MS = 3_600_000

/** What a kind of idea begins with; null where there is nothing of the kind to try. */
export const firstIdea = (kind: IdeaKind, evening: Evening, order: RunningOrder, freshId: string): Idea | null => {
  const sitDown = epochMsOf(evening, evening.sitDown)
  const at = (ms: number): At => wallTimeOfMs(evening, ms)
  switch (kind) {
    case 'sit-down':
      return { kind, at: at(sitDown + (QUARTER / 60) * HOUR_MS) }
    case 'course': {
      const course = order.courses.find(({ course: id }) => !isFirst(evening, id)) ?? order.courses[0]
      return course ? { kind, course: course.course, minutes: QUARTER } : null
    }
    case 'cook': {
      const last = order.courses.at(-1)?.toTable
      const to = Math.max(sitDown + HOUR_MS, last === undefined ? 0 : Date.parse(last))
      const end = Math.ceil(to / HOUR_MS) * HOUR_MS
      return {
        kind,
        id: freshId,
        name: 'A helper',
        eats: false,
        kitchen: evening.host,
        from: at(sitDown - 2 * HOUR_MS),
        to: at(end),
      }
    }
    case 'covers':
      return { kind, covers: Math.min(60, evening.covers + 2) }
    case 'way': {
      const step = evening.steps.find(({ id, ways }) => ways.length > 1 && order.cues.some((cue) => cue.step === id))
      return step ? { kind, step: step.id, way: otherWay(step.id, evening, order) } : null
    }
  }
}

/** The first way of a step that the order has not chosen. */
export const otherWay = (step: string, evening: Evening, order: RunningOrder): number => {
  const chosen = order.cues.find((cue) => cue.step === step)?.way
  const ways = evening.steps.find(({ id }) => id === step)?.ways ?? []
  return Math.max(
    0,
    ways.findIndex((_, index) => index !== chosen),
  )
}
