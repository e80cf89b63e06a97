import * as Y from 'yjs'
import { fail, ok } from '#lib/domain/result.ts'
import type { ShoppingNote, Tick } from '#lib/domain/shopping.ts'
import { rootMap } from '#lib/plan/layout.ts'
import { addNote, addTick } from './add.ts'
import { refusedFor } from './fault.ts'
import { type Edited, type Patch, setEach, setFields } from './set.ts'

type Said = Omit<ShoppingNote, 'id' | 'order' | 'line' | 'text'>
/** What is said of a line; undefined takes it back. */
export type NotePatch = { readonly [F in keyof Said]?: Said[F] | undefined }

/** Puts a line into the basket. Always an entry of its own, under an id that nobody has used. */
export const tick = (doc: Y.Doc, made: Tick): Edited => {
  const added = addTick(doc, made)
  return added.ok ? ok(null) : added
}

/** Takes a line out of the basket again: the ticks that are seen here. One that comes from another phone later stands. */
export const untick = (doc: Y.Doc, line: string): Edited => {
  doc.transact(() => {
    for (const { map } of presentOf(doc, 'ticks', line)) map.set('gone', true)
  })
  return ok(null)
}

/** Says something of a line of the list: in the note that it has, or in a new one under `id`. */
export const noteLine = (doc: Y.Doc, line: string, id: string, patch: NotePatch): Edited => {
  const [first, ...others] = presentOf(doc, 'shopping', line)
  if (!first) {
    const added = addNote(doc, { id, line, ...withoutUndefined(patch) })
    return added.ok ? ok(null) : added
  }
  // What is taken back is taken back from all, or a second note would say it again.
  const taken = Object.entries(patch).flatMap(([name, value]) => (value === undefined ? [[name, undefined] as const] : []))
  const clear: Patch<'shopping'> = Object.fromEntries(taken)
  return setEach(doc, 'shopping', [[first.id, patch], ...others.map((other) => [other.id, clear] as const)])
}

/** Says the same of several lines, in one update. */
export const noteLines = (
  doc: Y.Doc,
  lines: readonly { readonly key: string; readonly id: string; readonly own: boolean }[],
  patch: NotePatch,
): Edited =>
  doc.transact(() => {
    for (const { key, id, own } of lines) {
      const made = own ? setFields(doc, 'shopping', id, patch) : noteLine(doc, key, id, patch)
      if (!made.ok) return made
    }
    return ok(null)
  })

/** A line of one's own, that no dish asks for. */
export const addOwnLine = (doc: Y.Doc, id: string, text: string, said: NotePatch = {}): Edited => {
  const written = text.trim()
  if (written === '') return fail(refusedFor('text', 'say what is to be bought'))
  const added = addNote(doc, { id, text: written, ...withoutUndefined(said) })
  return added.ok ? ok(null) : added
}

const withoutUndefined = (patch: NotePatch): Said =>
  Object.fromEntries(Object.entries(patch).filter(([, value]) => value !== undefined))

/** The entries about a line that are not removed, in the order in which they are read. */
const presentOf = (doc: Y.Doc, root: 'shopping' | 'ticks', line: string) =>
  [...(rootMap(doc, root)?.entries() ?? [])]
    .flatMap(([id, map]) =>
      map instanceof Y.Map && map.get('line') === line && map.get('gone') !== true
        ? [{ id, map, key: String(map.get('order') ?? '') }]
        : [],
    )
    .toSorted((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : a.id < b.id ? -1 : 1))
