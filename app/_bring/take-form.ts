import type * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import type { Offer } from '#lib/domain/offer.ts'
import { fail } from '#lib/domain/result.ts'
import { refusedFor } from '#lib/plan/commands/fault.ts'
import { changeOffer } from '#lib/plan/commands/offer.ts'
import { setPresence } from '#lib/plan/commands/presence.ts'
import type { Edited } from '#lib/plan/commands/set.ts'
import { earlierHours } from '#lib/potluck/hours.ts'
import { formOf, type Variant } from '#lib/potluck/variant.ts'
import type { OfferPatch } from './offer-edit.ts'

/** What of an offer is otherwise in that form. */
export const formPatch = (offer: Offer, variant: Variant): OfferPatch => {
  const { arrives, how, box, atHost } = formOf(offer, variant)
  return { arrives, how, box, atHost }
}

/** Its cook comes so much sooner. */
export const comeEarlier = (doc: Y.Doc, evening: Evening, offer: Offer, by: string): Edited => {
  const hours = earlierHours(evening, offer, by, null)
  return hours
    ? setPresence(doc, offer.cook, hours)
    : fail(refusedFor('presence', 'leave no time at home: change the hours first'))
}

/** Its cook offers it in that form from now on. */
export const takeForm = (doc: Y.Doc, evening: Evening, offer: Offer, variant: Variant): Edited =>
  variant.kind === 'earlier'
    ? comeEarlier(doc, evening, offer, variant.by)
    : changeOffer(doc, offer.id, formPatch(offer, variant))
