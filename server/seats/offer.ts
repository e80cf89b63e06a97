import { ok, type Result } from '#lib/domain/result.ts'
import type { User } from '#server/auth/session.ts'
import { type EveningFacts, readFacts } from '#server/guests/facts.ts'
import type { FindRefusal } from '#server/guests/find.ts'
import { live } from '#server/live.ts'
import { type FoundSeat, findSeat } from './find.ts'

interface NamedCook {
  readonly id: string
  readonly name: string
}

/** What the page of a seat's link tells: no more of the evening than an invitation does. */
export interface SeatOffer {
  readonly eveningId: string
  readonly evening: EveningFacts
  /** Whom the link was made for. */
  readonly label: string
  /** Who has sat down by it already; it opens their seat and no other. */
  readonly taken: { readonly userId: string; readonly name: string; readonly account: boolean } | null
  /** The cook that they will be; null: they choose one of `free`, or are a new one. */
  readonly cook: NamedCook | null
  readonly free: readonly NamedCook[]
  /** Where the evening is. */
  readonly kitchen: string
  /** Who uses this browser now; `here`: they have a seat at this evening. */
  readonly now: { readonly user: User; readonly here: boolean } | null
}

/** Changes nothing: whatever looks at a link before its person does, takes no seat. */
export const readOffer = async (token: string, from: string, user: User | null): Promise<Result<SeatOffer, FindRefusal>> => {
  const found = await findSeat(token, from)
  return found.ok ? ok(await offerOf(found.value, user)) : found
}

const offerOf = async ({ link, taken }: FoundSeat, user: User | null): Promise<SeatOffer> => {
  const { db, rooms } = live()
  const { eveningId } = link
  const [plan, evening, members] = await Promise.all([
    rooms.read(eveningId),
    readFacts(eveningId),
    db.member.findMany({ where: { eveningId, revokedAt: null }, select: { cook: true, userId: true } }),
  ])
  const free = plan.cooks.filter(({ id }) => !members.some(({ cook }) => cook === id)).map(({ id, name }) => ({ id, name }))
  return {
    eveningId,
    evening,
    label: link.label,
    taken: taken && { userId: taken.user.id, name: taken.user.name, account: taken.user.email !== null },
    cook: free.find(({ id }) => id === link.cook) ?? null,
    free,
    kitchen: plan.kitchens.find(({ id }) => id === plan.host)?.name ?? '',
    now: user && { user, here: members.some(({ userId }) => userId === user.id) },
  }
}
