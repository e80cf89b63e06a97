import * as Y from 'yjs'
import { writeText } from './commands/text.ts'
import {
  documentField,
  ENTRY_ROOTS,
  type EntryRoot,
  EVENING_FIELDS,
  isEveningField,
  isId,
  MOST,
  mayWrite,
  rootMap,
} from './layout.ts'

/** One thing that another copy of a plan says differently, and what puts it into this one. */
interface Difference {
  readonly root: string
  readonly entry: string
  readonly write: () => void
}

/**
 * How many things of `other`, an earlier copy of the same plan, this one does not say or says differently, as far as this role may
 * write them. What only this one has does not count.
 */
export const countDifferences = (doc: Y.Doc, other: Y.Doc, role: 'host' | 'cook'): number =>
  new Set(differences(doc, other, role).map(({ root, entry }) => `${root} ${entry}`)).size

/** Brings those things in, all in one update. What only this plan has stays. */
export const bringIn = (doc: Y.Doc, other: Y.Doc, role: 'host' | 'cook'): void => {
  const found = differences(doc, other, role)
  doc.transact(() => {
    for (const { write } of found) write()
  })
}

const differences = (doc: Y.Doc, other: Y.Doc, role: 'host' | 'cook'): readonly Difference[] => [
  ...ENTRY_ROOTS.filter((root) => mayWrite(role, root) && (root !== 'offers' || role === 'host')).flatMap((root) =>
    entryDifferences(doc, other, root),
  ),
  ...(mayWrite(role, 'evening') ? ownDifferences(doc, other) : []),
]

const ownDifferences = (doc: Y.Doc, other: Y.Doc): readonly Difference[] => {
  const [mine, theirs] = [rootMap(doc, 'evening'), rootMap(other, 'evening')]
  return [...(theirs ?? [])].flatMap(([name, value]) =>
    mine && isEveningField(name) && !isSame(mine.get(name), value) && EVENING_FIELDS[name].safeParse(value).success
      ? [{ root: 'evening', entry: '', write: () => void mine.set(name, value) }]
      : [],
  )
}

const entryDifferences = (doc: Y.Doc, other: Y.Doc, root: EntryRoot): readonly Difference[] => {
  const [mine, theirs] = [rootMap(doc, root), rootMap(other, root)]
  if (!mine || !theirs) return []
  const room = MOST[root] - mine.size
  let added = 0
  return [...theirs].flatMap(([entry, map]): readonly Difference[] => {
    if (!(map instanceof Y.Map) || !isId(entry)) return []
    const own = mine.get(entry)
    const isNew = !(own instanceof Y.Map)
    // What was made and taken away again after the backup is no loss, and there is only so much room.
    if (isNew && (map.get('gone') === true || added++ >= room)) return []
    const differing = [...map].filter(
      ([name, value]) => isGood(root, name, value) && !(own instanceof Y.Map && isSame(own.get(name), value)),
    )
    if (differing.length === 0) return []
    const write = () => {
      const to: Y.Map<unknown> = isNew ? mine.set(entry, new Y.Map<unknown>()) : own
      for (const [name, value] of differing) {
        if (value instanceof Y.Text) writeText(to, name, value.toString())
        else to.set(name, value)
      }
    }
    return [{ root, entry, write }]
  })
}

const isGood = (root: EntryRoot, name: string, value: unknown): boolean => {
  const field = documentField(root, name)
  if (!field) return false
  return field.text ? value instanceof Y.Text : field.schema.safeParse(value).success
}

const isSame = (mine: unknown, theirs: unknown): boolean =>
  theirs instanceof Y.Text
    ? mine instanceof Y.Text && mine.toString() === theirs.toString()
    : JSON.stringify(mine) === JSON.stringify(theirs)
