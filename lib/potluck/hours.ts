import type { At } from '#lib/domain/atoms.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Cook, Presence } from '#lib/domain/kitchen.ts'
import type { Offer } from '#lib/domain/offer.ts'
import { presenceInOrder } from '#lib/domain/presence.ts'
import { epochMsOf, wallTimeOfMs } from '#lib/domain/time.ts'
import { isFromElsewhere, worstWay } from './way.ts'

/** Hours that a cook has not given and that carrying needs: at the home, at the host's after it, and the way between them. */
export type HoursLack = 'home' | 'host' | 'way'

const FIRST_HOUR = '09:00'
const BED = '22:00'
const LAST: At = { day: 1, time: '02:00' }

const cookOf = (evening: Evening, offer: Pick<Offer, 'cook'>): Cook | undefined =>
  evening.cooks.find(({ id }) => id === offer.cook)

/**
 * What a cook's hours lack to carry something from its home to the host's: hours there, hours at the host's afterwards, and the way on a
 * bad day between the two. Null when nothing does.
 */
export const hoursLack = (evening: Evening, offer: Pick<Offer, 'cook' | 'kitchen'>): HoursLack | null => {
  if (!isFromElsewhere(evening, offer)) return null
  const presence = cookOf(evening, offer)?.presence ?? []
  const ends = presence.filter(({ kitchen }) => kitchen === offer.kitchen).map(({ to }) => epochMsOf(evening, to))
  if (ends.length === 0) return 'home'
  const begins = presence.filter(({ kitchen }) => kitchen === evening.host).map(({ from }) => epochMsOf(evening, from))
  if (!begins.some((from) => ends.some((to) => from >= to))) return 'host'
  const way = worstWay(evening, offer.kitchen) * 1000
  const isWide = ends.some((to) => {
    const next = Math.min(...begins.filter((from) => from >= to))
    return Number.isFinite(next) && next - to >= way
  })
  return isWide ? null : 'way'
}

const earlierBy = (evening: Evening, at: At, seconds: number): At =>
  wallTimeOfMs(evening, epochMsOf(evening, at) - seconds * 1000)

/** The usual hours of who comes from that home: there the day before and all day, on the way in time, at the host's from when the guests are expected. */
export const hoursOf = (evening: Evening, offer: Pick<Offer, 'cook' | 'kitchen'>): Presence[] => {
  const kitchen = offer.kitchen ?? evening.host
  if (!isFromElsewhere(evening, offer)) return [{ kitchen, from: { day: 0, time: FIRST_HOUR }, to: LAST }]
  const leave = earlierBy(evening, evening.guestsFrom, worstWay(evening, kitchen))
  return [
    { kitchen, from: { day: leave.day - 1, time: FIRST_HOUR }, to: { day: leave.day - 1, time: BED } },
    ...(leave.time > FIRST_HOUR ? [{ kitchen, from: { day: leave.day, time: FIRST_HOUR }, to: leave }] : []),
    { kitchen: evening.host, from: evening.guestsFrom, to: LAST },
  ]
}

/**
 * Hours in which the way that ends at the host's comes so much sooner: the home's end and the host's beginning move together. Null where the
 * home's hours would be over before they begin.
 */
export const earlierHours = (
  evening: Evening,
  offer: Pick<Offer, 'cook' | 'kitchen'>,
  by: string,
  from: readonly Presence[] | null,
): Presence[] | null => {
  const presence = presenceInOrder(evening, from ?? cookOf(evening, offer)?.presence ?? [])
  const host = presence.findIndex(
    (one, at) =>
      one.kitchen === evening.host && presence[at - 1]?.kitchen === offer.kitchen && presence[at - 1]?.to.day === one.from.day,
  )
  const [home, there] = [presence[host - 1], presence[host]]
  if (!home || !there) return null
  const seconds = secondsOf(by)
  const to = earlierBy(evening, home.to, seconds)
  if (epochMsOf(evening, to) <= epochMsOf(evening, home.from)) return null
  return presence.map((one) =>
    one === home ? { ...one, to } : one === there ? { ...one, from: earlierBy(evening, there.from, seconds) } : one,
  )
}
