import { randomUUID } from 'node:crypto'
import { z } from 'zod'
import { Id, line } from '#lib/domain/atoms.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import { MOST } from '#lib/plan/layout.ts'
import type { User } from '#server/auth/session.ts'
import { noteChange } from '#server/evenings/note-change.ts'
import type { FindRefusal } from '#server/guests/find.ts'
import { inTurn } from '#server/guests/in-turn.ts'
import { live } from '#server/live.ts'
import { type FoundSeat, findSeat } from './find.ts'
import { newCook, type Works } from './new-cook.ts'

/** What is posted from the page of a link. */
export const Sitting = z.discriminatedUnion('as', [
  /** The seat is taken: this browser is another one of theirs. */
  z.strictObject({ as: z.literal('again') }),
  z.strictObject({ as: z.literal('account'), ...who() }),
  z.strictObject({ as: z.literal('name'), name: z.string().trim().min(1, 'must not be empty').pipe(line(80)), ...who() }),
])
export type Sitting = z.infer<typeof Sitting>

function who() {
  return {
    /** One of the plan's cooks; null: somebody new. What the link itself says comes first. */
    cook: z.nullable(Id),
    works: z.discriminatedUnion('kind', [
      z.strictObject({ kind: z.literal('here') }),
      z.strictObject({ kind: z.literal('home'), minutes: z.int().min(1).max(240) }),
    ]),
  }
}

/** Who this browser is from now on. */
export interface Seated {
  readonly eveningId: string
  readonly userId: string
  readonly sessionVersion: number
}

export type SitRefusal =
  | FindRefusal
  /** Somebody sat down meanwhile: the page says who. */
  | { readonly kind: 'taken' }
  /** The seat is that of an account: they sign in. */
  | { readonly kind: 'has-account' }
  /** They have a seat at this evening, or none of their own that could be used here. */
  | { readonly kind: 'already-member' }
  | { readonly kind: 'needs-account' }
  | { readonly kind: 'cook-taken' }
  | { readonly kind: 'too-many' }

/** Takes the seat of a link, or comes back to it on another device: the same link is always the same person. */
export const sit = async (
  token: string,
  from: string,
  asked: Sitting,
  user: User | null,
): Promise<Result<Seated, SitRefusal>> => {
  const first = await findSeat(token, from)
  if (!first.ok) return first
  return inTurn(first.value.link.eveningId, async () => {
    // Looked up again: it may have been replaced, taken back or used before the turn came.
    const found = await findSeat(token, from)
    if (!found.ok) return found
    return found.value.taken ? comeBack(found.value, asked) : takeSeat(found.value, asked, user)
  })
}

const comeBack = async ({ link, taken }: FoundSeat, asked: Sitting): Promise<Result<Seated, SitRefusal>> => {
  if (!taken || asked.as !== 'again') return fail({ kind: 'taken' })
  const { member, user } = taken
  if (user.email !== null) return fail({ kind: 'has-account' })
  if (member.revokedAt) {
    const isFree = await isFreeCook(link.eveningId, member.cook)
    await live().db.member.update({ where: { id: member.id }, data: { revokedAt: null, ...(isFree ? {} : { cook: null }) } })
  }
  return ok({ eveningId: link.eveningId, userId: user.id, sessionVersion: user.sessionVersion })
}

const takeSeat = async ({ link }: FoundSeat, asked: Sitting, user: User | null): Promise<Result<Seated, SitRefusal>> => {
  if (asked.as === 'again') return fail({ kind: 'unknown' })
  const { db } = live()
  const { eveningId } = link
  const account = asked.as === 'account' ? user : null
  if (asked.as === 'account' && (account === null || account.email === null)) return fail({ kind: 'needs-account' })
  const before = account && (await db.member.findUnique({ where: { eveningId_userId: { eveningId, userId: account.id } } }))
  if (before && !before.revokedAt) return fail({ kind: 'already-member' })
  const name = account?.name ?? (asked.as === 'name' ? asked.name : '')
  const cook = await cookOf(eveningId, link.cook, { ...asked, name })
  if (!cook.ok) return cook
  const memberId = before?.id ?? randomUUID()
  const userId = account?.id ?? randomUUID()
  const seat = { role: 'cook', cook: cook.value }
  await db.$transaction([
    ...(asked.as === 'name' ? [db.user.create({ data: { id: userId, name: asked.name } })] : []),
    before
      ? db.member.update({ where: { id: memberId }, data: { ...seat, revokedAt: null } })
      : db.member.create({ data: { id: memberId, eveningId, userId, ...seat } }),
    db.seatLink.update({ where: { id: link.id }, data: { memberId } }),
  ])
  await noteChange(eveningId, memberId, 'members', 'add')
  const { sessionVersion } = await db.user.findUniqueOrThrow({ where: { id: userId }, select: { sessionVersion: true } })
  return ok({ eveningId, userId, sessionVersion })
}

interface Wanted {
  readonly name: string
  readonly cook: string | null
  readonly works: Works
}

/** Which cook of the plan they are: the link's, else the one they chose, else a new one, who is written into the plan. */
const cookOf = async (eveningId: string, linked: string | null, wanted: Wanted): Promise<Result<string, SitRefusal>> => {
  const { rooms } = live()
  if (linked !== null && (await isFreeCook(eveningId, linked))) return ok(linked)
  if (wanted.cook !== null) return (await isFreeCook(eveningId, wanted.cook)) ? ok(wanted.cook) : fail({ kind: 'cook-taken' })
  const evening = await rooms.read(eveningId)
  if (evening.cooks.length >= MOST.cooks || evening.kitchens.length >= MOST.kitchens) return fail({ kind: 'too-many' })
  const cook = newCook(evening, wanted.name, wanted.works)
  await rooms.edit(eveningId, cook.write)
  return ok(cook.id)
}

const isFreeCook = async (eveningId: string, cook: string | null): Promise<boolean> => {
  const { db, rooms } = live()
  const { cooks } = await rooms.read(eveningId)
  if (!cooks.some(({ id }) => id === cook)) return false
  return (await db.member.findFirst({ where: { eveningId, cook, revokedAt: null } })) === null
}
