import { exportEvening } from '#server/evenings/file.ts'
import { live } from '#server/live.ts'

export const ACCOUNT_FORMAT = 'tableward-account/1'

/** All that is stored of one person, and every evening where they have a seat, as a file to keep. Null: there is no such account. */
export const exportAccount = async (userId: string, nowMs: number): Promise<string | null> => {
  const { db } = live()
  const user = await db.user.findUnique({ where: { id: userId } })
  if (!user) return null
  const members = await db.member.findMany({
    where: { userId },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
    include: {
      devices: { select: { endpoint: true, at: true } },
      notices: { select: { kind: true, by: true } },
      feed: { select: { alarm: true, madeAt: true, revokedAt: true } },
      changes: { orderBy: { id: 'asc' }, select: { at: true, root: true, entry: true, field: true, times: true } },
      evening: {
        select: {
          deletedAt: true,
          invitations: { orderBy: { createdAt: 'asc' } },
          took: { where: { userId }, orderBy: { step: 'asc' }, select: { step: true, date: true, written: true, took: true } },
          liked: { where: { userId }, orderBy: { dish: 'asc' }, select: { dish: true, verdict: true, left: true, note: true } },
        },
      },
    },
  })
  const evenings: object[] = []
  // One after the other: each plan is opened for it.
  for (const { id, eveningId, role, cook, createdAt, revokedAt, ...own } of members) {
    const file = await exportEvening(userId, eveningId)
    evenings.push({
      seat: { id, eveningId, role, cook, since: createdAt, until: revokedAt },
      evening: file.ok ? JSON.parse(file.value.text) : null,
      // What hosts know of households that they asked; a link itself is stored nowhere.
      ...(file.ok && role === 'host' && { invitations: own.evening.invitations.map(invitationOf) }),
      devices: own.devices.map(({ endpoint, at }) => ({ service: new URL(endpoint).origin, since: at })),
      toldOf: own.notices,
      calendar: own.feed,
      changes: own.changes,
      took: own.evening.took,
      dishes: own.evening.liked,
    })
  }
  const { name, email } = user
  const account = { name, email, since: user.createdAt }
  return `${JSON.stringify({ format: ACCOUNT_FORMAT, madeAt: new Date(nowMs), account, evenings }, null, 2)}\n`
}

interface StoredInvitation {
  readonly label: string
  readonly email: string | null
  readonly places: number
  readonly createdAt: Date
  readonly answeredAt: Date | null
  readonly consentAt: Date | null
  readonly revokedAt: Date | null
  readonly erasedAt: Date | null
}

const invitationOf = ({ label, email, places, createdAt, answeredAt, consentAt, revokedAt, erasedAt }: StoredInvitation) => ({
  label,
  email,
  places,
  createdAt,
  answeredAt,
  consentAt,
  revokedAt,
  erasedAt,
})
