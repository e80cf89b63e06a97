import type { Guest } from '#lib/domain/people.ts'
import { ok, type Result } from '#lib/domain/result.ts'
import { dateAt } from '#lib/domain/time.ts'
import type { Invitation } from '#prisma/client/client.ts'
import { Summary } from '#server/evenings/summary.ts'
import { live } from '#server/live.ts'
import { requireHost } from './may.ts'
import type { GuestRefusal } from './refusal.ts'
import { guestOf, loadGuests } from './rows.ts'

/** A guest, by which link they answer (null: the host writes for them), and who changed their answer last and when. */
export interface TableGuest extends Guest {
  readonly invitation: string | null
  /** RFC 3339; null when nothing was ever changed. */
  readonly changedAt: string | null
  readonly by: 'guest' | 'host'
}

export interface InvitationLine {
  readonly id: string
  /** Empty once the guests erased what they had told. */
  readonly label: string
  readonly places: number
  readonly email: string | null
  /** "expired": seven days after the evening. */
  readonly state: 'waiting' | 'answered' | 'withdrawn' | 'erased' | 'expired'
  readonly createdAt: string
  readonly answeredAt: string | null
  /** They agreed that what they cannot eat is kept. */
  readonly consent: boolean
}

export interface RepliesState {
  /** Guests may change their answers now. */
  readonly open: boolean
  readonly closed: boolean
  readonly answerBy: string | null
  readonly sharesMenu: boolean
  readonly place: string
}

/** All that a host sees of the guests. */
export interface GuestTable {
  readonly guests: readonly TableGuest[]
  readonly invitations: readonly InvitationLine[]
  readonly replies: RepliesState
  /** A mail server is set: letters can be sent from here. */
  readonly mail: boolean
}

/** The guests and their invitations, for hosts. */
export const tableOf = async (userId: string, eveningId: string): Promise<Result<GuestTable, GuestRefusal>> => {
  const host = await requireHost(userId, eveningId)
  if (!host.ok) return host
  const { db, mail } = live()
  const [rows, evening, invitations] = await Promise.all([
    loadGuests({ eveningId }),
    db.evening.findUniqueOrThrow({ where: { id: eveningId }, select: { summary: true, replies: true } }),
    db.invitation.findMany({ where: { eveningId }, orderBy: [{ createdAt: 'asc' }, { id: 'asc' }] }),
  ])
  const summary = summaryOf(evening.summary)
  return ok({
    guests: rows.map((row) => ({
      ...guestOf(row),
      invitation: row.invitationId,
      changedAt: row.changedAt?.toISOString() ?? null,
      by: row.byGuest ? 'guest' : 'host',
    })),
    invitations: invitations.map((invitation) => ({
      id: invitation.id,
      label: invitation.label,
      places: invitation.places,
      email: invitation.email,
      state: stateOf(invitation, summary),
      createdAt: invitation.createdAt.toISOString(),
      answeredAt: invitation.answeredAt?.toISOString() ?? null,
      consent: invitation.consentAt !== null,
    })),
    replies: repliesOf(evening.replies, summary.zone),
    mail: mail !== null,
  })
}

/** Date and zone of an evening, as its summary has them. */
export const summaryOf = (text: string): Summary => Summary.parse(JSON.parse(text))

const DAYS_AFTER = 7

/** A link opens something until seven days after the evening, also when the evening was moved. */
export const isOver = ({ date, zone }: Pick<Summary, 'date' | 'zone'>): boolean => dateAt(zone, Date.now(), -DAYS_AFTER) > date

const stateOf = (invitation: Invitation, summary: Summary): InvitationLine['state'] => {
  if (invitation.erasedAt) return 'erased'
  if (invitation.revokedAt) return 'withdrawn'
  if (invitation.answeredAt) return 'answered'
  return isOver(summary) ? 'expired' : 'waiting'
}

interface StoredReplies {
  readonly closedAt: Date | null
  readonly answerBy: string | null
  readonly sharesMenu: boolean
  readonly place: string
}

export const repliesOf = (stored: StoredReplies | null, zone: string): RepliesState => {
  const { closedAt, answerBy, sharesMenu, place } = stored ?? { closedAt: null, answerBy: null, sharesMenu: false, place: '' }
  const isPast = answerBy !== null && dateAt(zone, Date.now()) > answerBy
  return { open: closedAt === null && !isPast, closed: closedAt !== null, answerBy, sharesMenu, place }
}
