import type { Evening } from '#lib/domain/evening.ts'
import type { Guest, KnownNeed } from '#lib/domain/people.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import { seatOf } from '#server/auth/seat.ts'
import { canReadEvening, canSeeGuests } from '#server/evenings/may.ts'
import { live, type Seat } from '#server/live.ts'
import { storedOrders } from '#server/planner/order-store.ts'
import type { GuestRefusal } from './refusal.ts'
import { readGuests } from './rows.ts'

export interface NamedNeeds {
  readonly name: string
  /** null: not known, which is never safe. */
  readonly needs: Guest['needs']
}

/** What those who cook must know of the guests. */
export interface TableNeeds {
  /** Of everybody who has not said no, without names. */
  readonly needs: readonly KnownNeed[]
  /** How many of them have not told what they eat. */
  readonly unknown: number
  /** The courses at which this person cooks or plates, all of them for a host; for these the names are told. */
  readonly courses: readonly string[]
  /** Those with a need or none told; empty when there is no such course. */
  readonly named: readonly NamedNeeds[]
}

/** What must be kept away from the plates: by name only where this person makes them. */
export const needsFor = async (userId: string, eveningId: string): Promise<Result<TableNeeds, GuestRefusal>> => {
  const seat = await seatOf(userId, eveningId)
  if (!canReadEvening(seat)) return fail({ kind: 'not-found' })
  const guests = (await readGuests(eveningId)).filter(({ reply }) => reply !== 'no')
  const courses = await coursesOf(seat)
  const named = guests.filter(({ needs }) => needs === null || needs.length > 0).map(({ name, needs }) => ({ name, needs }))
  return ok({
    needs: countNeeds(guests),
    unknown: guests.filter(({ needs }) => needs === null).length,
    courses,
    named: courses.length > 0 ? named : [],
  })
}

const countNeeds = (guests: readonly Guest[]): readonly KnownNeed[] => {
  const found = new Map<string, KnownNeed>()
  for (const guest of guests)
    for (const { need, grade } of guest.needs ?? []) {
      const key = `${need} ${grade}`
      found.set(key, { need, grade, guests: (found.get(key)?.guests ?? 0) + 1 })
    }
  return [...found].toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([, known]) => known)
}

const coursesOf = async (seat: Seat): Promise<readonly string[]> => {
  const { db, rooms } = live()
  const { eveningId, cook } = seat
  const evening = await rooms.read(eveningId)
  const all = evening.courses.map(({ id }) => id)
  if (canSeeGuests(seat)) return all
  if (cook === null) return []
  const cues = (await storedOrders(db).load(eveningId))?.order.cues ?? []
  const steps = new Set(cues.filter(({ cooks }) => cooks.includes(cook)).map(({ step }) => step))
  return all.filter((course) => worksAt(evening, course, cook, steps))
}

/** Whether a cook leads a course, has claimed something of it, or has a step of it in the running order. */
const worksAt = (evening: Evening, course: string, cook: string, steps: ReadonlySet<string>): boolean => {
  if (evening.courses.some(({ id, lead }) => id === course && lead === cook)) return true
  const dishes = new Set(evening.dishes.filter((dish) => dish.course === course).map(({ id }) => id))
  const own = evening.steps.filter(({ dish }) => dish !== null && dishes.has(dish)).map(({ id }) => id)
  const claimed = new Set(
    evening.claims.filter((claim) => claim.cook === cook || claim.also?.includes(cook)).map(({ target }) => target),
  )
  return claimed.has(course) || [...dishes].some((id) => claimed.has(id)) || own.some((id) => claimed.has(id) || steps.has(id))
}
