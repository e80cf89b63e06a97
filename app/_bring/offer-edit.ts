import type { Evening } from '#lib/domain/evening.ts'
import type { Arrives, AtHost, Offer } from '#lib/domain/offer.ts'
import { coversOf } from '#lib/domain/portions.ts'
import { spanFromUsual } from '#lib/domain/usual-span.ts'
import type { Offered } from '#lib/plan/commands/offer.ts'

/** A change of an offer: fields that are undefined are taken out. */
export type OfferPatch = {
  readonly [field in keyof Omit<Offer, 'id' | 'order' | 'kind' | 'state' | 'withdrawn' | 'why' | 'dish'>]?:
    | Offer[field]
    | undefined
}

/** An offer with a change of it. */
export const patched = (offer: Offer, patch: OfferPatch): Offer => {
  const said = Object.fromEntries(Object.entries({ ...offer, ...patch }).filter(([, value]) => value !== undefined))
  return said as unknown as Offer
}

/** What of a draft is said to the others. */
export const offeredOf = ({ order: _, state: __, ...offered }: Offer): Offered => offered

/** What is carried cold wants a place in the fridge; what is not does not. */
const usualCold = (how: Offer['how']): number | undefined => (how === 'cold' ? 1 : undefined)

/** How long a box is taken to hold, in seconds, until its owner says otherwise. Common practice, no source. */
const BOX_SECONDS = 2 * 3600
export const usualBox = (how: Offer['how']): NonNullable<Offer['box']> => ({
  name: how === 'hot' || how === 'warm' ? 'an insulated bag' : 'a cool box',
  most: spanFromUsual(BOX_SECONDS).likely,
})

export const OVEN: Pick<AtHost, 'shelves' | 'lowC' | 'highC'> = { shelves: 1, lowC: 160, highC: 190 }
export const RING: Pick<AtHost, 'ring'> = { ring: 'medium' }
const HEAT = spanFromUsual(25 * 60)
const FINISH = spanFromUsual(10 * 60)

/** Fields without a value left out; null when nothing is left. */
const trimmed = (atHost: { readonly [field in keyof AtHost]?: AtHost[field] | undefined }): AtHost | undefined => {
  const said = Object.fromEntries(Object.entries(atHost).filter(([, value]) => value !== undefined)) as AtHost
  return Object.keys(said).length > 0 ? said : undefined
}

export const withAtHost = (
  offer: Offer,
  patch: { readonly [field in keyof AtHost]?: AtHost[field] | undefined },
): OfferPatch => ({
  atHost: trimmed({ ...offer.atHost, ...patch }),
})

/** It arrives in another state: what that asks of the host's kitchen comes along, what it no longer asks goes. */
export const withArrives = (offer: Offer, arrives: Arrives): OfferPatch => {
  const { atHost } = offer
  const heats = arrives === 'to-heat'
  const works = arrives === 'to-finish' || arrives === 'to-assemble'
  const kit = heats && atHost?.shelves === undefined && atHost?.ring === undefined ? OVEN : {}
  return {
    arrives,
    ...withAtHost(offer, {
      ...(heats ? kit : { shelves: undefined, lowC: undefined, highC: undefined, ring: undefined }),
      heat: heats ? (atHost?.heat ?? HEAT) : undefined,
      finish: works ? (atHost?.finish ?? FINISH) : undefined,
    }),
  }
}

/** It is carried otherwise: in another box, and with or without the fridge at its end. */
export const withHow = (offer: Offer, how: Offer['how']): OfferPatch => ({
  how,
  ...withAtHost(offer, { cold: usualCold(how) }),
  ...(offer.box ? { box: { ...usualBox(how), most: offer.box.most } } : {}),
})

/** The kitchen of a cook that is not beside the table, if the plan knows one: where they are, or where they brought from before. */
export const homeOf = (evening: Evening, cook: string | null): string | undefined => {
  const stays = evening.cooks.find(({ id }) => id === cook)?.presence ?? []
  const before = (evening.offers ?? []).flatMap((offer) => (offer.cook === cook ? (offer.kitchen ?? []) : []))
  return [...stays.map(({ kitchen }) => kitchen), ...before].find(
    (kitchen) => kitchen !== evening.host && evening.kitchens.some(({ id }) => id === kitchen),
  )
}

/** It comes from this home. */
export const withHome = (kitchen: string): OfferPatch => ({ kitchen })

/** What a cook who has said nothing yet would bring: food for everybody to this course, cold, from their home. */
export const newDish = (evening: Evening, cook: string, id: string, course: string | undefined): Offer => {
  const kitchen = homeOf(evening, cook)
  return {
    id,
    order: '0',
    cook,
    kind: 'dish',
    name: '',
    ...(course === undefined ? {} : { course }),
    ...(kitchen === undefined ? {} : { kitchen }),
    portions: course === undefined ? evening.covers : coversOf(evening, course),
    arrives: 'ready',
    how: 'cold',
    atHost: { cold: 1 },
    state: 'offered',
  }
}

/** The same of what is not food. */
export const newThing = (
  evening: Evening,
  cook: string,
  id: string,
  thing: NonNullable<Offer['thing']>,
  count: number,
): Offer => {
  const kitchen = homeOf(evening, cook)
  return {
    id,
    order: '0',
    cook,
    kind: 'thing',
    name: '',
    thing,
    ...(kitchen === undefined ? {} : { kitchen }),
    portions: count,
    arrives: 'ready',
    how: thing === 'ice' ? 'frozen' : 'room',
    state: 'offered',
  }
}
