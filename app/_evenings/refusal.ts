import { refusedText } from '#app/_words/refused.ts'
import type { EveningRefusal } from '#server/evenings/refusal.ts'

/** Why something about an evening was not done, and what to do about it. */
export const eveningRefusalText = (refusal: EveningRefusal): string => {
  switch (refusal.kind) {
    case 'not-found':
      return 'This evening is gone, or it is not yours.'
    case 'not-allowed':
      return 'Only the host of this evening can do that.'
    case 'invalid':
      return refusal.refusals.map(refusedText).join(' ')
    case 'no-such-account':
      return 'Nobody has an account with this e-mail address yet. Ask them to make one, then add them.'
    case 'already-member':
      return 'They are with this evening already.'
    case 'last-host':
      return 'This is its only host. Make somebody else a host first.'
    case 'unknown-cook':
      return 'That cook is no longer in the plan.'
    case 'cook-taken':
      return 'Somebody else is that cook already.'
  }
}
