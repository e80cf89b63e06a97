import type * as Y from 'yjs'
import type { Busy, Presence } from '#lib/domain/kitchen.ts'
import { presenceFault, presenceInOrder } from '#lib/domain/presence.ts'
import { fail } from '#lib/domain/result.ts'
import { type EveningClock, epochMsOf } from '#lib/domain/time.ts'
import { EVENING_FIELDS } from '#lib/plan/layout.ts'
import { refusedFor } from './fault.ts'
import { type Edited, setFields } from './set.ts'

const clockOf = (doc: Y.Doc): EveningClock => {
  const own = doc.getMap('evening')
  const [date, zone] = [EVENING_FIELDS.date.safeParse(own.get('date')), EVENING_FIELDS.zone.safeParse(own.get('zone'))]
  return { date: date.data ?? '2000-01-01', zone: zone.data ?? 'UTC' }
}

/** Says when and where a cook is there, in the order of the clock. Hours that end before they begin or overlap are refused. */
export const setPresence = (doc: Y.Doc, cook: string, presence: readonly Presence[]): Edited => {
  const clock = clockOf(doc)
  const fault = presenceFault(clock, presence)
  if (fault === null) return setFields(doc, 'cooks', cook, { presence: presenceInOrder(clock, presence) })
  return fail(
    fault.kind === 'backwards'
      ? refusedFor(`presence[${fault.index}]`, 'must end after it begins')
      : refusedFor(`presence[${fault.index}]`, 'must not overlap other hours of the same cook'),
  )
}

/** Says when something else keeps a cook, such as bedtime; none takes all of it away. What ends before it begins is refused. */
export const setBusy = (doc: Y.Doc, cook: string, busy: readonly Busy[]): Edited => {
  const clock = clockOf(doc)
  const backwards = busy.findIndex(({ from, to }) => epochMsOf(clock, from) >= epochMsOf(clock, to))
  if (backwards >= 0) return fail(refusedFor(`busy[${backwards}]`, 'must end after it begins'))
  return setFields(doc, 'cooks', cook, { busy: busy.length > 0 ? [...busy] : undefined })
}
