import type { Guest } from '#lib/domain/people.ts'
import { tableOf } from './table.ts'

/** The guests for what is poured, without the words that they wrote, for hosts; null for everybody else. */
export const drinkingGuests = async (userId: string, eveningId: string): Promise<readonly Guest[] | null> => {
  const table = await tableOf(userId, eveningId)
  if (!table.ok) return null
  return table.value.guests.map(({ id, name, reply, child, portion, needs, drinks, drives }) => ({
    id,
    name,
    reply,
    child,
    portion,
    needs,
    drinks,
    drives,
    words: '',
  }))
}
