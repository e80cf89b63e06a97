import type * as Y from 'yjs'
import { durationOf } from '#lib/domain/duration.ts'
import { bySiblingOrder } from '#lib/domain/evening.ts'
import type { Step } from '#lib/domain/menu.ts'
import { fail } from '#lib/domain/result.ts'
import { entryMap, rootMap } from '#lib/plan/layout.ts'
import { readEntry } from '#lib/plan/read-entry.ts'
import { addStep } from './add.ts'
import { type Edited, setFields } from './set.ts'
import { presentEntry } from './siblings.ts'

/** What thaws, how long, and when it may go into the fridge. */
export interface Thawing {
  /** Of the new step. */
  readonly id: string
  readonly ingredient: string
  readonly does: string
  readonly hours: { readonly least: number; readonly likely: number; readonly most: number }
  readonly earliest: NonNullable<Step['earliest']>
}

/** Thawed food keeps a day longer in the fridge: somebody puts it in when it suits. */
const LONGER_HOURS = 24

/** A step in the fridge before the step that uses the food, or before the dish's first one. One update. */
export const addThaw = (doc: Y.Doc, { id, ingredient, does, hours, earliest }: Thawing): Edited => {
  const map = presentEntry(doc, 'ingredients', ingredient)
  const reading = map ? readEntry('ingredients', ingredient, map) : null
  if (reading?.kind !== 'whole') return fail({ kind: 'unknown-entry', root: 'ingredients', id: ingredient })
  const { dish, step } = reading.entry
  const own = stepsOf(doc, dish)
  const user = own.find((each) => each.id === step) ?? own.find(({ role }) => role === 'make') ?? own[0]
  if (!user) return fail({ kind: 'unknown-entry', root: 'steps', id: dish })
  const of = (count: number) => durationOf(count * 3600)
  return doc.transact(() => {
    const added = addStep(
      doc,
      {
        id,
        dish,
        does,
        role: 'make',
        where: 'kitchen',
        ways: [
          {
            care: 'leave',
            cooks: 1,
            takes: { least: of(hours.least), likely: of(hours.likely), most: of(hours.most) },
            upTo: of(hours.most + LONGER_HOURS),
            touches: [
              { when: 'in', takes: 'PT2M', lateBy: 'PT0S' },
              { when: 'out', takes: 'PT1M', lateBy: 'PT0S' },
            ],
            uses: [{ kind: 'cold', keep: 'cold', places: 1 }],
          },
        ],
        after: [],
        earliest,
      },
      { kind: 'first' },
    )
    if (!added.ok) return added
    const lag = { step: id, from: 'end', least: 'PT0S', most: 'PT1H', kind: 'safety' } as const
    return setFields(doc, 'steps', user.id, { after: [...user.after, lag] })
  })
}

const stepsOf = (doc: Y.Doc, dish: string): readonly Step[] =>
  [...(rootMap(doc, 'steps')?.keys() ?? [])]
    .flatMap((id) => {
      const map = entryMap(doc, 'steps', id)
      const reading = map ? readEntry('steps', id, map) : null
      return reading?.kind === 'whole' && reading.entry.dish === dish ? [reading.entry] : []
    })
    .toSorted(bySiblingOrder)
