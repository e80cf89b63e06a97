import * as Y from 'yjs'
import {
  documentField,
  type EntryRoot,
  EVENING_FIELDS,
  isEntryRoot,
  isEveningField,
  isId,
  MOST,
  mayLack,
  mayWrite,
  ROOTS,
  rootMap,
} from '#lib/plan/layout.ts'
import { checkNewOffer, checkOffer, type Writer } from './check-offer.ts'

type Touched = Y.AbstractType<unknown>

/** A removed entry stays in the document: a root may hold so many times what an evening may. */
const SPARE = 4

/**
 * Why what a transaction left behind may not be, or null when it may: only roots that the role may write, entries as maps of
 * known fields, each as its schema wants, texts of plain letters, nothing deeper, no entry deleted or replaced. Looks at
 * the touched keys only: what was not touched was looked at when it came.
 */
export const checkTouched = (doc: Y.Doc, transaction: Y.Transaction, writer: Writer): string | null => {
  const roots = new Map<unknown, string>(ROOTS.map((root) => [rootMap(doc, root), root]))
  for (const [type, keys] of transaction.changed as ReadonlyMap<Touched, ReadonlySet<string | null>>) {
    const why =
      type._item === null ? checkRoot(roots.get(type), type, keys, writer) : checkNested(roots, type, type._item, keys, writer)
    if (why !== null) return why
  }
  return null
}

const checkRoot = (root: string | undefined, type: Touched, keys: ReadonlySet<string | null>, writer: Writer): string | null => {
  if (root === undefined || !mayWrite(writer.role, root)) return `may not write the root ${root ?? 'of that name'}`
  for (const key of keys) {
    if (key === null) return `${root} is a map`
    const item = type._map.get(key)
    if ((!item || item.deleted) && root === 'evening' && isEveningField(key) && mayLack(key)) continue
    if (!item || item.deleted) return `${root}.${key} was deleted`
    const why = isEntryRoot(root) ? checkNewEntry(root, key, item, writer) : checkOwn(key, item)
    if (why !== null) return why
  }
  return isEntryRoot(root) && type._map.size > SPARE * MOST[root] ? `too many ${root}` : null
}

const checkOwn = (key: string, item: Y.Item): string | null => {
  if (!isEveningField(key)) return `evening.${key} is no field`
  return EVENING_FIELDS[key].safeParse(jsonOf(item)).success ? null : `evening.${key} is not as it must be`
}

const checkNewEntry = (root: EntryRoot, id: string, item: Y.Item, writer: Writer): string | null => {
  if (!isId(id)) return `${root} has a key that is no id`
  if (item.left !== null) return `${root}.${id} was replaced`
  const entry = typeOf(item)
  if (!isExactly(entry, Y.Map.prototype) || entry._start !== null) return `${root}.${id} is not a map`
  for (const [name, field] of entry._map) {
    const why = field.deleted ? null : checkField(root, name, field)
    if (why !== null) return why
  }
  return root === 'offers' ? checkNewOffer(entry, writer) : null
}

const checkNested = (
  roots: ReadonlyMap<unknown, string>,
  type: Touched,
  item: Y.Item,
  keys: ReadonlySet<string | null>,
  writer: Writer,
): string | null => {
  const parent = item.parent as Touched
  const root = roots.get(parent)
  if (root !== undefined) {
    if (!isEntryRoot(root) || !mayWrite(writer.role, root)) return `may not write in ${root}`
    const notOwn = root === 'offers' ? checkOffer(type, keys, writer) : null
    if (notOwn !== null) return notOwn
    for (const name of keys) {
      if (name === null) return `an entry of ${root} is a map`
      const field = type._map.get(name)
      const why = !field || field.deleted ? null : checkField(root, name, field)
      if (why !== null) return why
    }
    return null
  }
  const grand = roots.get(parent._item?.parent)
  if (grand === undefined || !isEntryRoot(grand) || !mayWrite(writer.role, grand) || item.parentSub === null) return 'too deep'
  return checkField(grand, item.parentSub, item)
}

const checkField = (root: EntryRoot, name: string, item: Y.Item): string | null => {
  const field = documentField(root, name)
  if (!field) return `${root} have no field ${name}`
  if (field.text) return isPlainText(typeOf(item), field.text.most) ? null : `${root}.${name} is not a plain text`
  return field.schema.safeParse(jsonOf(item)).success ? null : `${root}.${name} is not as it must be`
}

/** Cooks typing at once may together write more than is read, but not without end. */
const isPlainText = (type: Touched | null, most: number): boolean => {
  if (!isExactly(type, Y.Text.prototype) || type._map.size > 0) return false
  let letters = 0
  for (let item = type._start; item !== null; item = item.right) {
    if (item.deleted) continue
    if (!(item.content instanceof Y.ContentString)) return false
    letters += item.length
  }
  return letters <= 2 * most + 2000
}

/** Not one of its heirs: an XML text is a text too. */
const isExactly = (type: Touched | null, prototype: object): type is Touched =>
  type !== null && Object.getPrototypeOf(type) === prototype

const typeOf = (item: Y.Item): Touched | null => (item.content instanceof Y.ContentType ? item.content.type : null)

/** The one JSON value of an item; undefined, which no schema takes, for anything else. */
const jsonOf = (item: Y.Item): unknown =>
  item.content instanceof Y.ContentAny && item.content.arr.length === 1 ? item.content.arr[0] : undefined
