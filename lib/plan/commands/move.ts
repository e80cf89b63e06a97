import type * as Y from 'yjs'
import { fail, ok } from '#lib/domain/result.ts'
import type { EntryRoot } from '#lib/plan/layout.ts'
import { keysFor, type Place } from '#lib/plan/order-keys.ts'
import { writeKeys } from './add.ts'
import { type Edited, setValue } from './set.ts'
import { parentField, presentEntry, siblingsOf } from './siblings.ts'

/** Each puts an entry at a place among the children of a parent: order key and parent change together. */
export const moveCourse = (doc: Y.Doc, id: string, place: Place): Edited => move(doc, 'courses', id, null, null, place)
export const moveDish = (doc: Y.Doc, id: string, course: string, place: Place): Edited =>
  move(doc, 'dishes', id, 'courses', course, place)
/** `dish` null makes the step a chore of the house. */
export const moveStep = (doc: Y.Doc, id: string, dish: string | null, place: Place): Edited =>
  move(doc, 'steps', id, 'dishes', dish, place)
export const moveIngredient = (doc: Y.Doc, id: string, dish: string, place: Place): Edited =>
  move(doc, 'ingredients', id, 'dishes', dish, place)
export const moveDrink = (doc: Y.Doc, id: string, course: string, place: Place): Edited =>
  move(doc, 'drinks', id, 'courses', course, place)
export const moveKitchen = (doc: Y.Doc, id: string, place: Place): Edited => move(doc, 'kitchens', id, null, null, place)
export const moveCook = (doc: Y.Doc, id: string, place: Place): Edited => move(doc, 'cooks', id, null, null, place)

const move = (
  doc: Y.Doc,
  root: EntryRoot,
  id: string,
  parentRoot: EntryRoot | null,
  parent: string | null,
  place: Place,
): Edited => {
  const map = presentEntry(doc, root, id)
  if (!map) return fail({ kind: 'unknown-entry', root, id })
  if (parentRoot && parent !== null && !presentEntry(doc, parentRoot, parent))
    return fail({ kind: 'unknown-entry', root: parentRoot, id: parent })
  doc.transact(() => {
    const keys = keysFor(siblingsOf(doc, root, parent, id), id, place)
    const field = parentField(root)
    if (field !== null) setValue(map, field, parent)
    setValue(map, 'order', keys.get(id) ?? '')
    writeKeys(doc, root, keys, id)
  })
  return ok(null)
}
