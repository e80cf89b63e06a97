import type { GuestRefusal } from '#server/guests/refusal.ts'
import { refusedText } from './refused.ts'

/** Why something about guests was not done, and what to do about it. */
export const guestRefusedText = (refusal: GuestRefusal): string => {
  switch (refusal.kind) {
    case 'not-found':
      return 'This evening is gone, or it is not yours.'
    case 'not-allowed':
      return 'Only the host of this evening sees and changes its guests.'
    case 'invalid':
      return refusal.refusals.map(refusedText).join(' ')
    case 'gone':
      return 'That is no longer there: somebody has taken it away. Look at the list again.'
    case 'withdrawn':
      return 'This invitation was withdrawn, or its guests erased what they had told. Make a new one.'
    case 'too-many':
      return 'That is more people than this invitation, or an evening, holds. Raise its number first.'
    case 'promised':
      return 'Somebody has agreed to have their answer kept for as long as it says now. It can be made shorter, not longer.'
    case 'no-mail':
      return 'The letter could not be sent. Copy the words and send them yourself.'
  }
}
