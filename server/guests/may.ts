import { fail, ok, type Result } from '#lib/domain/result.ts'
import { seatOf } from '#server/auth/seat.ts'
import { canReadEvening, canSeeGuests } from '#server/evenings/may.ts'
import type { Seat } from '#server/live.ts'
import type { GuestRefusal } from './refusal.ts'

/** The seat of a host of this evening; to who has no seat there is no such evening. */
export const requireHost = async (userId: string, eveningId: string): Promise<Result<Seat, GuestRefusal>> => {
  const seat = await seatOf(userId, eveningId)
  if (!canReadEvening(seat)) return fail({ kind: 'not-found' })
  return canSeeGuests(seat) ? ok(seat) : fail({ kind: 'not-allowed' })
}
