import * as Y from 'yjs'
import { cleanText } from '#lib/domain/atoms.ts'
import { type EntryOf, type EntryRoot, FIELDS, type Field } from './layout.ts'
import { tidyEntry } from './tidy.ts'

/** One entry as it stands alone: what it refers to is not looked at. */
export type EntryReading<R extends EntryRoot> =
  /** Nothing there: every field was taken back. */
  | { readonly kind: 'empty' }
  | { readonly kind: 'gone' }
  | { readonly kind: 'broken'; readonly reports: readonly string[] }
  /** `key`: its own order key, also where the evening has none. */
  | { readonly kind: 'whole'; readonly entry: EntryOf[R]; readonly key: string; readonly reports: readonly string[] }

interface Memo {
  readonly id: string
  readonly root: EntryRoot
  readonly raw: readonly unknown[]
  readonly reading: EntryReading<EntryRoot>
}

// Reading is repeated at every change: an entry whose raw values are the same ones gives the same object again.
const memos = new WeakMap<Y.Map<unknown>, Memo>()

const NAMES = new Map<EntryRoot, readonly string[]>()
const namesOf = (root: EntryRoot): readonly string[] => {
  const known = NAMES.get(root)
  if (known) return known
  const names = [...new Set([...FIELDS[root].keys(), 'order', 'gone'])]
  NAMES.set(root, names)
  return names
}

/** Reads one entry of a root. Never throws: a field that is not as its schema wants is left out, or the entry is broken. */
export const readEntry = <R extends EntryRoot>(root: R, id: string, map: Y.Map<unknown>): EntryReading<R> => {
  const names = namesOf(root)
  const raw = names.map((name) => rawValue(map, name))
  const memo = memos.get(map)
  if (memo && memo.id === id && memo.root === root && raw.every((value, index) => value === memo.raw[index]))
    return memo.reading as EntryReading<R>
  const reading = readRaw(root, id, new Map(names.map((name, index) => [name, raw[index]])))
  memos.set(map, { id, root, raw, reading })
  return reading
}

/** The text of a Y.Text and nothing else of it; any other value as it is. */
const rawValue = (map: Y.Map<unknown>, name: string): unknown => {
  const value = map.get(name)
  return value instanceof Y.Text ? value.toString() : value
}

const readRaw = <R extends EntryRoot>(root: R, id: string, raw: ReadonlyMap<string, unknown>): EntryReading<R> => {
  if ([...raw.values()].every((value) => value === undefined)) return { kind: 'empty' }
  if (raw.get('gone') === true) return { kind: 'gone' }
  const reports: string[] = []
  const entry: Record<string, unknown> = { id }
  let whole = true
  for (const field of FIELDS[root].values()) {
    const value = readField(field, raw.get(field.name))
    if (value.kind === 'refused') reports.push(`${field.name} was not readable`)
    if (value.kind === 'read') entry[field.name] = value.value
    else if (field.absent.kind === 'value') entry[field.name] = field.absent.value
    else if (field.absent.kind === 'missing') {
      if (value.kind === 'absent') reports.push(`${field.name} is missing`)
      whole = false
    }
  }
  if (!whole) return { kind: 'broken', reports }
  const key = raw.get('order')
  const tidied = tidyEntry(root, entry as unknown as EntryOf[R], (why) => reports.push(why))
  return { kind: 'whole', entry: tidied, key: typeof key === 'string' ? key : '', reports: [...new Set(reports)] }
}

type FieldReading =
  | { readonly kind: 'absent' }
  | { readonly kind: 'refused' }
  | { readonly kind: 'read'; readonly value: unknown }

const readField = (field: Field, raw: unknown): FieldReading => {
  if (raw === undefined) return { kind: 'absent' }
  if (field.text) return typeof raw === 'string' ? { kind: 'read', value: readText(raw, field.text) } : { kind: 'refused' }
  const parsed = field.schema.safeParse(raw)
  return parsed.success ? { kind: 'read', value: parsed.data } : { kind: 'refused' }
}

/** Two cooks' letters may add up to more than fits: the rest is not read, but stays in the document. */
const readText = (raw: string, text: { readonly most: number; readonly lines: boolean }): string => {
  const cut = raw.slice(0, text.most)
  return cleanText(/[\ud800-\udbff]$/.test(cut) ? cut.slice(0, -1) : cut, text.lines)
}
