import type * as Y from 'yjs'
import type { Step } from '#lib/domain/menu.ts'
import { ok } from '#lib/domain/result.ts'
import { entryMap } from '#lib/plan/layout.ts'
import { addStep } from './add.ts'
import { restore } from './remove.ts'
import { type Edited, setFields } from './set.ts'

/**
 * Puts a chore under an id that its subject gives: adds it, brings it back when it was removed, or brings it up to date. Whoever asks for it,
 * also two at once, there is one.
 */
export const putChore = (doc: Y.Doc, chore: Omit<Step, 'order' | 'dish' | 'role'>): Edited => {
  const { id, ...fields } = chore
  if (!entryMap(doc, 'steps', id)) {
    const added = addStep(doc, { ...chore, dish: null, role: 'chore' })
    return added.ok ? ok(null) : added
  }
  return doc.transact(() => {
    const back = restore(doc, 'steps', id)
    return back.ok ? setFields(doc, 'steps', id, fields) : back
  })
}
