import type { Offer } from '#lib/domain/offer.ts'
import { mapKept } from './tidy.ts'

type Ids = ReadonlySet<string>
interface Known {
  /** Ids that are read, and those that somebody removed. */
  readonly there: Ids
  readonly removed: Ids
}

const NOUN = { course: 'course', kitchen: 'kitchen', dish: 'dish' } as const

/**
 * What offers name is there: a course, a home and a dish that are not are left out, without a word when they were removed. Food that was
 * accepted and whose dish was removed is offered again: nobody brings what is in no plan.
 */
export const repairOffers = (
  offers: Offer[],
  known: { readonly [part in keyof typeof NOUN]: Known },
  report: (why: string) => void,
): Offer[] =>
  mapKept(offers, (offer) => {
    let kept = offer
    for (const part of ['course', 'kitchen', 'dish'] as const) {
      const id = offer[part]
      if (id === undefined || known[part].there.has(id)) continue
      if (!known[part].removed.has(id)) report(`The ${NOUN[part]} of the offer "${offer.id}" is not there.`)
      const { [part]: _lost, ...rest } = kept
      kept = rest
    }
    return kept.kind === 'dish' && kept.state === 'accepted' && kept.dish === undefined ? { ...kept, state: 'offered' } : kept
  })
