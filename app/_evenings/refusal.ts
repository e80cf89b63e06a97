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
    case 'needs-account':
      return 'That needs an account: an e-mail address and a password, under one’s own name at the top.'
    case 'has-account':
      return 'They have an account: they come in with its e-mail address and password.'
    case 'too-many':
      return 'That is more than an evening holds. Take some away first.'
    case 'not-the-name':
      return 'That is not its name, letter by letter. Nothing was deleted.'
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
