import type { Evening } from '#lib/domain/evening.ts'
import type { Drink, Guest } from '#lib/domain/people.ts'

/** Why nobody suggests alcohol to a guest. */
export type NoAlcohol = 'child' | 'drives' | 'pregnant' | 'abstains' | 'not-known'

export type MayPour = { readonly kind: 'may' } | { readonly kind: 'none'; readonly because: readonly NoAlcohol[] }

const PREGNANT = /pregnan|breast-?feed/
const ABSTAINS = /alcohol|halal/

/**
 * Whether alcohol is suggested to a guest: only to a grown-up who comes or may come, has said that they drink it, does not drive, has
 * answered about their needs and has none against it, however slight. What is not known counts against it.
 */
export const mayPour = (guest: Guest): MayPour => {
  const has = (words: RegExp) => guest.needs?.some(({ need }) => words.test(need)) ?? false
  const because: NoAlcohol[] = [
    ...(guest.child ? (['child'] as const) : []),
    ...(guest.drives ? (['drives'] as const) : []),
    ...(has(PREGNANT) ? (['pregnant'] as const) : []),
    ...(guest.drinks === 'none' || has(ABSTAINS) ? (['abstains'] as const) : []),
    ...(guest.drinks === 'unknown' || guest.needs === null || guest.reply === 'waiting' ? (['not-known'] as const) : []),
  ]
  return because.length === 0 ? { kind: 'may' } : { kind: 'none', because }
}

/**
 * What a guest is poured with a course: the first that has alcohol where alcohol may be suggested, otherwise the first that has none at
 * all. Null when there is neither. A drink called one without, but of some strength, is for nobody who is to have none.
 */
export const pourFor = (drinks: readonly Drink[], guest: Guest): Drink | null => {
  const plain = drinks.find(({ abv }) => abv === 0) ?? null
  return mayPour(guest).kind === 'may' ? (drinks.find(({ abv }) => abv > 0) ?? plain) : plain
}

/** The guests to whom alcohol may be suggested, of those who have not said no. */
export const drinkers = (guests: readonly Guest[]): readonly Guest[] =>
  guests.filter((guest) => guest.reply !== 'no' && mayPour(guest).kind === 'may')

/** The courses with a drink that has alcohol and none that has none at all: somebody would have nothing to drink there. */
export const dryGaps = ({ courses, drinks }: Pick<Evening, 'courses' | 'drinks'>): readonly string[] =>
  courses
    .filter(({ id }) => drinks.some(({ course, abv }) => course === id && abv > 0))
    .filter(({ id }) => !drinks.some(({ course, abv }) => course === id && abv === 0))
    .map(({ id }) => id)
