import type * as Y from 'yjs'
import type { At } from '#lib/domain/atoms.ts'
import { durationOf, secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Cook, Kitchen, Presence } from '#lib/domain/kitchen.ts'
import { DEFAULT_TEMPLATE, templateKit } from '#lib/domain/kitchen-templates.ts'
import { epochMsOf } from '#lib/domain/time.ts'
import { addKitchen } from '#lib/plan/commands/add.ts'
import { setPresence } from '#lib/plan/commands/presence.ts'
import type { Edited } from '#lib/plan/commands/set.ts'
import { hoursOf } from '#lib/potluck/hours.ts'

/** How far a home is until its cook says otherwise, likely and at worst. */
const USUAL_WAY = 'PT20M'
const USUAL_MOST = 'PT30M'

/** A cook's day away from the host's kitchen: the hours at home, and the next ones at the host's. */
export interface HomeDay {
  readonly home: Presence
  readonly host: Presence
}

/** The last hours at home that others at the host's follow; null when there is no such pair. */
export const homeDayOf = (evening: Evening, cook: Cook, kitchen: string): HomeDay | null => {
  for (const home of cook.presence.toReversed()) {
    if (home.kitchen !== kitchen) continue
    const host = cook.presence.find((stay) => stay.kitchen === evening.host && isBefore(evening, home.to, stay.from))
    if (host) return { home, host }
  }
  return null
}

const isBefore = (evening: Evening, first: At, then: At): boolean => epochMsOf(evening, first) <= epochMsOf(evening, then)

/** The home of a cook as a kitchen of the plan, with hours there before those at the host's: one edit. */
export const addHome = (doc: Y.Doc, evening: Evening, cook: Cook, id: string, newId: () => string): Edited => {
  const kitchen: Kitchen = {
    id,
    name: cook.name === '' ? 'My kitchen' : `${cook.name}’s kitchen`.slice(0, 80),
    toTable: USUAL_WAY,
    toTableMost: USUAL_MOST,
    kit: templateKit(DEFAULT_TEMPLATE, newId),
  }
  return doc.transact(() => {
    const added = addKitchen(doc, kitchen)
    return added.ok
      ? setPresence(
          doc,
          cook.id,
          hoursOf({ ...evening, kitchens: [...evening.kitchens, kitchen] }, { cook: cook.id, kitchen: id }),
        )
      : added
  })
}

/** Hours for a home that the plan knows and has no hours at. */
export const addHomeDay = (doc: Y.Doc, evening: Evening, cook: Cook, kitchen: Kitchen): Edited =>
  setPresence(doc, cook.id, hoursOf(evening, { cook: cook.id, kitchen: kitchen.id }))

/** The whole of the way at its likely length, or another; at worst it takes no less. */
export const setWay = (kitchen: Kitchen, patch: { readonly likely?: string; readonly most?: string }) => {
  const likely = patch.likely ?? kitchen.toTable
  const most = patch.most ?? kitchen.toTableMost
  const longer = most === undefined ? undefined : Math.max(secondsOf(most), secondsOf(likely))
  return { toTable: likely, toTableMost: longer === undefined ? undefined : durationOf(longer) }
}
