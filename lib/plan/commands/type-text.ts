import * as Y from 'yjs'
import { cleanText } from '#lib/domain/atoms.ts'
import { fail, ok } from '#lib/domain/result.ts'
import { documentField, type EntryRoot } from '#lib/plan/layout.ts'
import { refusedFor } from './fault.ts'
import type { Edited } from './set.ts'
import { presentEntry } from './siblings.ts'
import { type TextDifference, writeText } from './text.ts'

/** The free text of an entry as it is shared, letter by letter; null when the entry is not there or has none of that name. */
export const sharedText = (doc: Y.Doc, root: EntryRoot, id: string, name: string): Y.Text | null => {
  const text = documentField(root, name)?.text ? presentEntry(doc, root, id)?.get(name) : undefined
  return text instanceof Y.Text ? text : null
}

/** Puts in place of one stretch of a free text what was typed there; control characters come out as spaces. */
export const typeText = (doc: Y.Doc, root: EntryRoot, id: string, name: string, { at, cut, put }: TextDifference): Edited => {
  const most = documentField(root, name)?.text
  const map = presentEntry(doc, root, id)
  if (!map) return fail({ kind: 'unknown-entry', root, id })
  if (!most) return fail(refusedFor(name, 'is no free text'))
  const typed = cleanText(put, most.lines)
  const text = map.get(name)
  if (!(text instanceof Y.Text)) {
    if (typed.length > most.most) return fail(refusedFor(name, `must be at most ${most.most} characters`))
    doc.transact(() => writeText(map, name, typed))
    return ok(null)
  }
  if (at < 0 || cut < 0 || at + cut > text.length) return fail(refusedFor(name, 'there is no such place'))
  if (typed !== '' && text.length - cut + typed.length > most.most)
    return fail(refusedFor(name, `must be at most ${most.most} characters`))
  doc.transact(() => {
    if (cut > 0) text.delete(at, cut)
    if (typed !== '') text.insert(at, typed)
  })
  return ok(null)
}
