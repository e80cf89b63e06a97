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
      return {
        ...dish,
        name: ideaText(missing.idea),
        portions: portionsFor(missing, dish.portions),
        ...(missing.kind === 'need' ? { suits: [...new Set(missing.needs.map(({ need }) => need))].slice(0, 20) } : {}),
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

/** One guest may have two of the needs, which nobody is told: enough for all of them, and never for more than eat the course. */
const portionsFor = (missing: Extract<Missing, { kind: 'dish' | 'portions' | 'need' }>, eaters: number): number => {
  switch (missing.kind) {
    case 'dish':
      return missing.want
    case 'portions':
      return missing.want - missing.have
    case 'need':
      return Math.min(
        eaters,
        missing.needs.reduce((sum, { guests }) => sum + guests, 0),
      )
  }
}
