import { dateAt, daysUntil } from '#lib/domain/time.ts'
import type { PrismaClient } from '#prisma/client/client.ts'
import { Summary } from '#server/evenings/summary.ts'
import type { Planner, Rooms } from '#server/live.ts'
import { type Clock, systemClock } from '#server/sync/clock.ts'
import { storedAlerts } from './alert-store.ts'
import { type OpenNights, startNights } from './nights.ts'

/** Alerts are kept for so long after they rang. */
const KEPT_MS = 14 * 86_400_000

/** Those whose night may have begun and not be over, by their dates: an evening may begin a week ahead. */
const candidates = async (db: PrismaClient, nowMs: number): Promise<readonly string[]> => {
  const rows = await db.evening.findMany({ where: { deletedAt: null }, select: { id: true, summary: true } })
  return rows.flatMap(({ id, summary }) => {
    const parsed = Summary.safeParse(JSON.parse(summary))
    if (!parsed.success) return []
    const { date, zone } = parsed.data
    const days = daysUntil({ date, zone }, dateAt(zone, nowMs))
    return days >= -2 && days <= 7 ? [id] : []
  })
}

/** Follows the evenings that are being cooked, those of before a restart included. */
export const openNights = async ({
  db,
  rooms,
  planner,
  clock = systemClock,
}: {
  readonly db: PrismaClient
  readonly rooms: Rooms
  readonly planner: Planner
  readonly clock?: Clock
}): Promise<OpenNights> => {
  const store = storedAlerts(db)
  const nights = startNights({ rooms, planner, store, clock, log: (what, why) => console.error(what, why) })
  await store.forget(clock.now() - KEPT_MS)
  const found = await candidates(db, clock.now())
  // Nobody waits for it: who comes meanwhile opens their evening themselves.
  void nights.look(found)
  return nights
}
