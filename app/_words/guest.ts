import type { Guest } from '#lib/domain/people.ts'
import { needText } from './need.ts'

/** What a guest answered, as it stands after the name. */
export const replyWords: Readonly<Record<Guest['reply'], string>> = {
  yes: 'comes',
  maybe: 'may come',
  no: 'does not come',
  waiting: 'has not answered',
}

export const drinksWords: Readonly<Record<Guest['drinks'], string>> = {
  alcohol: 'drinks alcohol',
  none: 'drinks no alcohol',
  unknown: 'has not said about alcohol',
}

/** "vegetarian", "severe sesame allergy, no alcohol", "eats everything", "needs not known". */
export const needsOf = ({ needs }: Pick<Guest, 'needs'>): string =>
  needs === null ? 'needs not known' : needs.length === 0 ? 'eats everything' : needs.map(needText).join(', ')

/** What stands below a guest's name: "has not answered", "vegetarian; a child", "eats everything; drives". */
export const guestAbout = (guest: Guest): string =>
  guest.reply === 'waiting' && guest.needs === null
    ? replyWords.waiting
    : [
        guest.reply === 'yes' ? '' : replyWords[guest.reply],
        needsOf(guest),
        guest.child ? 'a child' : '',
        guest.drives ? 'drives' : '',
      ]
        .filter(Boolean)
        .join('; ')

/** The name, or what to call somebody whose name is not written. */
export const guestName = ({ name }: Pick<Guest, 'name'>): string => name.trim() || 'a guest without a name'
