import { randomUUID } from 'node:crypto'
import type { Evening } from '#lib/domain/evening.ts'
import { guestRows, wordRows } from '#server/guests/rows.ts'
import { live } from '#server/live.ts'
import { printSummary } from './summary.ts'

export interface NewMember {
  readonly userId: string
  readonly role: 'host' | 'cook'
  readonly cook: string | null
}

/**
 * Makes an evening of this plan with these members, always under an id of its own; its guests are kept beside the shared
 * plan. The members come last: until the plan is stored nobody has a seat, so a kill in between leaves nothing that anybody
 * sees. `fileId`: the id that its file has.
 */
export const plantEvening = async (
  plan: Evening,
  members: readonly NewMember[],
  fileId: string | null = null,
): Promise<{ readonly eveningId: string }> => {
  const { db, rooms } = live()
  const evening = { ...plan, id: randomUUID() }
  const eveningId = evening.id
  await db.evening.create({ data: { id: eveningId, epoch: randomUUID(), summary: printSummary(evening), fileId } })
  await rooms.create(eveningId, evening)
  await db.$transaction([
    db.guest.createMany({ data: guestRows(eveningId, plan.guests) }),
    db.guestWords.createMany({ data: wordRows(eveningId, plan.guests) }),
    db.member.createMany({ data: members.map((member) => ({ id: randomUUID(), eveningId, ...member })) }),
  ])
  return { eveningId }
}
