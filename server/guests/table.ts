import type { Guest } from '#lib/domain/people.ts'
import { ok, type Result } from '#lib/domain/result.ts'
import { dateAt } from '#lib/domain/time.ts'
import type { Invitation } from '#prisma/client/client.ts'
import { Summary } from '#server/evenings/summary.ts'
import { live } from '#server/live.ts'
import { KEEP_DAYS, keptUntil } from './kept.ts'
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
  /** Days after the evening that guests and their answers are kept, and the last of them: yyyy-mm-dd. */
  readonly keepDays: number
  readonly keptUntil: string
}

/** All that a host sees of the guests. */
export interface GuestTable {
  readonly guests: readonly TableGuest[]
  readonly invitations: readonly InvitationLine[]
  readonly replies: RepliesState
  /** When the guests were erased, as their days were over: RFC 3339. */
  readonly erasedAt: string | null
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
    db.evening.findUniqueOrThrow({
      where: { id: eveningId },
      select: { summary: true, createdAt: true, erasedAt: true, replies: true },
    }),
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
    replies: repliesOf(evening, summary),
    erasedAt: evening.erasedAt?.toISOString() ?? null,
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
  readonly keepDays: number
}

const UNTOLD: StoredReplies = { closedAt: null, answerBy: null, sharesMenu: false, place: '', keepDays: KEEP_DAYS }

export const repliesOf = (
  { replies, createdAt }: { readonly replies: StoredReplies | null; readonly createdAt: Date },
  summary: Pick<Summary, 'date' | 'zone'>,
): RepliesState => {
  const { closedAt, answerBy, sharesMenu, place, keepDays } = replies ?? UNTOLD
  const isPast = answerBy !== null && dateAt(summary.zone, Date.now()) > answerBy
  return {
    open: closedAt === null && !isPast,
    closed: closedAt !== null,
    answerBy,
    sharesMenu,
    place,
    keepDays,
    keptUntil: keptUntil(summary, createdAt, keepDays),
  }
}
