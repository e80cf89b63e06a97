import type * as Y from 'yjs'
import type * as z from 'zod/mini'
import { Ingredient } from '#lib/domain/ingredient.ts'
import { Cook, Kitchen } from '#lib/domain/kitchen.ts'
import { Course, Dish, Step } from '#lib/domain/menu.ts'
import { Offer } from '#lib/domain/offer.ts'
import { Drink } from '#lib/domain/people.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import { ShoppingNote, Tick } from '#lib/domain/shopping.ts'
import type { EntryOf, EntryRoot } from '#lib/plan/layout.ts'
import { keysFor, type Place } from '#lib/plan/order-keys.ts'
import { entryContent } from '#lib/plan/write-evening.ts'
import { type EditFault, refusedBy } from './fault.ts'
import { idTaken, parentField, siblingsOf } from './siblings.ts'

type Unplaced<T> = Omit<T, 'order'>
type Added = Result<string, EditFault>
const LAST: Place = { kind: 'last' }

/** Each adds an entry under an id that nobody has used, at its place among its siblings, and gives the id back. */
export const addKitchen = (doc: Y.Doc, kitchen: Kitchen, place: Place = LAST): Added =>
  add(doc, 'kitchens', Kitchen, kitchen, place)
export const addCook = (doc: Y.Doc, cook: Cook, place: Place = LAST): Added => add(doc, 'cooks', Cook, cook, place)
export const addCourse = (doc: Y.Doc, course: Unplaced<Course>, place: Place = LAST): Added =>
  add(doc, 'courses', Course, course, place)
export const addDish = (doc: Y.Doc, dish: Unplaced<Dish>, place: Place = LAST): Added => add(doc, 'dishes', Dish, dish, place)
export const addStep = (doc: Y.Doc, step: Unplaced<Step>, place: Place = LAST): Added => add(doc, 'steps', Step, step, place)
export const addIngredient = (doc: Y.Doc, ingredient: Unplaced<Ingredient>, place: Place = LAST): Added =>
  add(doc, 'ingredients', Ingredient, ingredient, place)
export const addDrink = (doc: Y.Doc, drink: Unplaced<Drink>, place: Place = LAST): Added =>
  add(doc, 'drinks', Drink, drink, place)
export const addNote = (doc: Y.Doc, note: Unplaced<ShoppingNote>): Added => add(doc, 'shopping', ShoppingNote, note, LAST)
export const addTick = (doc: Y.Doc, tick: Tick): Added => add(doc, 'ticks', Tick, tick, LAST)
export const addOffer = (doc: Y.Doc, offer: Unplaced<Offer>, place: Place = LAST): Added =>
  add(doc, 'offers', Offer, offer, place)

const add = <R extends EntryRoot>(
  doc: Y.Doc,
  root: R,
  schema: z.ZodMiniType<EntryOf[R]> & { readonly shape: object },
  value: { readonly id: string },
  place: Place,
): Added => {
  const ordered = 'order' in schema.shape ? { ...value, order: '0' } : value
  const parsed = schema.safeParse(ordered)
  if (!parsed.success) return fail(refusedBy(parsed.error))
  const entry: EntryOf[R] = parsed.data
  if (idTaken(doc, entry.id)) return fail({ kind: 'id-taken', id: entry.id })
  const parent = parentField(root)
  const parentId: unknown = parent === null ? null : Reflect.get(entry, parent)
  doc.transact(() => {
    const keys = keysFor(siblingsOf(doc, root, parentId, entry.id), entry.id, place)
    const own = keys.get(entry.id) ?? ''
    doc.getMap(root).set(entry.id, entryContent(root, { ...entry, order: own }))
    writeKeys(doc, root, keys, entry.id)
  })
  return ok(entry.id)
}

/** Writes the order keys of siblings, but for one that has its own already. */
export const writeKeys = (doc: Y.Doc, root: EntryRoot, keys: ReadonlyMap<string, string>, but: string): void => {
  for (const [id, key] of keys) {
    const map = id === but ? undefined : (doc.getMap(root).get(id) as Y.Map<unknown> | undefined)
    map?.set('order', key)
  }
}
