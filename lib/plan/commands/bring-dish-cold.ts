import type * as Y from 'yjs'
import { bringCold, type ColdWay } from '#lib/domain/bring-cold.ts'
import { Step } from '#lib/domain/menu.ts'
import { fail } from '#lib/domain/result.ts'
import { readPlan } from '#lib/plan/read.ts'
import { entryContent } from '#lib/plan/write-evening.ts'
import { beyond, usedId } from './bring.ts'
import { refusedBy, refusedFor } from './fault.ts'
import { type Edited, setEach, setFields } from './set.ts'

/** What the steps are called: into the fridge at home, into the host's, and hot again there. */
export type ColdWords = Readonly<Record<'chill' | 'fridge' | 'heat', string>>

/** A dish is chilled at home, carried cold and heated at the host's, in one update; all of it or nothing. */
export const bringDishCold = (doc: Y.Doc, way: ColdWay, words: ColdWords): Edited => {
  const { evening } = readPlan(doc)
  if (!evening.dishes.some(({ id }) => id === way.dish)) return fail({ kind: 'unknown-entry', root: 'dishes', id: way.dish })
  const cold = bringCold(evening, way)
  if (!cold)
    return fail(refusedFor('carry', 'cannot be carried cold: a fridge at both ends and something to heat it on are needed'))
  const named = { [way.chill]: words.chill, [way.fridge]: words.fridge, [way.heat]: words.heat }
  const added = cold.added.map((step) => ({ ...step, does: named[step.id] ?? '' }))
  const refused = added.map((step) => Step.safeParse(step)).find(({ success }) => !success)
  const fault = refused?.error ? refusedBy(refused.error) : (usedId(doc, added) ?? beyond(doc, { steps: added.length }))
  if (fault) return fail(fault)
  return doc.transact(() => {
    for (const step of added) doc.getMap('steps').set(step.id, entryContent('steps', step))
    const waits = setEach(
      doc,
      'steps',
      cold.changed.map(({ id, ...patch }) => [id, patch] as const),
    )
    return waits.ok ? setFields(doc, 'dishes', way.dish, { carry: cold.carry }) : waits
  })
}
