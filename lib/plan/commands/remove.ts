import type * as Y from 'yjs'
import { fail, ok } from '#lib/domain/result.ts'
import { type EntryRoot, entryMap } from '#lib/plan/layout.ts'
import type { Edited } from './set.ts'
import { presentEntry } from './siblings.ts'

/** Removes an entry; what belongs to it is not read as long as it is gone. It stays in the document and can be restored. */
export const remove = (doc: Y.Doc, root: EntryRoot, id: string): Edited => {
  const map = presentEntry(doc, root, id)
  if (!map) return fail({ kind: 'unknown-entry', root, id })
  doc.transact(() => map.set('gone', true))
  return ok(null)
}

/** Brings a removed entry back as it was, with what others changed of it meanwhile. */
export const restore = (doc: Y.Doc, root: EntryRoot, id: string): Edited => {
  const map = entryMap(doc, root, id)
  if (!map) return fail({ kind: 'unknown-entry', root, id })
  if (map.has('gone')) doc.transact(() => map.delete('gone'))
  return ok(null)
}
