import { RunningOrder } from '#lib/domain/running-order.ts'
import type { PrismaClient } from '#prisma/client/client.ts'

/** A running order and the hash of the problem it belongs to. */
export interface Kept {
  readonly hash: string
  readonly order: RunningOrder
}

/** The last running order of each evening. It is derived: losing one costs a moment of planning. */
export interface OrderStore {
  load(eveningId: string): Promise<Kept | null>
  save(eveningId: string, kept: Kept): Promise<void>
}

export const storedOrders = (db: PrismaClient): OrderStore => ({
  async load(eveningId) {
    const row = await db.storedOrder.findUnique({ where: { eveningId } })
    if (!row) return null
    // An order of an older format is planned again.
    const order = RunningOrder.safeParse(JSON.parse(row.order))
    return order.success ? { hash: row.hash, order: order.data } : null
  },
  async save(eveningId, { hash, order }) {
    const fields = { hash, order: JSON.stringify(order), at: new Date() }
    await db.storedOrder.upsert({ where: { eveningId }, create: { eveningId, ...fields }, update: fields })
  },
})
