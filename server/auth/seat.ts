import { live, type Seat } from '#server/live.ts'

/** This user's seat at the evening; null when there is none, it was taken away, or the evening is gone. */
export const seatOf = async (userId: string, eveningId: string): Promise<Seat | null> => {
  const member = await live().db.member.findUnique({
    where: { eveningId_userId: { eveningId, userId } },
    include: { user: true, evening: true },
  })
  if (!member || member.revokedAt || member.evening.deletedAt) return null
  return {
    eveningId,
    memberId: member.id,
    userId,
    name: member.user.name,
    role: roleOf(member.role),
    cook: member.cook,
  }
}

export const roleOf = (role: string): 'host' | 'cook' => (role === 'host' ? 'host' : 'cook')
