import type * as Y from 'yjs'
import { durationOf, secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { fail } from '#lib/domain/result.ts'
import { serveCourse } from '#lib/plan/commands/serve-course.ts'
import { type Edited, setFields } from '#lib/plan/commands/set.ts'
import { takeRemedy } from '#lib/plan/commands/take-remedy.ts'
import type { Say } from '#lib/plan/say.ts'

/** One thing that can be done about what has happened. */
export type Answer =
  /** Everybody sits down later. */
  | { readonly kind: 'wait'; readonly minutes: number; readonly sitDown: string }
  /** As it was planned; `moved`: sitting down had been put off before. */
  | { readonly kind: 'begin'; readonly course: string; readonly moved: boolean }
  /** What comes before it as planned, this course so much later. */
  | { readonly kind: 'later'; readonly course: string; readonly minutes: number }
  | { readonly kind: 'longer'; readonly step: string; readonly minutes: number }
  /** The rest of its course goes out, and this so much later. */
  | { readonly kind: 'follow'; readonly dish: string; readonly step: string; readonly minutes: number }
  | { readonly kind: 'other-way'; readonly step: string; readonly way: number }
  | { readonly kind: 'without'; readonly dish: string; readonly why: 'failed' | 'dropped' }
  | { readonly kind: 'stand-in'; readonly dish: string; readonly instead: string }
  | { readonly kind: 'gone'; readonly cook: string }
  | { readonly kind: 'back'; readonly cook: string }

/** What an answer tells everybody, in the order in which it is told. */
export const tellsOf = (answer: Answer): readonly Say[] => {
  switch (answer.kind) {
    case 'wait':
      return [{ kind: 'sit-down', to: answer.sitDown }]
    case 'begin':
      return answer.moved ? [{ kind: 'sit-down', to: null }] : []
    case 'longer':
    case 'follow':
      return [{ kind: 'longer', step: answer.step, minutes: answer.minutes }]
    case 'without':
      return [{ kind: 'out', dish: answer.dish, why: answer.why }]
    case 'stand-in':
      return [{ kind: 'out', dish: answer.dish, why: 'failed', instead: answer.instead }]
    case 'gone':
      return [{ kind: 'gone', cook: answer.cook }]
    case 'back':
      return [{ kind: 'back', cook: answer.cook }]
    case 'later':
    case 'other-way':
      return []
  }
}

/** What an answer changes in the plan besides, as an ordinary edit; null: nothing. */
export const editOf = (evening: Evening, answer: Answer): ((doc: Y.Doc) => Edited) | null => {
  switch (answer.kind) {
    case 'later':
      return (doc) => serveCourse(doc, answer.course, answer.minutes * 60)
    case 'other-way':
      return (doc) => takeRemedy(doc, { kind: 'use-way', step: answer.step, way: answer.way })
    case 'follow': {
      const toTable = evening.dishes.find(({ id }) => id === answer.dish)?.toTable
      if (!toTable) return () => fail({ kind: 'unknown-entry', root: 'dishes', id: answer.dish })
      const late = durationOf(Math.max(secondsOf(toTable.late), answer.minutes * 60))
      return (doc) => setFields(doc, 'dishes', answer.dish, { toTable: { ...toTable, late } })
    }
    default:
      return null
  }
}
