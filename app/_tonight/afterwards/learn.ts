import type * as Y from 'yjs'
import type { Span } from '#lib/domain/atoms.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { fail, ok } from '#lib/domain/result.ts'
import { setWay } from '#lib/plan/commands/method.ts'
import type { Edited } from '#lib/plan/commands/set.ts'

/** What a step takes from now on, in the way in which it was done. */
export interface Learnt {
  readonly step: string
  readonly way: number
  readonly takes: Span
}

/** Makes what was learnt the usual minutes, all or none: one edit. A step that may last longer by choice may last at least as long. */
export const learn = (doc: Y.Doc, evening: Evening, all: readonly Learnt[]): Edited => {
  for (const { step, way: index, takes } of all) {
    const way = evening.steps.find(({ id }) => id === step)?.ways[index]
    if (!way) return fail({ kind: 'unknown-entry', root: 'steps', id: step })
    const upTo = way.upTo !== undefined && secondsOf(way.upTo) < secondsOf(takes.most) ? { upTo: takes.most } : {}
    const made = setWay(doc, step, index, { ...way, takes, ...upTo })
    if (!made.ok) return made
  }
  return ok(null)
}
