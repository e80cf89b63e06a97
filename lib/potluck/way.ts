import type { Span } from '#lib/domain/atoms.ts'
import { durationOf, secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Offer } from '#lib/domain/offer.ts'
import { spanFromUsual } from '#lib/domain/usual-span.ts'

const HALF_HOUR = 1800

/** Whether it comes from a home that is not the host's. */
export const isFromElsewhere = (evening: Pick<Evening, 'host' | 'kitchens'>, { kitchen }: Pick<Offer, 'kitchen'>): boolean =>
  kitchen !== undefined && kitchen !== evening.host && evening.kitchens.some(({ id }) => id === kitchen)

/** How long the way to the host's is: as the home says, its bad day where it tells one; half an hour where it says nothing. */
export const wayFrom = (evening: Pick<Evening, 'kitchens'>, kitchen: string | undefined): Span => {
  const found = evening.kitchens.find(({ id }) => id === kitchen)
  const likely = found === undefined ? 0 : secondsOf(found.toTable)
  const usual = spanFromUsual(likely > 0 ? likely : HALF_HOUR)
  const worst = found?.toTableMost === undefined ? 0 : secondsOf(found.toTableMost)
  return worst > 0 ? { ...usual, most: durationOf(Math.max(secondsOf(usual.likely), worst)) } : usual
}

/** Its seconds on a bad day. */
export const worstWay = (evening: Pick<Evening, 'kitchens'>, kitchen: string | undefined): number =>
  secondsOf(wayFrom(evening, kitchen).most)
