import type { Evening } from '#lib/domain/evening.ts'
import { observe } from '#lib/learning/observe.ts'
import { actualsOf } from '#lib/night/afterwards.ts'
import type { PrismaClient } from '#prisma/client/client.ts'
import type { Rooms } from '#server/live.ts'
import { storedOrders } from '#server/planner/order-store.ts'

const closingOf = (evening: Evening): Date | null => {
  const night = evening.night.find((fact) => 'night' in fact)
  return night && 'night' in night && night.closed !== undefined ? new Date(night.closed) : null
}

/**
 * Keeps what the steps of a closed evening took: once for each closing, with the minutes that were written then, so that whatever is taken
 * over into the plan afterwards does not count again. Without a running order nobody knows who did what where.
 */
export const remember = async (db: PrismaClient, eveningId: string, evening: Evening): Promise<'kept' | 'no-order'> => {
  const closedAt = closingOf(evening)
  if (closedAt === null || (await db.stepMemory.count({ where: { eveningId, closedAt } })) > 0) return 'kept'
  const kept = await storedOrders(db).load(eveningId)
  if (!kept) return 'no-order'
  const members = await db.member.findMany({ where: { eveningId, revokedAt: null, NOT: { cook: null } } })
  const whose = (cook: string) => members.find((member) => member.cook === cook)?.userId ?? null
  const rows = observe(evening, actualsOf(evening, kept.order), whose).map(({ evening: _, cook, ...took }) => ({
    ...took,
    eveningId,
    userId: cook,
    closedAt,
  }))
  await db.$transaction([
    db.stepMemory.deleteMany({ where: { eveningId } }),
    ...(rows.length > 0 ? [db.stepMemory.createMany({ data: rows })] : []),
  ])
  return 'kept'
}

/** Remembers each evening when it is closed. */
export const followClosings = (db: PrismaClient, rooms: Rooms, log: (why: unknown) => void): void => {
  const seen = new Map<string, number>()
  rooms.onPlan((eveningId, evening) => {
    const closedAt = closingOf(evening)?.getTime()
    if (closedAt === undefined || seen.get(eveningId) === closedAt) return
    seen.set(eveningId, closedAt)
    // What is not kept now is tried again at the next edit: the plan has what was told.
    remember(db, eveningId, evening).then(
      (how) => how === 'kept' || seen.delete(eveningId),
      (why) => {
        seen.delete(eveningId)
        log(why)
      },
    )
  })
  rooms.onEmpty((eveningId) => seen.delete(eveningId))
}
