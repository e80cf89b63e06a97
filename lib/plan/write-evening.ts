import * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import { nightKey } from '#lib/domain/people.ts'
import { documentField, ENTRY_ROOTS, type EntryOf, type EntryRoot, EVENING_FIELDS, isEveningField, listIn } from './layout.ts'
import { spreadKeys } from './order-keys.ts'
import { claimsInOrder, nightInOrder } from './reading-order.ts'
import { LAYOUT_VERSION } from './wire.ts'

/** What the server says of a document that it makes. */
export interface Making {
  readonly epoch: string
  /** The oldest layout version whose clients may write in it. */
  readonly minClient: number
}

/**
 * Writes an evening into a fresh document; guests are left out. For the server alone: two documents made of the same
 * evening do not merge. Reading it gives the evening in reading order.
 */
export const writeEvening = (doc: Y.Doc, evening: Evening, making: Making): void => {
  doc.transact(() => {
    const meta = doc.getMap('meta')
    meta.set('version', LAYOUT_VERSION)
    meta.set('minClient', making.minClient)
    meta.set('epoch', making.epoch)
    meta.set('evening', evening.id)
    const own = doc.getMap('evening')
    for (const name of Object.keys(EVENING_FIELDS).filter(isEveningField))
      if (evening[name] !== undefined) own.set(name, evening[name])
    for (const root of ENTRY_ROOTS) {
      const list = listIn(evening, root)
      const keys = spreadKeys(list.length)
      for (const [index, entry] of list.entries())
        doc.getMap(root).set(entry.id, entryContent(root, { order: keys[index] ?? '', ...entry }))
    }
    const claims = doc.getMap('claims')
    for (const { target, ...claim } of claimsInOrder(evening.claims)) claims.set(target, claim)
    const night = doc.getMap('night')
    for (const fact of nightInOrder(evening.night)) night.set(nightKey(fact), fact)
  })
}

/** The map of an entry, not yet in a document. */
export const entryContent = <R extends EntryRoot>(root: R, entry: EntryOf[R] & { readonly order: string }): Y.Map<unknown> => {
  const map = new Y.Map<unknown>()
  for (const [name, value] of Object.entries(entry)) {
    const field = documentField(root, name)
    if (!field || value === undefined) continue
    map.set(name, field.text ? new Y.Text(String(value)) : value)
  }
  return map
}
