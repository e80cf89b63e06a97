import { doEntry, type EntryWords, eveningEntry, leaveEntry, shoppingEntry } from '#app/_words/calendar.ts'
import { namesOf } from '#app/_words/names.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { dateOfDay, epochMsOf, msOfInstant } from '#lib/domain/time.ts'
import { doingsOf } from '#lib/night/sheet.ts'
import { discreet } from './discreet.ts'
import { shoppingDays } from './shopping-days.ts'

/** An entry of a cook's calendar. Instants in ms since 1970. */
export interface Entry extends EntryWords {
  /** The same for the same thing, whenever it is: calendars know it by this. */
  readonly uid: string
  readonly from: number
  readonly to: number
  /** It is of a whole day, yyyy-mm-dd where the evening is, and of no hour. */
  readonly date?: string
}

export interface Whose {
  readonly eveningId: string
  readonly memberId: string
  readonly cook: string | null
}

const USUAL_DINNER = 3 * 3_600_000

const eveningOf = (evening: Evening, order: RunningOrder | null): { readonly from: number; readonly to: number } => {
  const from = epochMsOf(evening, evening.guestsFrom)
  const sits = epochMsOf(evening, evening.sitDown)
  return { from, to: Math.max(sits + USUAL_DINNER, ...(order?.courses ?? []).map(({ platesOff }) => msOfInstant(platesOff))) }
}

/** From one kitchen to the next without anything to carry: when to leave so as to be there. */
const waysOf = (
  evening: Evening,
  order: RunningOrder | null,
  cook: string,
): readonly { to: string; from: number; by: number }[] => {
  const hours = evening.cooks.find(({ id }) => id === cook)?.presence ?? []
  const carries = (order?.cues ?? []).filter(
    (cue) => cue.cooks.includes(cook) && evening.steps.some(({ id, role }) => id === cue.step && role === 'carry'),
  )
  return hours
    .map(({ kitchen, from, to }) => ({ kitchen, from: epochMsOf(evening, from), to: epochMsOf(evening, to) }))
    .sort((a, b) => a.from - b.from)
    .flatMap((next, index, all) => {
      const before = all[index - 1]
      if (!before || before.kitchen === next.kitchen || next.from <= before.to) return []
      const isCarried = carries.some((cue) => msOfInstant(cue.start) >= before.to && msOfInstant(cue.start) <= next.from)
      const away = before.kitchen === evening.host ? next.kitchen : before.kitchen
      const way = secondsOf(evening.kitchens.find(({ id }) => id === away)?.toTable ?? 'PT0S') * 1000
      return isCarried ? [] : [{ to: next.kitchen, from: Math.max(before.to, next.from - way), by: next.from }]
    })
}

/** All that somebody's calendar holds of an evening: the evening itself, then what they do, days before as well. */
export const entriesOf = (plan: Evening, order: RunningOrder | null, { eveningId, memberId, cook }: Whose): readonly Entry[] => {
  const evening = discreet(plan)
  const names = namesOf(evening)
  const own = {
    uid: `${eveningId}.${memberId}.evening@tableward`,
    ...eveningOf(evening, order),
    ...eveningEntry(evening, order, names),
  }
  if (cook === null) return [own]
  const uidOf = (rest: string) => `${eveningId}.${cook}.${rest}@tableward`
  const doings = order === null ? [] : doingsOf(evening, order, cook)
  return [
    own,
    ...doings.map((line): Entry => {
      const { step, batch, touch } = line.task
      const what = line.what === 'touch' && touch ? `${touch.what}` : line.what
      return {
        uid: uidOf(`${step}.${batch}.${what}`),
        from: line.at,
        to: line.to,
        ...doEntry(line, cook, evening, names),
      }
    }),
    ...shoppingDays(evening, order, cook).map(({ day, lines }): Entry => {
      const from = epochMsOf(evening, { day, time: '00:00' })
      const to = epochMsOf(evening, { day: day + 1, time: '00:00' })
      return { uid: uidOf(`shopping.${day}`), from, to, date: dateOfDay(evening, day), ...shoppingEntry(lines) }
    }),
    ...waysOf(evening, order, cook).map(
      ({ to, from, by }, index): Entry => ({
        uid: uidOf(`way.${to}.${index}`),
        from,
        to: by,
        ...leaveEntry(to, by, evening, names),
      }),
    ),
  ]
}
