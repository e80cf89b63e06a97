import type { Result } from '#lib/domain/result.ts'
import type { Member, SeatLink, User } from '#prisma/client/client.ts'
import { byToken, type FindRefusal } from '#server/guests/find.ts'
import { isOver, summaryOf } from '#server/guests/table.ts'
import { live } from '#server/live.ts'

/** A seat that a link leads to; `taken`: by whom. */
export interface FoundSeat {
  readonly link: SeatLink
  readonly taken: { readonly member: Member; readonly user: User } | null
}

/** What a token opens. A link of a seat that was taken away after it was made opens nothing. */
export const findSeat = (token: string, from: string): Promise<Result<FoundSeat, FindRefusal>> =>
  byToken(token, from, async (tokenHash) => {
    const found = await live().db.seatLink.findUnique({
      where: { tokenHash },
      include: { evening: { select: { summary: true, deletedAt: true } }, member: { include: { user: true } } },
    })
    if (!found || found.evening.deletedAt || isOver(summaryOf(found.evening.summary))) return null
    const { evening: _evening, member: sitting, ...link } = found
    if (!sitting) return { link, taken: null }
    const { user, ...member } = sitting
    if (member.revokedAt && member.revokedAt >= link.createdAt) return null
    return { link, taken: { member, user } }
  })
