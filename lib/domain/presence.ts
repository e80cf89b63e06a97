import type { Presence } from './kitchen.ts'
import { type EveningClock, epochMsOf } from './time.ts'

/** What is wrong with a cook's hours: a stretch that ends before it begins, or two at once. Indices into the list. */
export type PresenceFault =
  | { readonly kind: 'backwards'; readonly index: number }
  | { readonly kind: 'overlap'; readonly index: number; readonly other: number }

/** The first fault of a cook's hours, in the list's order; null when there is none. One may end as the next begins. */
export const presenceFault = (clock: EveningClock, presence: readonly Pick<Presence, 'from' | 'to'>[]): PresenceFault | null => {
  const spans = presence.map(({ from, to }) => ({ from: epochMsOf(clock, from), to: epochMsOf(clock, to) }))
  for (const [index, { from, to }] of spans.entries()) {
    if (from >= to) return { kind: 'backwards', index }
    const other = spans.findIndex((earlier, at) => at < index && earlier.from < to && from < earlier.to)
    if (other >= 0) return { kind: 'overlap', index, other }
  }
  return null
}

interface Stretch {
  readonly from: number
  readonly to: number
}

/** What is left of stretches of time beside those in which somebody is busy, in their order. */
export const besideBusy = <T extends Stretch>(stretches: readonly T[], busy: readonly Stretch[]): T[] =>
  busy.reduce<T[]>(
    (left, { from, to }) =>
      left.flatMap((one) =>
        to <= one.from || from >= one.to
          ? [one]
          : [
              { ...one, to: from },
              { ...one, from: to },
            ].filter((part) => part.from < part.to),
      ),
    [...stretches],
  )

/** The hours by when they begin. */
export const presenceInOrder = (clock: EveningClock, presence: readonly Presence[]): Presence[] =>
  presence.toSorted((a, b) => epochMsOf(clock, a.from) - epochMsOf(clock, b.from))

/** Hours as a host of the evening has them: all of the day before, and the day itself until everybody has gone home. */
export const usualPresence = (kitchen: string): Presence[] => [
  { kitchen, from: { day: -1, time: '09:00' }, to: { day: -1, time: '22:00' } },
  { kitchen, from: { day: 0, time: '08:00' }, to: { day: 1, time: '02:00' } },
]
