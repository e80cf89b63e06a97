import * as Y from 'yjs'
import { Step } from '#lib/domain/menu.ts'
import { fail, type Result } from '#lib/domain/result.ts'
import { rootMap } from '#lib/plan/layout.ts'
import { readEntry } from '#lib/plan/read-entry.ts'
import { addStep } from './add.ts'
import { type EditFault, refusedBy } from './fault.ts'
import { setFields } from './set.ts'
import { presentEntry } from './siblings.ts'

/**
 * Splits a step in one update: it keeps the words `first`; the new step comes right after it and waits for it, and what
 * waited for the end of the old one waits for the end of the new one.
 */
export const splitStep = (
  doc: Y.Doc,
  id: string,
  first: string,
  then: Omit<Step, 'order' | 'after' | 'dish'>,
): Result<string, EditFault> => {
  const map = presentEntry(doc, 'steps', id)
  const reading = map ? readEntry('steps', id, map) : null
  if (reading?.kind !== 'whole') return fail({ kind: 'unknown-entry', root: 'steps', id })
  const words = Step.shape.does.safeParse(first)
  if (!words.success) return fail(refusedBy(words.error))
  const { dish } = reading.entry
  return doc.transact(() => {
    const after: Step['after'] = [{ step: id, from: 'end', least: 'PT0S', kind: 'quality' }]
    const added = addStep(doc, { ...then, dish, after }, { kind: 'after', id })
    if (!added.ok) return added
    setFields(doc, 'steps', id, { does: words.data })
    for (const other of waitersOf(doc, id, then.id))
      setFields(doc, 'steps', other.id, {
        after: other.after.map((lag) => (lag.step === id && lag.from === 'end' ? { ...lag, step: then.id } : lag)),
      })
    return added
  })
}

/** The steps that wait for the end of this one, but for `but`. */
const waitersOf = (doc: Y.Doc, id: string, but: string): readonly Step[] =>
  [...(rootMap(doc, 'steps')?.entries() ?? [])].flatMap(([other, map]) => {
    if (other === but || !(map instanceof Y.Map)) return []
    const reading = readEntry('steps', other, map)
    const waits = reading.kind === 'whole' && reading.entry.after.some((lag) => lag.step === id && lag.from === 'end')
    return waits ? [reading.entry] : []
  })
