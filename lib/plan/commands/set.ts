import * as Y from 'yjs'
import { pathText } from '#lib/domain/parse.ts'
import { fail, ok, type Refusal, type Result } from '#lib/domain/result.ts'
import { documentField, type EntryOf, type EntryRoot, EVENING_FIELDS, isEveningField, type OwnFields } from '#lib/plan/layout.ts'
import type { EditFault } from './fault.ts'
import { presentEntry } from './siblings.ts'
import { writeText } from './text.ts'

/** What comes of an edit that has nothing to give back. */
export type Edited = Result<null, EditFault>

/** Fields to set; undefined takes an optional one away. Place and parent are changed by moving. */
export type Patch<R extends EntryRoot> = { readonly [F in Exclude<keyof EntryOf[R], 'id' | 'order'>]?: EntryOf[R][F] | undefined }

/** Sets fields of one entry, all or none. A field that is equal already is not written; text is changed where it differs. */
export const setFields = <R extends EntryRoot>(doc: Y.Doc, root: R, id: string, patch: Patch<R>): Edited =>
  setEach(doc, root, [[id, patch]])

/** As `setFields`, of several entries in one update: all or none. */
export const setEach = <R extends EntryRoot>(
  doc: Y.Doc,
  root: R,
  edits: readonly (readonly [id: string, patch: Patch<R>])[],
): Edited => {
  const refusals: Refusal[] = []
  const writes: (() => void)[] = []
  for (const [id, patch] of edits) {
    const map = presentEntry(doc, root, id)
    if (!map) return fail({ kind: 'unknown-entry', root, id })
    planWrites(map, root, patch, writes, refusals)
  }
  if (refusals.length > 0) return fail({ kind: 'refused', refusals })
  doc.transact(() => {
    for (const write of writes) write()
  })
  return ok(null)
}

const planWrites = (map: Y.Map<unknown>, root: EntryRoot, patch: object, writes: (() => void)[], refusals: Refusal[]): void => {
  for (const [name, value] of Object.entries(patch) as [string, unknown][]) {
    const field = name === 'gone' || name === 'order' ? undefined : documentField(root, name)
    if (!field) refusals.push({ path: name, kind: 'shape', why: 'unknown field' })
    else if (value === undefined && field.absent.kind === 'missing')
      refusals.push({ path: name, kind: 'shape', why: 'is needed' })
    else if (value === undefined) writes.push(() => takeAway(map, name))
    else {
      const parsed = field.schema.safeParse(value)
      if (parsed.success)
        writes.push(() => (field.text ? writeText(map, name, String(parsed.data)) : setValue(map, name, parsed.data)))
      else
        for (const issue of parsed.error.issues)
          refusals.push({ path: pathText([name, ...issue.path]), kind: 'shape', why: issue.message })
    }
  }
}

const takeAway = (map: Y.Map<unknown>, name: string): void => {
  if (map.get(name) instanceof Y.Text) writeText(map, name, '')
  else if (map.has(name)) map.delete(name)
}

/** Sets a JSON value, unless it is there already. */
export const setValue = (map: Y.Map<unknown>, name: string, value: unknown): void => {
  if (JSON.stringify(map.get(name)) !== JSON.stringify(value)) map.set(name, value)
}

export const renameCourse = (doc: Y.Doc, id: string, name: string): Edited => setFields(doc, 'courses', id, { name })
export const renameDish = (doc: Y.Doc, id: string, name: string): Edited => setFields(doc, 'dishes', id, { name })

/** Sets the evening's own fields, all or none; undefined takes an optional one away. The server lets only the host's clients do this. */
export const setEvening = (doc: Y.Doc, patch: { readonly [F in keyof OwnFields]?: OwnFields[F] | undefined }): Edited => {
  const refusals: Refusal[] = []
  const writes: (() => void)[] = []
  for (const [name, value] of Object.entries(patch)) {
    if (!isEveningField(name)) {
      refusals.push({ path: name, kind: 'shape', why: 'unknown field' })
      continue
    }
    const parsed = EVENING_FIELDS[name].safeParse(value)
    if (parsed.success && parsed.data === undefined) writes.push(() => takeAway(doc.getMap('evening'), name))
    else if (parsed.success) writes.push(() => setValue(doc.getMap('evening'), name, parsed.data))
    else
      for (const issue of parsed.error.issues)
        refusals.push({ path: pathText([name, ...issue.path]), kind: 'shape', why: issue.message })
  }
  if (refusals.length > 0) return fail({ kind: 'refused', refusals })
  doc.transact(() => {
    for (const write of writes) write()
  })
  return ok(null)
}
