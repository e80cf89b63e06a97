import * as Y from 'yjs'
import { Meta, ROOTS, rootMap } from '#lib/plan/layout.ts'
import { LAYOUT_VERSION } from '#lib/plan/wire.ts'
import type { StoredPlan } from './update-log.ts'

/** The document that a stored plan adds up to. Throws when it does not add up: a blank one in its place would overwrite it. */
export const loadPlan = (stored: StoredPlan): Y.Doc => {
  const doc = new Y.Doc()
  for (const update of stored.updates) Y.applyUpdate(doc, update, 'load')
  if (doc.store.pendingStructs !== null || doc.store.pendingDs !== null) throw new Error('updates are missing from the plan')
  const meta = Meta.safeParse(Object.fromEntries(rootMap(doc, 'meta')?.entries() ?? []))
  if (!meta.success) throw new Error('the plan does not say what it is')
  if (meta.data.version > LAYOUT_VERSION) throw new Error(`the plan is of a newer layout (${meta.data.version})`)
  return doc
}

/** A document ahead of the stored one by the updates on their way to the disk. */
export const shadowOf = (doc: Y.Doc, ahead: readonly Uint8Array[]): Y.Doc => {
  const shadow = new Y.Doc()
  // Roots must have their type before the first update names them: that is how a wrong one is seen.
  for (const root of ROOTS) shadow.getMap(root)
  Y.applyUpdate(shadow, Y.encodeStateAsUpdate(doc), 'shadow')
  for (const update of ahead) Y.applyUpdate(shadow, update, 'shadow')
  return shadow
}
