import type * as Y from 'yjs'
import { fail, type Result } from '#lib/domain/result.ts'
import { readEntry } from '#lib/plan/read-entry.ts'
import { addStep } from './add.ts'
import type { EditFault } from './fault.ts'
import { presentEntry } from './siblings.ts'

/** Adds the same step once more, right after it, under an id that nobody has used. */
export const copyStep = (doc: Y.Doc, id: string, copy: string): Result<string, EditFault> => {
  const map = presentEntry(doc, 'steps', id)
  const reading = map ? readEntry('steps', id, map) : null
  if (reading?.kind !== 'whole') return fail({ kind: 'unknown-entry', root: 'steps', id })
  const { order: _order, ...step } = reading.entry
  return addStep(doc, { ...step, id: copy }, { kind: 'after', id })
}
