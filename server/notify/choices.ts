import { z } from 'zod'
import { Id } from '#lib/domain/atoms.ts'
import { dateAt } from '#lib/domain/time.ts'
import { roleOf, seatOf } from '#server/auth/seat.ts'
import { canBeCalled } from '#server/evenings/may.ts'
import { Summary } from '#server/evenings/summary.ts'
import { live } from '#server/live.ts'
import { isKind, isWay, kindsFor, NOTICE_KINDS, NOTICE_WAYS, type NoticeKind, type NoticeWay } from './kinds.ts'

/** What somebody is told of at one evening that is still to come. */
export interface Choices {
  readonly eveningId: string
  readonly name: string
  readonly date: string
  readonly kinds: readonly NoticeKind[]
  readonly on: readonly { readonly kind: NoticeKind; readonly by: NoticeWay }[]
}

export interface AllChoices {
  readonly evenings: readonly Choices[]
  /** By letter only where letters go out from, and to somebody who has an address. */
  readonly ways: readonly NoticeWay[]
}

/** The choices of somebody at their evenings from today on, the next one first. */
export const readChoices = async (userId: string, nowMs: number): Promise<AllChoices> => {
  const { db, mail } = live()
  const user = await db.user.findUnique({ where: { id: userId }, select: { email: true } })
  const members = await db.member.findMany({
    where: { userId, revokedAt: null, evening: { deletedAt: null } },
    include: { notices: true, evening: { select: { summary: true } } },
  })
  const evenings = members
    .flatMap(({ eveningId, role, notices, evening }) => {
      const { name, date, zone } = Summary.parse(JSON.parse(evening.summary))
      const on = notices.flatMap(({ kind, by }) => (isKind(kind) && isWay(by) ? [{ kind, by }] : []))
      return date < dateAt(zone, nowMs) ? [] : [{ eveningId, name, date, kinds: kindsFor(roleOf(role)), on }]
    })
    .toSorted((a, b) => (`${a.date} ${a.eveningId}` < `${b.date} ${b.eveningId}` ? -1 : 1))
  return { evenings, ways: NOTICE_WAYS.filter((way) => way !== 'mail' || (mail !== null && user?.email)) }
}

const Choice = z.strictObject({ eveningId: Id, kind: z.enum(NOTICE_KINDS), by: z.enum(NOTICE_WAYS), on: z.boolean() })

/** Somebody chooses for themselves. From then on they are told of what is new; false: there is no such seat or choice. */
export const setChoice = async (userId: string, data: unknown, nowMs: number): Promise<boolean> => {
  const parsed = Choice.safeParse(data)
  if (!parsed.success) return false
  const { eveningId, kind, by, on } = parsed.data
  const seat = await seatOf(userId, eveningId)
  if (!canBeCalled(seat) || !kindsFor(seat.role).includes(kind)) return false
  const { memberId } = seat
  const { db } = live()
  if (!on) await db.notice.deleteMany({ where: { memberId, kind, by } })
  else {
    const key = { memberId, kind, by }
    await db.notice.upsert({
      where: { memberId_kind_by: key },
      create: { ...key, toldAt: new Date(nowMs) },
      update: {},
    })
  }
  return true
}
