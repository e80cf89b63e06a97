import { randomUUID } from 'node:crypto'
import type { Evening } from '#lib/domain/evening.ts'
import { live } from '#server/live.ts'
import { printSummary } from './summary.ts'

export interface NewMember {
  readonly userId: string
  readonly role: 'host' | 'cook'
  readonly cook: string | null
}

/**
 * Makes an evening of this plan with these members, always under an id of its own. The members come last: until the plan
 * is stored nobody has a seat, so a kill in between leaves nothing that anybody sees.
 */
export const plantEvening = async (plan: Evening, members: readonly NewMember[]): Promise<{ readonly eveningId: string }> => {
  const { db, rooms } = live()
  const evening = { ...plan, id: randomUUID() }
  await db.evening.create({ data: { id: evening.id, epoch: randomUUID(), summary: printSummary(evening) } })
  await rooms.create(evening.id, evening)
  await db.member.createMany({ data: members.map((member) => ({ id: randomUUID(), eveningId: evening.id, ...member })) })
  return { eveningId: evening.id }
}
