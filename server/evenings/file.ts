import { parseEvening, printEvening } from '#lib/domain/parse.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import { seatOf } from '#server/auth/seat.ts'
import { readGuests } from '#server/guests/rows.ts'
import { live } from '#server/live.ts'
import { canReadEvening, canSeeGuests } from './may.ts'
import { plantEvening } from './plant.ts'
import type { EveningRefusal } from './refusal.ts'

/** As much as the largest evening the schema allows could need, and more than anybody has. */
const MOST_CHARACTERS = 4_000_000

export interface Imported {
  readonly eveningId: string
}

/**
 * Makes a new evening of a file, with its guests; the person who brings it is its host. Never changes an evening that is
 * there, and the file comes out again as it went in, once it has the order in which files are written.
 */
export const importEvening = async (userId: string, text: string): Promise<Result<Imported, EveningRefusal>> => {
  const data = parseJson(text)
  if (!data.ok) return fail(invalid(data.error))
  const parsed = parseEvening(data.value)
  if (!parsed.ok) return fail({ kind: 'invalid', refusals: parsed.error })
  const user = await live().db.user.findUnique({ where: { id: userId } })
  if (!user) return fail({ kind: 'not-allowed' })
  // Whoever made their link could come in by it, to this evening too.
  if (user.email === null) return fail({ kind: 'needs-account' })
  const { id, cooks } = parsed.value
  const cook = cooks.find(({ name }) => name === user.name) ?? null
  return ok(await plantEvening(parsed.value, [{ userId, role: 'host', cook: cook?.id ?? null }], id))
}

/** The evening as its file, under the id that it came in with. What guests answered is in the host's alone. */
export const exportEvening = async (
  userId: string,
  eveningId: string,
): Promise<Result<{ readonly name: string; readonly text: string }, EveningRefusal>> => {
  const seat = await seatOf(userId, eveningId)
  if (!canReadEvening(seat)) return fail({ kind: 'not-found' })
  const { db, rooms } = live()
  const evening = await rooms.read(eveningId)
  const row = await db.evening.findUnique({ where: { id: eveningId }, select: { fileId: true } })
  const guests = canSeeGuests(seat) ? await readGuests(eveningId) : []
  const text = printEvening({ ...evening, id: row?.fileId ?? eveningId, guests: [...guests] })
  return ok({ name: `${fileName(evening.name)}-${evening.date}.json`, text })
}

const parseJson = (text: string): Result<unknown, string> => {
  if (text.length > MOST_CHARACTERS) return fail(`is longer than ${MOST_CHARACTERS / 1_000_000} million characters`)
  try {
    return ok(JSON.parse(text))
  } catch (cause) {
    return fail(`is not JSON: ${cause instanceof Error ? cause.message : cause}`)
  }
}

const invalid = (why: string): EveningRefusal => ({ kind: 'invalid', refusals: [{ path: '', kind: 'shape', why }] })

/** Letters and digits of the name, so that every file system takes it. */
const fileName = (name: string): string =>
  name
    .normalize('NFKD')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60)
    .toLowerCase() || 'evening'
