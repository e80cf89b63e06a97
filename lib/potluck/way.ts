import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Offer } from '#lib/domain/offer.ts'
import { wayFrom } from '#lib/domain/way-from.ts'

/** Whether it comes from a home that is not the host's. */
export const isFromElsewhere = (evening: Pick<Evening, 'host' | 'kitchens'>, { kitchen }: Pick<Offer, 'kitchen'>): boolean =>
  kitchen !== undefined && kitchen !== evening.host && evening.kitchens.some(({ id }) => id === kitchen)

/** Seconds of the way to the host's on a bad day. */
export const worstWay = (evening: Pick<Evening, 'kitchens'>, kitchen: string | undefined): number =>
  secondsOf(wayFrom(evening, kitchen).most)
