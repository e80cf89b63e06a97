import type { Evening } from '#lib/domain/evening.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { seatOf } from '#server/auth/seat.ts'
import { live } from '#server/live.ts'
import { storedOrders } from '#server/planner/order-store.ts'
import { canReadEvening } from './may.ts'
import type { EveningRefusal } from './refusal.ts'

export interface ReadEvening {
  readonly evening: Evening
  /** The last one that was planned; it may be of an earlier plan. */
  readonly order: RunningOrder | null
}

/** The evening as its cooks have it, without guests, and its running order: for those who have a seat. */
export const readEvening = async (userId: string, eveningId: string): Promise<Result<ReadEvening, EveningRefusal>> => {
  if (!canReadEvening(await seatOf(userId, eveningId))) return fail({ kind: 'not-found' })
  const { db, rooms } = live()
  const [evening, stored] = await Promise.all([rooms.read(eveningId), storedOrders(db).load(eveningId)])
  return ok({ evening, order: stored?.order ?? null })
}
