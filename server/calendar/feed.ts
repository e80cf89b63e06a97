import { ALARMS, alarmOf, USUAL_ALARM } from '#lib/domain/calendar-alarm.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import { seatOf } from '#server/auth/seat.ts'
import { canHaveCalendar } from '#server/evenings/may.ts'
import { isOver, summaryOf } from '#server/guests/table.ts'
import { hashOf, newToken } from '#server/guests/token.ts'
import { live } from '#server/live.ts'

/** What somebody may know of their own feed: not its address, which is shown once and stored nowhere. */
export interface FeedState {
  readonly isOn: boolean
  /** Minutes before each entry; null: the calendar does not call. */
  readonly alarm: number | null
}

export type FeedRefusal = { readonly kind: 'not-found' } | { readonly kind: 'not-a-choice' } | { readonly kind: 'over' }

export const feedOf = async (userId: string, eveningId: string): Promise<Result<FeedState, FeedRefusal>> => {
  const seat = await seatOf(userId, eveningId)
  if (!canHaveCalendar(seat)) return fail({ kind: 'not-found' })
  const feed = await live().db.calendarFeed.findUnique({ where: { memberId: seat.memberId } })
  return ok({ isOn: typeof feed?.tokenHash === 'string', alarm: alarmOf(feed) })
}

/** A new address for this person's calendar; the one before opens nothing when this is stored. */
export const makeFeed = async (userId: string, eveningId: string): Promise<Result<{ readonly path: string }, FeedRefusal>> => {
  const seat = await seatOf(userId, eveningId)
  if (!canHaveCalendar(seat)) return fail({ kind: 'not-found' })
  const { db } = live()
  const { summary } = await db.evening.findUniqueOrThrow({ where: { id: eveningId }, select: { summary: true } })
  // It would open nothing.
  if (isOver(summaryOf(summary))) return fail({ kind: 'over' })
  const token = newToken()
  const { memberId } = seat
  const fresh = { tokenHash: hashOf(token), madeAt: new Date(), revokedAt: null }
  await db.calendarFeed.upsert({
    where: { memberId },
    create: { memberId, alarm: USUAL_ALARM, ...fresh },
    update: fresh,
  })
  return ok({ path: `/calendar/${token}.ics` })
}

/** The address opens nothing any more. */
export const revokeFeed = async (userId: string, eveningId: string): Promise<Result<null, FeedRefusal>> => {
  const seat = await seatOf(userId, eveningId)
  if (!canHaveCalendar(seat)) return fail({ kind: 'not-found' })
  await live().db.calendarFeed.updateMany({
    where: { memberId: seat.memberId },
    data: { tokenHash: null, revokedAt: new Date() },
  })
  return ok(null)
}

/** When the calendar calls: minutes before each entry, or not at all. */
export const setAlarm = async (userId: string, eveningId: string, alarm: number | null): Promise<Result<null, FeedRefusal>> => {
  const seat = await seatOf(userId, eveningId)
  if (!canHaveCalendar(seat)) return fail({ kind: 'not-found' })
  if (alarm !== null && !ALARMS.includes(alarm)) return fail({ kind: 'not-a-choice' })
  const { memberId } = seat
  await live().db.calendarFeed.upsert({ where: { memberId }, create: { memberId, alarm }, update: { alarm } })
  return ok(null)
}
