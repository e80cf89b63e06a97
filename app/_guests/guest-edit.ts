import type { At } from '#lib/domain/atoms.ts'
import { type Guest, UNANSWERED } from '#lib/domain/people.ts'

/** A change of what is written of a guest; `arrives: null` for with the others. */
export type GuestEdit = Partial<Omit<Guest, 'id' | 'arrives'>> & { readonly arrives?: At | null }

/** Somebody who has not answered and of whom nothing is known: nothing counts as safe for them. */
export const newGuest = (name: string): Omit<Guest, 'id'> => ({ ...UNANSWERED, name })

/** What a child eats until somebody says otherwise: half a portion (common practice, no source). */
export const usualPortion = (child: boolean): number => (child ? 0.5 : 1)

/** The guest with the change made. */
export const changedGuest = (guest: Guest, { arrives, ...edit }: GuestEdit): Guest => {
  const { arrives: before, ...rest } = { ...guest, ...edit }
  const at = arrives === undefined ? before : (arrives ?? undefined)
  return { ...rest, ...(at === undefined ? {} : { arrives: at }) }
}
