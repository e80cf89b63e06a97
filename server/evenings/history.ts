import type { Evening } from '#lib/domain/evening.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import { seatOf } from '#server/auth/seat.ts'
import { live } from '#server/live.ts'
import { canReadEvening, canSeeHistory } from './may.ts'
import type { EveningRefusal } from './refusal.ts'

/** What one person changed of one thing within ten minutes. */
export interface ChangeLine {
  readonly id: number
  /** RFC 3339: the last time. */
  readonly at: string
  /** null: somebody whose account is gone. */
  readonly by: string | null
  readonly root: string
  readonly entry: string
  /** Empty: the thing as a whole, which is new. */
  readonly fields: readonly string[]
}

export interface History {
  readonly evening: Evening
  /** The latest first. */
  readonly lines: readonly ChangeLine[]
  /** Those that are older than this one are asked for with it; null: there are none. */
  readonly more: number | null
}

/** As many as are shown at once. */
const SHOWN = 200

/** Who changed what, for hosts. `before`: those that are older than this one. */
export const readHistory = async (
  userId: string,
  eveningId: string,
  before: number | null,
): Promise<Result<History, EveningRefusal>> => {
  const seat = await seatOf(userId, eveningId)
  if (!canReadEvening(seat)) return fail({ kind: 'not-found' })
  if (!canSeeHistory(seat)) return fail({ kind: 'not-allowed' })
  const { db, rooms } = live()
  const rows = await db.planChange.findMany({
    where: { eveningId, ...(before !== null && { id: { lt: before } }) },
    orderBy: { id: 'desc' },
    take: SHOWN + 1,
    include: { member: { select: { user: { select: { name: true } } } } },
  })
  const lines = new Map<string, ChangeLine>()
  const shown = rows.slice(0, SHOWN)
  for (const { id, at: when, root, entry, field, span, memberId, member } of shown) {
    const at = when.toISOString()
    const key = `${span} ${memberId} ${root} ${entry}`
    const line = lines.get(key) ?? { id, at, by: member?.user.name ?? null, root, entry, fields: [] }
    // A row is of its span's first time, and is written again at each further one.
    const isLater = at > line.at
    lines.set(key, { ...line, ...(isLater && { at }), fields: [...line.fields, field] })
  }
  const latest = [...lines.values()].toSorted((a, b) => (a.at < b.at ? 1 : a.at > b.at ? -1 : b.id - a.id))
  return ok({
    evening: await rooms.read(eveningId),
    lines: latest,
    more: rows.length > SHOWN ? (shown.at(-1)?.id ?? null) : null,
  })
}
