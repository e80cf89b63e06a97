import { bySiblingOrder, type Evening } from '#lib/domain/evening.ts'
import type { Guest } from '#lib/domain/people.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import { live } from '#server/live.ts'
import { eraseHousehold } from './erase.ts'
import { type EveningFacts, factsOf } from './facts.ts'
import { type FindRefusal, openLink } from './find.ts'
import { inTurn } from './in-turn.ts'
import { guestOf, loadGuests } from './rows.ts'

/** What a household sees by its link: the evening in a few words, and all that is stored of itself. Nobody else. */
export interface Reply {
  readonly evening: EveningFacts
  /** Courses with the names of their dishes; null: the hosts do not show it. */
  readonly menu: readonly MenuCourse[] | null
  /** Answers may be changed. */
  readonly open: boolean
  readonly answerBy: string | null
  readonly label: string
  readonly places: number
  readonly revision: number
  readonly answeredAt: string | null
  readonly consent: boolean
  /** The last day on which any of it is kept: yyyy-mm-dd. */
  readonly keptUntil: string
  readonly people: readonly Guest[]
}

export interface MenuCourse {
  readonly name: string
  readonly dishes: readonly string[]
}

/** Changes nothing: whatever looks at a link before its guest does, leaves no trace. */
export const readReply = async (token: string, from: string): Promise<Result<Reply, FindRefusal>> => {
  const opened = await openLink(token, from)
  if (!opened.ok) return opened
  const { invitation, replies } = opened.value
  const [rows, evening] = await Promise.all([
    loadGuests({ invitationId: invitation.id }),
    live().rooms.read(invitation.eveningId),
  ])
  return ok({
    evening: factsOf(evening, replies.place),
    menu: replies.sharesMenu ? menuOf(evening) : null,
    open: replies.open,
    answerBy: replies.answerBy,
    label: invitation.label,
    places: invitation.places,
    revision: invitation.revision,
    answeredAt: invitation.answeredAt?.toISOString() ?? null,
    consent: invitation.consentAt !== null,
    keptUntil: replies.keptUntil,
    people: rows.map(guestOf),
  })
}

const menuOf = (evening: Evening): readonly MenuCourse[] =>
  [...evening.courses].sort(bySiblingOrder).map(({ id, name }) => ({
    name,
    dishes: evening.dishes
      .filter((dish) => dish.course === id && dish.state === 'on' && !dish.variant)
      .sort(bySiblingOrder)
      .map((dish) => dish.name),
  }))

/** All that is stored of a household, to take away. */
export const exportReply = async (token: string, from: string): Promise<Result<object, FindRefusal>> => {
  const opened = await openLink(token, from)
  if (!opened.ok) return opened
  const { invitation, replies } = opened.value
  const rows = await loadGuests({ invitationId: invitation.id })
  const { name, date } = await live().rooms.read(invitation.eveningId)
  return ok({
    format: 'tableward-reply/1',
    evening: { name, date, place: replies.place },
    invitation: {
      label: invitation.label,
      places: invitation.places,
      email: invitation.email,
      createdAt: invitation.createdAt,
      answeredAt: invitation.answeredAt,
      consentAt: invitation.consentAt,
      keptUntil: replies.keptUntil,
    },
    guests: rows.map((row) => ({ ...guestOf(row), changedAt: row.changedAt, changedBy: row.byGuest ? 'guest' : 'host' })),
  })
}

/** Erases all that is stored of a household, for good; its link opens nothing any more. */
export const eraseReply = async (token: string, from: string): Promise<Result<null, FindRefusal>> => {
  const opened = await openLink(token, from)
  if (!opened.ok) return opened
  const { id, eveningId } = opened.value.invitation
  return inTurn(eveningId, async (): Promise<Result<null, FindRefusal>> => {
    // A host may have taken the invitation away before the turn came: its guests are then no longer this link's to erase.
    const invitation = await live().db.invitation.findUnique({ where: { id } })
    if (!invitation) return fail({ kind: 'unknown' })
    if (!invitation.erasedAt) await eraseHousehold(invitation)
    live().rooms.tellGuests(eveningId)
    return ok(null)
  })
}
