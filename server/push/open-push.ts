import webPush from 'web-push'
import type { PrismaClient } from '#prisma/client/client.ts'
import type { Push } from '#server/live.ts'
import type { Keys } from './keys.ts'
import type { Post } from './post.ts'

/** What of an alert decides who is called; without cooks it is for everybody. */
export interface Called {
  readonly id: string
  readonly cooks: readonly string[]
}

export interface Parts {
  readonly db: PrismaClient
  readonly keys: Keys
  /** Where the push service finds who runs this server: a mailto: or https: address (RFC 8292, 2.1). */
  readonly contact: string
  readonly post: Post
  readonly log: (what: string, why?: unknown) => void
}

export interface Caller extends Push {
  /** Calls the sleeping devices of the cooks concerned. Returns at once: nothing of the night waits for it. */
  call(eveningId: string, alert: Called): void
  /** When everything that was begun is done. */
  idle(): Promise<void>
}

/** A call that comes later than two minutes is of no use any more; a word of something new keeps for half a day. */
const PATIENCE: Readonly<Record<'call' | 'word', { readonly TTL: number; readonly urgency: 'high' | 'normal' }>> = {
  call: { TTL: 120, urgency: 'high' },
  word: { TTL: 12 * 3600, urgency: 'normal' },
}

const GONE: ReadonlySet<number | null> = new Set([404, 410])

/**
 * Sends Web Push (RFC 8030, 8291, 8292). A call says that something calls and where to look, never what: no name, diet or dish
 * leaves the house by it, and a push service could not read them either. A device that is gone is forgotten.
 */
export const openPush = ({ db, keys, contact, post, log }: Parts): Caller => {
  const under = new Set<Promise<void>>()

  const devicesFor = (eveningId: string, { cooks }: Called) =>
    db.pushDevice.findMany({
      where: {
        member: {
          eveningId,
          revokedAt: null,
          evening: { deletedAt: null },
          ...(cooks.length === 0 ? {} : { cook: { in: [...cooks] } }),
        },
      },
    })
  type Device = Awaited<ReturnType<typeof devicesFor>>[number]

  const send = async ({ endpoint, p256dh, auth }: Device, payload: string, patience = PATIENCE.call): Promise<void> => {
    const sealed = webPush.generateRequestDetails({ endpoint, keys: { p256dh, auth } }, payload, {
      vapidDetails: { subject: contact, publicKey: keys.publicKey, privateKey: keys.privateKey },
      ...patience,
    })
    const headers = Object.fromEntries(Object.entries(sealed.headers).map(([name, value]) => [name, String(value)]))
    const status = await post(new URL(endpoint), headers, sealed.body)
    if (GONE.has(status)) await db.pushDevice.deleteMany({ where: { endpoint } })
    else if (status === null || status >= 300) log(`a push service did not take a call: ${status ?? 'not reached'}`)
  }

  const sendAll = async (devices: readonly Device[], payload: string, patience = PATIENCE.call): Promise<void> => {
    await Promise.all(
      devices.map((device) => send(device, payload, patience).catch((why: unknown) => log('a device could not be called', why))),
    )
  }

  const callAll = async (eveningId: string, alert: Called): Promise<void> => {
    const payload = JSON.stringify({ alert: alert.id, path: `/evenings/${eveningId}/tonight` })
    await sendAll(await devicesFor(eveningId, alert), payload)
  }

  return {
    publicKey: keys.publicKey,
    call(eveningId, alert) {
      const calling = callAll(eveningId, alert)
        .catch((why: unknown) => log('nobody could be called', why))
        .finally(() => under.delete(calling))
      under.add(calling)
    },
    tell: async (memberId, { kind, path }) => {
      const devices = await db.pushDevice.findMany({ where: { member: { id: memberId, revokedAt: null } } })
      await sendAll(devices, JSON.stringify({ notice: kind, path }), PATIENCE.word)
    },
    idle: async () => {
      while (under.size > 0) await Promise.all(under)
    },
  }
}
