import type * as Y from 'yjs'
import { saysOf } from '#app/_words/offer-steps.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Offer } from '#lib/domain/offer.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import type { EditFault } from '#lib/plan/commands/fault.ts'
import { acceptOffer } from '#lib/plan/commands/offer.ts'
import { setPresence } from '#lib/plan/commands/presence.ts'
import { type Become, become } from '#lib/potluck/become.ts'
import { earlierHours, hoursLack, hoursOf } from '#lib/potluck/hours.ts'
import { formOf, type Variant } from '#lib/potluck/variant.ts'

/** What an accepted offer came to: its dish, and the steps that are its cook's alone, to be claimed for them; null for a thing. */
export type Came = Pick<Become, 'own'> & { readonly dish: string }

/**
 * Says yes to an offer in one of its forms: also what a trial runs on a copy. Where the cook has given no hours at home or at the host's, they
 * get the usual ones, so that the order can tell when to leave; for `earlier` they come so much sooner.
 */
export const acceptAs = (
  doc: Y.Doc,
  evening: Evening,
  offer: Offer,
  variant: Variant,
  newId: () => string,
): Result<Came | null, EditFault> =>
  doc.transact((): Result<Came | null, EditFault> => {
    const made = become(evening, offer, variant, { newId, says: saysOf(evening, offer, formOf(offer, variant), variant) })
    if (offer.kind === 'dish' && made === null)
      return fail({ kind: 'refused', refusals: [{ path: 'course', kind: 'unknown-id', why: 'say for which course it is' }] })
    const accepted = acceptOffer(doc, offer.id, made)
    if (!accepted.ok) return accepted
    const lacks = hoursLack(evening, offer)
    const hours = lacks === 'home' || lacks === 'host' ? hoursOf(evening, offer) : null
    const wanted = variant.kind === 'earlier' ? earlierHours(evening, offer, variant.by, hours) : hours
    const written = wanted ? setPresence(doc, offer.cook, wanted) : ok(null)
    if (!written.ok) return written
    return ok(made ? { dish: made.brought.dish.id, own: made.own } : null)
  })
