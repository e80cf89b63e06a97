import { fail, ok, type Result } from '#lib/domain/result.ts'
import type { Invitation } from '#prisma/client/client.ts'
import { live } from '#server/live.ts'
import { isOver, type RepliesState, repliesOf, summaryOf } from './table.ts'
import { hashOf } from './token.ts'

/** A link that never was, has run out or was withdrawn is "unknown", all alike. */
export type FindRefusal = { readonly kind: 'unknown' } | { readonly kind: 'too-many-tries'; readonly seconds: number }

export interface Opened {
  readonly invitation: Invitation
  readonly replies: RepliesState
}

/** What stands behind a secret link of any kind. `from`: the address that asks; tokens that open nothing are counted for it. */
export const byToken = async <T>(
  token: string,
  from: string,
  find: (hash: string) => Promise<T | null>,
): Promise<Result<T, FindRefusal>> => {
  const { limits } = live()
  const seconds = await limits.wait('reply', from)
  if (seconds > 0) return fail({ kind: 'too-many-tries', seconds })
  const hash = hashOf(token)
  const found = hash === null ? null : await find(hash)
  if (found !== null) return ok(found)
  await limits.try('reply', from)
  return fail({ kind: 'unknown' })
}

/** What a guest's token opens. */
export const openLink = (token: string, from: string): Promise<Result<Opened, FindRefusal>> =>
  byToken(token, from, async (tokenHash) => {
    const found = await live().db.invitation.findUnique({
      where: { tokenHash },
      include: { evening: { select: { summary: true, deletedAt: true, createdAt: true, replies: true } } },
    })
    if (!found || found.evening.deletedAt) return null
    const { evening, ...invitation } = found
    const summary = summaryOf(evening.summary)
    return isOver(summary) ? null : { invitation, replies: repliesOf(evening, summary) }
  })
