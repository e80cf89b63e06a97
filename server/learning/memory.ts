import { fail, ok, type Result } from '#lib/domain/result.ts'
import { Kind, type Observation } from '#lib/learning/observation.ts'
import { seatOf } from '#server/auth/seat.ts'
import { canReadEvening } from '#server/evenings/may.ts'
import type { EveningRefusal } from '#server/evenings/refusal.ts'
import { live } from '#server/live.ts'

/** The newest that are looked at. */
const MOST = 2000

/**
 * What steps took on other evenings of the same hosts where one has a seat: all of it where one was a host, of others where one cooked only what one
 * did oneself. `cook` is who of this evening it was.
 */
export const readMemory = async (userId: string, eveningId: string): Promise<Result<readonly Observation[], EveningRefusal>> => {
  if (!canReadEvening(await seatOf(userId, eveningId))) return fail({ kind: 'not-found' })
  const { db } = live()
  const members = await db.member.findMany({ where: { eveningId, revokedAt: null } })
  const hosts = members.filter(({ role }) => role === 'host').map((member) => member.userId)
  const rows = await db.stepMemory.findMany({
    where: {
      NOT: { eveningId },
      evening: {
        deletedAt: null,
        AND: [
          { members: { some: { userId, revokedAt: null } } },
          { members: { some: { userId: { in: hosts }, role: 'host', revokedAt: null } } },
        ],
      },
      OR: [{ userId }, { evening: { members: { some: { userId, role: 'host', revokedAt: null } } } }],
    },
    orderBy: [{ date: 'desc' }, { eveningId: 'asc' }, { step: 'asc' }],
    take: MOST,
  })
  return ok(
    rows.map(({ eveningId: evening, userId: who, step: _step, closedAt: _closed, role, care, kit, ...took }) => ({
      ...took,
      ...Kind.parse({ role, care, kit }),
      evening,
      cook: members.find((member) => who !== null && member.userId === who)?.cook ?? null,
    })),
  )
}
