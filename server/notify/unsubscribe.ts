import { createHmac, timingSafeEqual } from 'node:crypto'
import { secret } from '#server/auth/session.ts'
import { live } from '#server/live.ts'
import { isKind, type NoticeKind } from './kinds.ts'

// By the link in a letter one is told no longer, without an account (RFC 8058). It says which choice, sealed by the server's
// secret: nothing of it is stored, and whoever has it can do nothing else.

const sealOf = (memberId: string, kind: NoticeKind): string =>
  createHmac('sha256', secret()).update(`no longer told: ${memberId} ${kind}`).digest('base64url')

export const unsubscribePath = (memberId: string, kind: NoticeKind): string =>
  `/unsubscribe/${memberId}.${kind}.${sealOf(memberId, kind)}`

interface Meant {
  readonly memberId: string
  readonly kind: NoticeKind
}

/** Which choice a link is of; null when this server did not make it. */
export const meantBy = (token: string): Meant | null => {
  const [memberId = '', kind = '', seal = '', ...more] = token.split('.')
  if (more.length > 0 || !isKind(kind)) return null
  const [said, own] = [Buffer.from(seal), Buffer.from(sealOf(memberId, kind))]
  return said.length === own.length && timingSafeEqual(said, own) ? { memberId, kind } : null
}

/** Takes the choice back; a second time nothing is left to take back. */
export const unsubscribe = async ({ memberId, kind }: Meant): Promise<void> => {
  await live().db.notice.deleteMany({ where: { memberId, kind, by: 'mail' } })
}
