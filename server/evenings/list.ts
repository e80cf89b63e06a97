import { dateAt } from '#lib/domain/time.ts'
import { roleOf } from '#server/auth/seat.ts'
import { live } from '#server/live.ts'
import { Summary } from './summary.ts'

export interface EveningLine extends Readonly<Summary> {
  readonly id: string
  readonly role: 'host' | 'cook'
}

/** The evenings where this user has a seat: today's and coming ones first, the next one on top, then the past ones. */
export const listEvenings = async (userId: string): Promise<readonly EveningLine[]> => {
  const members = await live().db.member.findMany({
    where: { userId, revokedAt: null, evening: { deletedAt: null } },
    include: { evening: { select: { id: true, summary: true } } },
  })
  const now = Date.now()
  const lines = members.map(({ role, evening }) => ({
    ...Summary.parse(JSON.parse(evening.summary)),
    id: evening.id,
    role: roleOf(role),
  }))
  return sortLines(lines, (zone) => dateAt(zone, now))
}

/** `today`: the date that it is in a zone. */
export const sortLines = (lines: readonly EveningLine[], today: (zone: string) => string): readonly EveningLine[] => {
  const isPast = (line: EveningLine) => line.date < today(line.zone)
  const at = (line: EveningLine) => `${line.date} ${line.sitDown} ${line.id}`
  return [...lines].sort((a, b) => {
    if (isPast(a) !== isPast(b)) return isPast(a) ? 1 : -1
    return (at(a) < at(b) ? -1 : 1) * (isPast(a) ? -1 : 1)
  })
}
