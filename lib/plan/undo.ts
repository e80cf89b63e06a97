import * as Y from 'yjs'
import { ENTRY_ROOTS } from './layout.ts'

/**
 * Undo and redo of the edits that were made with `origin` as their transaction's origin, each of its own; what others did
 * to the same fields since is left alone. An entry is never deleted: an undone addition loses its fields and reads as not there.
 */
export const openUndo = (doc: Y.Doc, origin: unknown): Y.UndoManager => {
  const entries = ENTRY_ROOTS.map((root) => doc.getMap(root))
  const roots = new Set<unknown>(entries)
  return new Y.UndoManager([...entries, doc.getMap('evening')], {
    trackedOrigins: new Set([origin]),
    captureTimeout: 0,
    deleteFilter: (item) => !roots.has(item.parent),
  })
}

/** Runs an edit in one transaction of that origin. */
export const editAs = <T>(doc: Y.Doc, origin: unknown, change: (doc: Y.Doc) => T): T => doc.transact(() => change(doc), origin)
