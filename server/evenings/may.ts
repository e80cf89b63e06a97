import type { Seat } from '#server/live.ts'

// Each permission as a sentence. Somebody without a seat may nothing; what is not said here nobody may.

/** A seat at one evening says nothing about another: the functions that ask have fetched the seat of the evening at hand. */
export const canReadEvening = (seat: Seat | null): seat is Seat => seat !== null

export const canSeeMembers = (seat: Seat | null): seat is Seat => seat !== null

export const canManageMembers = (seat: Seat | null): seat is Seat => seat?.role === 'host'

/** A host takes anybody's seat away; everybody leaves their own. */
export const canRemoveMember = (seat: Seat | null, memberId: string): seat is Seat =>
  seat !== null && (seat.role === 'host' || seat.memberId === memberId)

/** A host makes the link of anybody's seat; everybody that of their own, for another device. */
export const canMakeLink = (seat: Seat | null, memberId: string | null): seat is Seat =>
  seat !== null && (seat.role === 'host' || seat.memberId === memberId)

export const canDeleteEvening = (seat: Seat | null): seat is Seat => seat?.role === 'host'

/** Everybody says for themselves which cook they are; a host says it for others too. */
export const canSetCook = (seat: Seat | null, memberId: string): seat is Seat =>
  seat !== null && (seat.role === 'host' || seat.memberId === memberId)

/** Everybody with a seat may be called for it, on as many devices as they have. */
export const canBeCalled = (seat: Seat | null): seat is Seat => seat !== null

/** Everybody with a seat may have what they do there in their calendar. */
export const canHaveCalendar = (seat: Seat | null): seat is Seat => seat !== null

/** What guests have answered is for hosts alone. */
export const canSeeGuests = (seat: Seat | null): seat is Seat => seat?.role === 'host'

/** Who changed what is for hosts alone. */
export const canSeeHistory = (seat: Seat | null): seat is Seat => seat?.role === 'host'
