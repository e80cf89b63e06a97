import { Guest, type KnownNeed } from '#lib/domain/people.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import type { Prisma } from '#prisma/client/client.ts'
import { seatOf } from '#server/auth/seat.ts'
import { live } from '#server/live.ts'
import { canReadEvening, canSeeGuests } from './may.ts'
import type { EveningRefusal } from './refusal.ts'

/** Guests as they are stored, in their order. */
export const guestRows = (eveningId: string, guests: readonly Guest[]): Prisma.GuestCreateManyInput[] =>
  guests.map(({ arrives, needs, ...guest }, place) => ({
    ...guest,
    eveningId,
    place,
    arrives: arrives === undefined ? null : JSON.stringify(arrives),
    needs: needs === null ? null : JSON.stringify(needs),
  }))

/** The guests of an evening, in their order. Says nothing about who may see them. */
export const readGuests = async (eveningId: string): Promise<readonly Guest[]> => {
  const rows = await live().db.guest.findMany({ where: { eveningId }, orderBy: [{ place: 'asc' }, { id: 'asc' }] })
  return rows.map(({ eveningId: _evening, place: _place, arrives, needs, ...guest }) =>
    Guest.parse({
      ...guest,
      ...(arrives === null ? {} : { arrives: JSON.parse(arrives) }),
      needs: needs === null ? null : JSON.parse(needs),
    }),
  )
}

/** The guests and what they answered, for hosts. */
export const listGuests = async (userId: string, eveningId: string): Promise<Result<readonly Guest[], EveningRefusal>> => {
  const seat = await seatOf(userId, eveningId)
  if (!canReadEvening(seat)) return fail({ kind: 'not-found' })
  return canSeeGuests(seat) ? ok(await readGuests(eveningId)) : fail({ kind: 'not-allowed' })
}

/** What is known of the guests' needs, without names, of everybody who has not said no; null for whoever is no host. */
export const knownNeeds = async (userId: string, eveningId: string): Promise<readonly KnownNeed[] | null> => {
  if (!canSeeGuests(await seatOf(userId, eveningId))) return null
  const found = new Map<string, KnownNeed>()
  for (const guest of await readGuests(eveningId))
    if (guest.reply !== 'no')
      for (const { need, grade } of guest.needs ?? []) {
        const key = `${need} ${grade}`
        found.set(key, { need, grade, guests: (found.get(key)?.guests ?? 0) + 1 })
      }
  return [...found].toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([, known]) => known)
}
