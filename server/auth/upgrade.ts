import type { IncomingMessage } from 'node:http'
import { CLOSE } from '#lib/plan/wire.ts'
import { live } from '#server/live.ts'
import type { Entrance } from '#server/sync/handler.ts'
import { seatOf } from './seat.ts'
import { userOfCookies } from './session.ts'

/** Who sits down at the socket of /sync/ID, or the code it is closed with. The origin has been looked at before. */
export const entryOf = async (request: IncomingMessage): Promise<Entrance> => {
  const user = await userOfCookies(cookiesOf(request.headers.cookie ?? ''), request.headers['x-forwarded-proto'] === 'https')
  if (!user) return { kind: 'refused', code: CLOSE.signIn }
  const eveningId = /^\/sync\/([A-Za-z0-9-]{1,40})(?:\?|$)/.exec(request.url ?? '')?.[1]
  if (!eveningId) return { kind: 'refused', code: CLOSE.gone }
  const seat = await seatOf(user.id, eveningId)
  if (seat) return { kind: 'seat', seat }
  // Somebody who never had a seat is not told whether there is such an evening.
  const former = await live().db.member.findUnique({ where: { eveningId_userId: { eveningId, userId: user.id } } })
  return { kind: 'refused', code: former?.revokedAt ? CLOSE.removed : CLOSE.gone }
}

/** Values as they stand: next-auth's are of letters that need no escape. */
export const cookiesOf = (header: string): Record<string, string> =>
  Object.fromEntries(
    header
      .split(';')
      .map((pair) => [pair.slice(0, pair.indexOf('=')).trim(), pair.slice(pair.indexOf('=') + 1).trim()])
      .filter(([name]) => name),
  )
