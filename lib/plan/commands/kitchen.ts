import * as Y from 'yjs'
import * as z from 'zod/mini'
import { Kit } from '#lib/domain/kitchen.ts'
import { fail, ok } from '#lib/domain/result.ts'
import { refusedBy } from './fault.ts'
import { type Edited, setEvening, setFields } from './set.ts'
import { idTaken, presentEntry } from './siblings.ts'

/** Writes one piece of kit over the one of the same id; the others are left as they are now. */
export const setKit = (doc: Y.Doc, kitchen: string, piece: Kit): Edited =>
  changeKit(doc, kitchen, (kit) =>
    kit.some((one) => one.id === piece.id) ? kit.map((one) => (one.id === piece.id ? piece : one)) : null,
  )

/** Adds a piece of kit under an id that nobody has used, last or where it was. */
export const addKit = (doc: Y.Doc, kitchen: string, piece: Kit, index?: number): Edited =>
  idTaken(doc, piece.id)
    ? fail({ kind: 'id-taken', id: piece.id })
    : changeKit(doc, kitchen, (kit) => kit.toSpliced(index ?? kit.length, 0, piece))

/** Takes a piece of kit out of a kitchen. */
export const removeKit = (doc: Y.Doc, kitchen: string, piece: string): Edited =>
  changeKit(doc, kitchen, (kit) => (kit.some((one) => one.id === piece) ? kit.filter((one) => one.id !== piece) : null))

/** Gives a kitchen this kit and no other. */
export const replaceKit = (doc: Y.Doc, kitchen: string, kit: readonly Kit[]): Edited =>
  setFields(doc, 'kitchens', kitchen, { kit: [...kit] })

/** The list is read from the document and not from a screen: what others changed of other pieces meanwhile stays. */
const changeKit = (doc: Y.Doc, kitchen: string, change: (kit: Kit[]) => Kit[] | null): Edited => {
  const found = z.array(Kit).safeParse(presentEntry(doc, 'kitchens', kitchen)?.get('kit'))
  if (!found.success) return fail({ kind: 'unknown-entry', root: 'kitchens', id: kitchen })
  const changed = change(found.data)
  if (changed === null) return fail({ kind: 'unknown-entry', root: 'kitchens', id: kitchen })
  const parsed = z.array(Kit).safeParse(changed)
  return parsed.success ? replaceKit(doc, kitchen, parsed.data) : fail(refusedBy(parsed.error))
}

/** How far the kitchen that was beside the table is from it afterwards, until somebody says otherwise. */
const USUAL_WAY = 'PT10M'

/**
 * Puts another kitchen beside the table, in one update. Dishes of the former one go with the table, but for those that
 * have a step that carries them; the former one is ten minutes away. The server lets only the host's clients do this.
 */
export const setHostKitchen = (doc: Y.Doc, kitchen: string): Edited => {
  if (!presentEntry(doc, 'kitchens', kitchen)) return fail({ kind: 'unknown-entry', root: 'kitchens', id: kitchen })
  const before: unknown = doc.getMap('evening').get('host')
  if (before === kitchen) return ok(null)
  doc.transact(() => {
    setEvening(doc, { host: kitchen })
    setFields(doc, 'kitchens', kitchen, { toTable: 'PT0S', toTableMost: undefined })
    if (typeof before !== 'string') return
    setFields(doc, 'kitchens', before, { toTable: USUAL_WAY, toTableMost: undefined })
    const carried = carriedDishes(doc)
    for (const [id, dish] of doc.getMap('dishes').entries())
      if (dish instanceof Y.Map && dish.get('kitchen') === before && !carried.has(id)) setFields(doc, 'dishes', id, { kitchen })
  })
  return ok(null)
}

const carriedDishes = (doc: Y.Doc): ReadonlySet<unknown> =>
  new Set(
    [...doc.getMap('steps').values()].flatMap((step) =>
      step instanceof Y.Map && step.get('role') === 'carry' && step.get('gone') !== true ? [step.get('dish')] : [],
    ),
  )
