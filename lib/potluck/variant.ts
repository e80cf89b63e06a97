import { durationOf, secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Offer } from '#lib/domain/offer.ts'
import { usualHeat } from './usual.ts'
import { isFromElsewhere, worstWay } from './way.ts'

/** A form in which an offer may be tried. */
export type Variant =
  | { readonly kind: 'as-offered' }
  /** Carried cold and heated at the host's. */
  | { readonly kind: 'cold' }
  /** Heated on a ring at the host's and not in the oven. */
  | { readonly kind: 'ring' }
  /** Heated at home last thing, and carried hot in the box it has. */
  | { readonly kind: 'hot' }
  /** Its cook comes so much sooner. */
  | { readonly kind: 'earlier'; readonly by: string }

export const AS_OFFERED: Variant = { kind: 'as-offered' }

/** A pan on the hob; common practice, no source. */
const PAN = 'medium'

/**
 * The forms to try, in the order in which they are proposed: as offered first, then what changes least for its cook. Things have the one.
 */
export const variantsOf = (evening: Evening, offer: Offer): readonly Variant[] => {
  if (offer.kind === 'thing') return [AS_OFFERED]
  const isHot = offer.how === 'hot' || offer.how === 'warm'
  const carried = isFromElsewhere(evening, offer)
  const heats = offer.arrives === 'to-heat' || offer.atHost?.shelves !== undefined
  const staysHot =
    offer.box !== undefined && secondsOf(offer.box.most) >= worstWay(evening, offer.kitchen) && offer.home !== undefined
  return [
    AS_OFFERED,
    ...(isHot && carried ? [{ kind: 'cold' } as const] : []),
    ...(heats && offer.atHost?.ring === undefined ? [{ kind: 'ring' } as const] : []),
    ...(carried && !isHot && offer.arrives === 'to-heat' && staysHot ? [{ kind: 'hot' } as const] : []),
    ...(carried ? [1800, 3600].map((seconds) => ({ kind: 'earlier', by: durationOf(seconds) }) as const) : []),
  ]
}

/** The offer in that form. What is carried cold is heated through at the host's; what its box says of hot food says nothing of cold. */
export const formOf = (offer: Offer, variant: Variant): Offer => {
  switch (variant.kind) {
    case 'as-offered':
    case 'earlier':
      return offer
    case 'cold': {
      const { box: _hotBox, ...rest } = offer
      const atHost = offer.atHost ?? {}
      return {
        ...rest,
        how: 'cold',
        arrives: 'to-heat',
        atHost: {
          ...atHost,
          heat: atHost.heat ?? usualHeat(offer.portions),
          cold: atHost.cold ?? 1,
          ...(atHost.shelves === undefined && atHost.ring === undefined ? { shelves: 1 } : {}),
        },
      }
    }
    case 'ring': {
      const { shelves: _shelves, lowC: _lowC, highC: _highC, ...atHost } = offer.atHost ?? {}
      return { ...offer, atHost: { ...atHost, ring: PAN, heat: atHost.heat ?? usualHeat(offer.portions) } }
    }
    case 'hot': {
      const {
        shelves: _shelves,
        lowC: _lowC,
        highC: _highC,
        ring: _ring,
        heat: _heat,
        cold: _cold,
        ...atHost
      } = offer.atHost ?? {}
      const { atHost: _atHost, ...rest } = offer
      return { ...rest, how: 'hot', arrives: 'ready', ...(Object.keys(atHost).length > 0 ? { atHost } : {}) }
    }
  }
}
