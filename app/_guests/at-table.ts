import type { Cook } from '#lib/domain/kitchen.ts'
import type { Guest } from '#lib/domain/people.ts'

/** A place at the table. A cook who eats has one; `awaited`: nobody has said yes or no. */
export interface Place {
  readonly key: string
  readonly name: string
  readonly who: 'guest' | 'cook'
  readonly standing: 'comes' | 'may-come' | 'awaited'
}

export interface AtTable {
  readonly places: readonly Place[]
  /** How many have said yes, cooks who eat among them. */
  readonly coming: number
  /** How many have said maybe, or nothing. */
  readonly open: number
  /** What those who come eat, in portions. */
  readonly portions: number
}

const STANDING = { yes: 'comes', maybe: 'may-come', waiting: 'awaited' } as const

const same = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase()

/** Who sits at the table. A cook whose name stands among the guests too is one person. */
export const atTable = (guests: readonly Guest[], cooks: readonly Cook[]): AtTable => {
  const own = cooks.filter((cook) => cook.eats && !guests.some((guest) => guest.reply !== 'no' && same(guest.name, cook.name)))
  const seated = guests.flatMap((guest): Place[] =>
    guest.reply === 'no' ? [] : [{ key: guest.id, name: guest.name, who: 'guest', standing: STANDING[guest.reply] }],
  )
  const places = [...own.map((cook): Place => ({ key: cook.id, name: cook.name, who: 'cook', standing: 'comes' })), ...seated]
  const coming = places.filter((place) => place.standing === 'comes').length
  const portions = guests.filter((guest) => guest.reply === 'yes').reduce((sum, guest) => sum + guest.portion, own.length)
  return { places, coming, open: places.length - coming, portions: Math.round(portions * 1000) / 1000 }
}

/** The number of covers that the answers speak for; null when the evening's own agrees with them. */
export const coversWanted = ({ coming, open }: Pick<AtTable, 'coming' | 'open'>, covers: number): number | null => {
  if (coming > covers) return Math.min(coming, 60)
  const most = coming + open
  return most < covers && most > 0 ? most : null
}
