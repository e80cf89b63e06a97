import type { At } from '#lib/domain/atoms.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { live } from '#server/live.ts'

/** What an invitation tells of the evening, and no more. */
export interface EveningFacts {
  readonly name: string
  readonly date: string
  readonly zone: string
  readonly guestsFrom: At
  readonly sitDown: At
  /** The names of the hosts among the cooks. */
  readonly hosts: readonly string[]
  readonly place: string
}

export const factsOf = (evening: Evening, place: string): EveningFacts => ({
  name: evening.name,
  date: evening.date,
  zone: evening.zone,
  guestsFrom: evening.guestsFrom,
  sitDown: evening.sitDown,
  hosts: evening.cooks.filter(({ host }) => host).map(({ name }) => name),
  place,
})

/** Says nothing about who may see them. */
export const readFacts = async (eveningId: string): Promise<EveningFacts> => {
  const { db, rooms } = live()
  const replies = await db.replies.findUnique({ where: { eveningId }, select: { place: true } })
  return factsOf(await rooms.read(eveningId), replies?.place ?? '')
}
