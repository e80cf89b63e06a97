import type { Evening } from '#lib/domain/evening.ts'
import { type Offer, stateOf } from '#lib/domain/offer.ts'
import type { Guest, KnownNeed } from '#lib/domain/people.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import { epochMsOf } from '#lib/domain/time.ts'
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
  /**
   * "all": hosts, and who cooks in their kitchen. "dishes": who comes from another kitchen and brings or makes something. "none": who
   * comes from another kitchen and does not yet; they are told nothing, which never means that nobody has a need.
   */
  readonly scope: 'all' | 'dishes' | 'none'
  /** Of everybody who has not said no, without names; empty where nothing is told. */
  readonly needs: readonly KnownNeed[]
  /** How many of them have not told what they eat. */
  readonly unknown: number
  /** The courses for which the names are told: all for a host, else those at which this person cooks; from another kitchen, those they plate. */
  readonly courses: readonly string[]
  /** Those with a need or none told; empty when there is no such course. */
  readonly named: readonly NamedNeeds[]
}

/** What must be kept away from the plates: by name only where this person makes them, and to visitors only for what they bring. */
export const needsFor = async (userId: string, eveningId: string): Promise<Result<TableNeeds, GuestRefusal>> => {
  const seat = await seatOf(userId, eveningId)
  if (!canReadEvening(seat)) return fail({ kind: 'not-found' })
  const { scope, courses } = await toldTo(seat)
  if (scope === 'none') return ok({ scope, needs: [], unknown: 0, courses: [], named: [] })
  const guests = await coming(eveningId)
  const named = guests.filter(({ needs }) => needs === null || needs.length > 0).map(({ name, needs }) => ({ name, needs }))
  return ok({
    scope,
    needs: countNeeds(guests),
    unknown: guests.filter(({ needs }) => needs === null).length,
    courses,
    named: courses.length > 0 ? named : [],
  })
}

/** Every need, for working something out on the server. It says nothing about who may see them. */
export const allNeeds = async (eveningId: string): Promise<Pick<TableNeeds, 'needs' | 'unknown'>> => {
  const guests = await coming(eveningId)
  return { needs: countNeeds(guests), unknown: guests.filter(({ needs }) => needs === null).length }
}

const coming = async (eveningId: string): Promise<readonly Guest[]> =>
  (await readGuests(eveningId)).filter(({ reply }) => reply !== 'no')

const countNeeds = (guests: readonly Guest[]): readonly KnownNeed[] => {
  const found = new Map<string, KnownNeed>()
  for (const guest of guests)
    for (const { need, grade } of guest.needs ?? []) {
      const key = `${need} ${grade}`
      found.set(key, { need, grade, guests: (found.get(key)?.guests ?? 0) + 1 })
    }
  return [...found].toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([, known]) => known)
}

const toldTo = async (seat: Seat): Promise<Pick<TableNeeds, 'scope' | 'courses'>> => {
  const { db, rooms } = live()
  const { eveningId, cook } = seat
  const evening = await rooms.read(eveningId)
  const all = evening.courses.map(({ id }) => id)
  if (canSeeGuests(seat)) return { scope: 'all', courses: all }
  const isVisitor = comesFromElsewhere(evening, cook)
  if (cook === null) return { scope: isVisitor ? 'none' : 'all', courses: [] }
  const cues = (await storedOrders(db).load(eveningId))?.order.cues ?? []
  const steps = new Set(cues.filter(({ cooks }) => cooks.includes(cook)).map(({ step }) => step))
  const hands = all.map((course) => ({ course, hand: handIn(evening, course, cook, steps) }))
  const at = (...which: readonly Hand[]) => hands.filter(({ hand }) => which.includes(hand)).map(({ course }) => course)
  if (!isVisitor) return { scope: 'all', courses: at('plates', 'makes') }
  const brings = at('plates', 'makes').length > 0 || makesAtHome(evening, cook) || offersADish(evening, cook)
  return brings ? { scope: 'dishes', courses: at('plates') } : { scope: 'none', courses: [] }
}

/** Whether a cook begins in another kitchen than the host's. Of whom nothing is said is a visitor where there is more than one kitchen. */
const comesFromElsewhere = (evening: Evening, cook: string | null): boolean => {
  const hours = evening.cooks.find(({ id }) => id === cook)?.presence ?? []
  const [first] = hours.toSorted((a, b) => epochMsOf(evening, a.from) - epochMsOf(evening, b.from))
  return first ? first.kitchen !== evening.host : evening.kitchens.length > 1
}

type Hand = 'plates' | 'makes' | 'none'

/** Whether a cook leads a course, has claimed something of it, or has a step of it in the running order; and puts it on the plates. */
const handIn = (evening: Evening, course: string, cook: string, steps: ReadonlySet<string>): Hand => {
  const leads = evening.courses.some(({ id, lead }) => id === course && lead === cook)
  const dishes = new Set(evening.dishes.filter((dish) => dish.course === course).map(({ id }) => id))
  const claimed = new Set(
    evening.claims.filter((claim) => claim.cook === cook || claim.also?.includes(cook)).map(({ target }) => target),
  )
  const own = evening.steps.filter(
    ({ id, dish }) => dish !== null && dishes.has(dish) && (claimed.has(id) || claimed.has(dish) || steps.has(id)),
  )
  if (leads || claimed.has(course) || own.some(({ role }) => role === 'plate')) return 'plates'
  return own.length > 0 || [...dishes].some((id) => claimed.has(id)) ? 'makes' : 'none'
}

const offersADish = (evening: Evening, cook: string): boolean =>
  (evening.offers ?? []).some((offer) => offer.cook === cook && offer.kind === 'dish' && isOpen(offer))

const isOpen = (offer: Offer): boolean => {
  const state = stateOf(offer)
  return state === 'offered' || state === 'accepted'
}

/** Whether a dish is made in a kitchen where this cook begins. */
const makesAtHome = (evening: Evening, cook: string): boolean => {
  const kitchens = new Set(evening.cooks.find(({ id }) => id === cook)?.presence.map(({ kitchen }) => kitchen))
  return evening.dishes.some(({ kitchen, state }) => kitchen !== evening.host && kitchens.has(kitchen) && state !== 'dropped')
}
