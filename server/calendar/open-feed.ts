import { alarmOf } from '#lib/domain/calendar-alarm.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { seatOf } from '#server/auth/seat.ts'
import { canHaveCalendar } from '#server/evenings/may.ts'
import type { FindRefusal } from '#server/guests/find.ts'
import { isOver, summaryOf } from '#server/guests/table.ts'
import { hashOf } from '#server/guests/token.ts'
import { live } from '#server/live.ts'
import { storedOrders } from '#server/planner/order-store.ts'

/** All that a calendar is made of: the plan as it stands and the order that was stored last. Guests are not in the plan. */
export interface Fed {
  readonly eveningId: string
  readonly memberId: string
  /** Which cook of the plan this is; null: none of them. */
  readonly cook: string | null
  readonly alarm: number | null
  readonly evening: Evening
  /** null: it has not been planned yet. */
  readonly order: RunningOrder | null
}

/** What an address of a calendar opens. One that never was, was replaced, was taken back or has run out is "unknown", all alike. */
export const openFeed = async (token: string, from: string): Promise<Result<Fed, FindRefusal>> => {
  const { db, limits } = live()
  const seconds = await limits.wait('reply', from)
  if (seconds > 0) return fail({ kind: 'too-many-tries', seconds })
  const hash = hashOf(token)
  const found =
    hash === null
      ? null
      : await db.calendarFeed.findUnique({
          where: { tokenHash: hash },
          include: { member: { include: { evening: { select: { summary: true, deletedAt: true } } } } },
        })
  if (found && !found.member.revokedAt && !found.member.evening.deletedAt && !isOver(summaryOf(found.member.evening.summary))) {
    const often = await limits.try('calendar', found.memberId)
    if (often > 0) return fail({ kind: 'too-many-tries', seconds: often })
    const { eveningId, cook } = found.member
    return ok(await fedOf(eveningId, found.memberId, cook, found.alarm))
  }
  await limits.try('reply', from)
  return fail({ kind: 'unknown' })
}

/** The same for somebody who is signed in and takes it away as a file. */
export const seatFed = async (userId: string, eveningId: string): Promise<Result<Fed, { readonly kind: 'not-found' }>> => {
  const seat = await seatOf(userId, eveningId)
  if (!canHaveCalendar(seat)) return fail({ kind: 'not-found' })
  const feed = await live().db.calendarFeed.findUnique({ where: { memberId: seat.memberId } })
  return ok(await fedOf(eveningId, seat.memberId, seat.cook, alarmOf(feed)))
}

const fedOf = async (eveningId: string, memberId: string, cook: string | null, alarm: number | null): Promise<Fed> => {
  const { db, rooms } = live()
  const [evening, kept] = await Promise.all([rooms.read(eveningId), storedOrders(db).load(eveningId)])
  return { eveningId, memberId, cook, alarm, evening, order: kept?.order ?? null }
}
