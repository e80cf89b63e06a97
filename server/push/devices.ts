import { randomUUID } from 'node:crypto'
import { z } from 'zod'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import { seatOf } from '#server/auth/seat.ts'
import { canBeCalled } from '#server/evenings/may.ts'
import { live } from '#server/live.ts'
import { isPublicAddress } from '#server/web/public-address.ts'
import { isAddress } from '#server/web/reach.ts'

/** Somebody's browsers at one evening; a newer one takes the place of the oldest. */
const MOST_DEVICES = 8

/** Whether an address may be posted to: https at its usual port, nobody's name in it, and no address that is not public. */
const isReachable = (text: string): boolean => {
  if (!URL.canParse(text)) return false
  const { protocol, username, password, port, hostname } = new URL(text)
  const host = hostname.replace(/^\[|\]$/g, '')
  return (
    protocol === 'https:' && username === '' && password === '' && port === '' && (isAddress(host) ? isPublicAddress(host) : true)
  )
}

/** A point on P-256 not packed, and 16 bytes (RFC 8291, 2). */
const key = (bytes: number) =>
  z
    .string()
    .max(200)
    .refine((text) => /^[\w-]+={0,2}$/.test(text) && Buffer.from(text, 'base64url').length === bytes)

/** As a browser's PushSubscription prints itself. */
const Subscription = z.object({
  endpoint: z.string().max(1000).refine(isReachable),
  keys: z.object({ p256dh: key(65), auth: key(16) }),
})

export type PushRefusal = { readonly kind: 'not-found' } | { readonly kind: 'not-a-device' }

/** This browser is called for what concerns this person's cook of the evening. It is nobody else's any more. */
export const addDevice = async (userId: string, eveningId: string, data: unknown): Promise<Result<null, PushRefusal>> => {
  const seat = await seatOf(userId, eveningId)
  if (!canBeCalled(seat)) return fail({ kind: 'not-found' })
  const parsed = Subscription.safeParse(data)
  if (!parsed.success) return fail({ kind: 'not-a-device' })
  const { endpoint, keys } = parsed.data
  const { memberId } = seat
  const { db } = live()
  await db.pushDevice.deleteMany({ where: { endpoint, NOT: { member: { userId } } } })
  await db.pushDevice.upsert({
    where: { memberId_endpoint: { memberId, endpoint } },
    create: { id: randomUUID(), memberId, endpoint, ...keys },
    update: { ...keys, at: new Date() },
  })
  const old = await db.pushDevice.findMany({ where: { memberId }, orderBy: { at: 'desc' }, skip: MOST_DEVICES })
  if (old.length > 0) await db.pushDevice.deleteMany({ where: { id: { in: old.map(({ id }) => id) } } })
  return ok(null)
}

const Endpoint = z.object({ endpoint: z.string().max(1000) })

/** This browser is not called for this person any more, at no evening. */
export const removeDevice = async (userId: string, data: unknown): Promise<Result<null, PushRefusal>> => {
  const parsed = Endpoint.safeParse(data)
  if (!parsed.success) return fail({ kind: 'not-a-device' })
  await live().db.pushDevice.deleteMany({ where: { endpoint: parsed.data.endpoint, member: { userId } } })
  return ok(null)
}
