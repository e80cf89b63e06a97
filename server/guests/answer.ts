import { randomUUID } from 'node:crypto'
import { z } from 'zod'
import { Id } from '#lib/domain/atoms.ts'
import { refusals } from '#lib/domain/parse.ts'
import type { Guest } from '#lib/domain/people.ts'
import { fail, ok, type Refusal, type Result } from '#lib/domain/result.ts'
import { scrub } from '#server/db/scrub.ts'
import { live } from '#server/live.ts'
import { Written } from './command.ts'
import { guestErased } from './erase.ts'
import { type FindRefusal, type Opened, openLink } from './find.ts'
import { inTurn } from './in-turn.ts'
import { nextPlace } from './invitations.ts'
import { MOST_GUESTS, MOST_PLACES } from './most.ts'
import { guestOf, guestRow, loadGuests } from './rows.ts'

/** What a household sends: `id` null for somebody whom it adds. Who is left out stays as they are. */
export const Answer = z.strictObject({
  revision: z.int(),
  /** They agree that what they eat, and their own words, are kept. */
  consent: z.boolean(),
  people: z
    .array(Written.extend({ id: z.nullable(Id) }))
    .min(1)
    .max(MOST_PLACES),
})
export type Answer = z.infer<typeof Answer>

export type AnswerRefusal =
  | FindRefusal
  | { readonly kind: 'closed' }
  /** What they eat or wrote themselves is not kept unless they agree. */
  | { readonly kind: 'no-consent' }
  | { readonly kind: 'too-many-people'; readonly places: number }
  /** By another phone with the same link, or by the host, since this answer was begun. */
  | { readonly kind: 'changed-meanwhile'; readonly revision: number }
  | { readonly kind: 'invalid'; readonly refusals: readonly Refusal[] }

/** Stores what a household answers, as a whole or not at all. */
export const answerReply = async (token: string, from: string, data: unknown): Promise<Result<null, AnswerRefusal>> => {
  const first = await openLink(token, from)
  if (!first.ok) return first
  const seconds = await live().limits.try('answer', first.value.invitation.id)
  if (seconds > 0) return fail({ kind: 'too-many-tries', seconds })
  const parsed = Answer.safeParse(data)
  if (!parsed.success) return fail({ kind: 'invalid', refusals: refusals(parsed.error) })
  const { eveningId } = first.value.invitation
  const done = await inTurn(eveningId, async () => {
    // What was looked at before the turn came may have changed.
    const opened = await openLink(token, from)
    return opened.ok ? store(opened.value, parsed.data) : opened
  })
  if (done.ok) live().rooms.tellGuests(eveningId)
  return done
}

const store = async ({ invitation, replies }: Opened, answer: Answer): Promise<Result<null, AnswerRefusal>> => {
  const { id: invitationId, eveningId, places, revision } = invitation
  if (!replies.open) return fail({ kind: 'closed' })
  if (answer.revision !== revision) return fail({ kind: 'changed-meanwhile', revision })
  const { db } = live()
  const rows = await loadGuests({ invitationId })
  const known = new Map(rows.map((row) => [row.id, guestOf(row)]))
  const added = answer.people.filter(({ id }) => id === null).length
  const told = answer.people.flatMap(({ id }) => (id === null ? [] : [id]))
  const left = [...known.values()].filter(({ id }) => !told.includes(id))
  if (!answer.consent && [...answer.people, ...left].some(({ needs, words }) => needs !== null || words !== ''))
    return fail({ kind: 'no-consent' })
  if (told.some((id) => !known.has(id)) || new Set(told).size < told.length) return fail({ kind: 'changed-meanwhile', revision })
  if (rows.length + added > places) return fail({ kind: 'too-many-people', places })
  const all = await db.guest.findMany({ where: { eveningId }, select: { place: true } })
  if (all.length + added > MOST_GUESTS) return fail({ kind: 'too-many-people', places: rows.length + MOST_GUESTS - all.length })
  const now = new Date()
  const people = answer.people.map((person, at) => ({ ...person, id: person.id ?? randomUUID(), place: nextPlace(all) + at }))
  await db.$transaction([
    db.invitation.update({
      where: { id: invitationId },
      data: {
        revision: { increment: 1 },
        answeredAt: now,
        consentAt: answer.consent ? (invitation.consentAt ?? now) : null,
      },
    }),
    ...people.flatMap(({ place, ...person }) => {
      const before = known.get(person.id)
      const row = { ...guestRow(person), byGuest: true, ...(isSame(before, person) ? {} : { changedAt: now }) }
      const key = { eveningId, guestId: person.id }
      return [
        db.guest.upsert({
          where: { eveningId_id: { eveningId, id: person.id } },
          create: { ...row, eveningId, id: person.id, place, invitationId },
          update: row,
        }),
        db.guestWords.deleteMany({ where: key }),
        ...(person.words === '' ? [] : [db.guestWords.create({ data: { ...key, words: person.words } })]),
      ]
    }),
  ])
  // What they no longer agree to is gone for good.
  if (invitation.consentAt && !answer.consent) await scrub(guestErased(eveningId, [...known.keys()]))
  return ok(null)
}

const isSame = (before: Guest | undefined, now: Omit<Guest, 'id'>): boolean =>
  before !== undefined && likeness(before) === likeness(now)

const likeness = ({ name, reply, child, portion, arrives, needs, drinks, drives, words }: Omit<Guest, 'id'>): string =>
  JSON.stringify([name, reply, child, portion, arrives ? [arrives.day, arrives.time] : null, needs, drinks, drives, words])
