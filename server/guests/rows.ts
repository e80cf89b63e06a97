import { Guest } from '#lib/domain/people.ts'
import type { Prisma } from '#prisma/client/client.ts'
import { live } from '#server/live.ts'

/** A guest's row without what says where it belongs; the words in their own are another row's. */
export const guestRow = ({ name, reply, child, portion, arrives, needs, drinks, drives }: Omit<Guest, 'id' | 'words'>) => ({
  name,
  reply,
  child,
  portion,
  drinks,
  drives,
  arrives: arrives === undefined ? null : JSON.stringify(arrives),
  needs: needs === null ? null : JSON.stringify(needs),
})

/** Guests as they are stored, in their order. */
export const guestRows = (eveningId: string, guests: readonly Guest[]): Prisma.GuestCreateManyInput[] =>
  guests.map((guest, place) => ({ eveningId, id: guest.id, place, ...guestRow(guest) }))

/** What guests wrote in words of their own; nothing is stored of who wrote none. */
export const wordRows = (eveningId: string, guests: readonly Guest[]): Prisma.GuestWordsCreateManyInput[] =>
  guests.filter(({ words }) => words !== '').map(({ id, words }) => ({ eveningId, guestId: id, words }))

type StoredGuest = Prisma.GuestGetPayload<{ include: { free: true } }>

export const guestOf = (row: StoredGuest): Guest => {
  const { id, name, reply, child, portion, arrives, needs, drinks, drives, free } = row
  return Guest.parse({
    id,
    name,
    reply,
    child,
    portion,
    ...(arrives === null ? {} : { arrives: JSON.parse(arrives) }),
    needs: needs === null ? null : JSON.parse(needs),
    drinks,
    drives,
    words: free?.words ?? '',
  })
}

/** The rows of the guests that a condition holds for, in their order. Says nothing about who may see them. */
export const loadGuests = (where: Prisma.GuestWhereInput): Promise<readonly StoredGuest[]> =>
  live().db.guest.findMany({ where, include: { free: true }, orderBy: [{ place: 'asc' }, { id: 'asc' }] })

/** The guests of an evening, in their order. Says nothing about who may see them. */
export const readGuests = async (eveningId: string): Promise<readonly Guest[]> => (await loadGuests({ eveningId })).map(guestOf)
