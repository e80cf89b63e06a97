'use server'

import { calendarRefusalText } from '#app/_words/calendar.ts'
import { requireUser } from '#server/auth/who.ts'
import { makeFeed, revokeFeed, setAlarm } from '#server/calendar/feed.ts'

/** The new address, or why there is none. */
export type MadeFeed = { readonly kind: 'made'; readonly path: string } | { readonly kind: 'refused'; readonly why: string }

/** What became of it: null when it was done, else why not. */
export type CalendarAnswer = string | null

export const makeFeedAction = async (eveningId: string): Promise<MadeFeed> => {
  const user = await requireUser()
  const made = await makeFeed(user.id, eveningId)
  return made.ok ? { kind: 'made', path: made.value.path } : { kind: 'refused', why: calendarRefusalText(made.error) }
}

export const revokeFeedAction = async (eveningId: string): Promise<CalendarAnswer> => {
  const user = await requireUser()
  const revoked = await revokeFeed(user.id, eveningId)
  return revoked.ok ? null : calendarRefusalText(revoked.error)
}

export const setAlarmAction = async (eveningId: string, alarm: number | null): Promise<CalendarAnswer> => {
  const user = await requireUser()
  const set = await setAlarm(user.id, eveningId, alarm)
  return set.ok ? null : calendarRefusalText(set.error)
}
