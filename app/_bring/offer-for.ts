import { ideaText } from '#app/_words/missing.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Offer } from '#lib/domain/offer.ts'
import type { Missing } from '#lib/potluck/missing.ts'
import { newDish, newThing } from './offer-edit.ts'

/** What a cook would offer for it in one tap: a kind of food by its kind's name, or so many of what is counted. Null where nobody can. */
export const offerFor = (evening: Evening, cook: string, missing: Missing, id: string): Offer | null => {
  switch (missing.kind) {
    case 'dish':
    case 'portions':
    case 'need': {
      const dish = newDish(evening, cook, id, missing.course)
      const portions =
        missing.kind === 'dish' ? missing.want : missing.kind === 'portions' ? missing.want - missing.have : missing.need.guests
      return {
        ...dish,
        name: ideaText(missing.idea),
        portions,
        ...(missing.kind === 'need' ? { suits: [missing.need.need] } : {}),
      }
    }
    case 'thing':
      return newThing(evening, cook, id, missing.thing, missing.want - missing.have)
    case 'not-said':
      return newThing(evening, cook, id, missing.thing, missing.want)
    case 'tool': {
      const { thing: _, ...other } = newThing(evening, cook, id, 'plates', missing.count)
      return { ...other, name: missing.tool }
    }
    case 'needs-unknown':
      return null
  }
}
