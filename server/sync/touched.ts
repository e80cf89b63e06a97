import type * as Y from 'yjs'
import { ROOTS, rootMap } from '#lib/plan/layout.ts'

/** A place in the plan that a change touched. `entry` is empty for the evening's own fields; `field` for an entry as a whole. */
export interface Place {
  readonly root: string
  readonly entry: string
  readonly field: string
}

type Touched = Y.AbstractType<unknown>

/** Places of one change that are kept: one that touches more has brought in a whole menu. */
const MOST = 300

/** Where these transactions changed a document that was checked already: each place once. Says where, never what was written. */
export const touchedBy = (doc: Y.Doc, transactions: readonly Y.Transaction[]): readonly Place[] => {
  const roots = new Map<unknown, string>(ROOTS.map((root) => [rootMap(doc, root), root]))
  const places = new Map<string, Place>()
  for (const { changed } of transactions)
    for (const [type, keys] of changed as ReadonlyMap<Touched, ReadonlySet<string | null>>)
      for (const key of keys) {
        const place = placeOf(roots, type, key)
        if (place && places.size < MOST) places.set(`${place.root} ${place.entry} ${place.field}`, place)
      }
  return [...places.values()]
}

const placeOf = (roots: ReadonlyMap<unknown, string>, type: Touched, key: string | null): Place | null => {
  const item = type._item
  const own = roots.get(type)
  if (item === null) {
    if (own === undefined || own === 'meta' || key === null) return null
    return own === 'evening' ? { root: own, entry: '', field: key } : { root: own, entry: key, field: '' }
  }
  const [parent, name] = [item.parent as Touched, item.parentSub]
  const root = roots.get(parent)
  if (root !== undefined) return name !== null && key !== null ? { root, entry: name, field: key } : null
  // A text within an entry: its letters have no key.
  const [above, entry] = [roots.get(parent._item?.parent), parent._item?.parentSub]
  return above !== undefined && entry && name ? { root: above, entry, field: name } : null
}
