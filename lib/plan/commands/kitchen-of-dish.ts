import type * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import type { Step } from '#lib/domain/menu.ts'
import { fail, ok } from '#lib/domain/result.ts'
import { wayFrom } from '#lib/domain/way-from.ts'
import { addStep } from './add.ts'
import { setLag } from './method.ts'
import { remove } from './remove.ts'
import { type Edited, setFields } from './set.ts'

type Around = Pick<Evening, 'host' | 'kitchens' | 'dishes' | 'steps'>

/** The step that carries a dish: it waits for all that is made, stands behind it, and what is finished at the host's waits for it. */
const carryStep = (around: Around, dish: string, kitchen: string, id: string, does: string): Omit<Step, 'order'> => {
  const made = around.steps.filter((step) => step.dish === dish && step.role === 'make')
  const waitedFor = new Set(made.flatMap((step) => step.after.map((after) => after.step)))
  return {
    id,
    dish,
    does,
    role: 'carry',
    where: 'outside',
    ways: [{ care: 'hands-on', cooks: 1, takes: wayFrom(around, kitchen), touches: [], uses: [] }],
    after: made
      .filter((step) => !waitedFor.has(step.id))
      .slice(-20)
      .map((step) => ({ step: step.id, from: 'end', least: 'PT0S', kind: 'quality' })),
  }
}

/**
 * Makes a dish in another kitchen: away from the host's it gets a step that carries it, if it has none, and a limit of an hour on the
 * road; back at the host's both go. One update; nothing changes when it is refused.
 */
export const setDishKitchen = (
  doc: Y.Doc,
  around: Around,
  dish: string,
  kitchen: string,
  carry: { readonly id: string; readonly does: string },
): Edited => {
  const found = around.dishes.find((each) => each.id === dish)
  if (!found) return fail({ kind: 'unknown-entry', root: 'dishes', id: dish })
  if (!around.kitchens.some((each) => each.id === kitchen)) return fail({ kind: 'unknown-entry', root: 'kitchens', id: kitchen })
  const own = around.steps.filter((step) => step.dish === dish)
  const carries = own.filter((step) => step.role === 'carry')
  return doc.transact(() => {
    if (kitchen === around.host) {
      for (const step of carries) remove(doc, 'steps', step.id)
      return setFields(doc, 'dishes', dish, { kitchen, carry: undefined })
    }
    if (carries.length === 0) {
      const last = own.findLast((step) => step.role === 'make')
      const made = addStep(
        doc,
        carryStep(around, dish, kitchen, carry.id, carry.does),
        last ? { kind: 'after', id: last.id } : { kind: 'first' },
      )
      if (!made.ok) return made
      const next = own.find((step) => step.role === 'finish' || step.role === 'plate')
      if (next) {
        const waits = setLag(doc, next.id, { step: carry.id, from: 'end', least: 'PT0S', kind: 'quality' })
        if (!waits.ok) return waits
      }
    }
    const written = setFields(doc, 'dishes', dish, {
      kitchen,
      carry: found.carry ?? { how: found.keeps.how, most: 'PT1H', kind: 'quality' },
    })
    return written.ok ? ok(null) : written
  })
}
