import type { Arrives, Offer, stateOf, TableThing } from '#lib/domain/offer.ts'

/** In what state it comes, after "It comes cold and". */
export const arrivesWords: Readonly<Record<Arrives, string>> = {
  ready: 'ready to serve',
  'to-heat': 'to be heated',
  'to-finish': 'to be finished',
  'to-assemble': 'to be put together',
}

/** What is counted, after a number. */
export const thingWords: Readonly<Record<TableThing, string>> = {
  chairs: 'chairs',
  plates: 'plates',
  glasses: 'glasses',
  cutlery: 'sets of cutlery',
  ice: 'kilos of ice',
}

/** How an offer stands, after its name. */
export const offerStateWords: Readonly<Record<ReturnType<typeof stateOf>, string>> = {
  offered: 'on offer',
  accepted: 'it is wanted',
  declined: 'not this time',
  withdrawn: 'does not come after all',
}

/** What an offer is called: its own words, or what it counts. */
export const offerName = ({ name, thing, portions }: Pick<Offer, 'name' | 'thing' | 'portions'>): string =>
  thing === undefined ? name || 'something without a name' : `${portions} ${thingWords[thing]}`
