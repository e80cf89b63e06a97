import { refusedText } from '#app/_words/refused.ts'
import type { Refusal } from '#lib/domain/result.ts'

/** What the server may refuse about an evening and its members. */
export type EveningRefusalKind =
  | { readonly kind: 'not-found' }
  | { readonly kind: 'not-allowed' }
  | { readonly kind: 'invalid'; readonly refusals: readonly Refusal[] }
  | { readonly kind: 'no-such-account' }
  | { readonly kind: 'already-member' }
  | { readonly kind: 'last-host' }
  | { readonly kind: 'unknown-cook' }
  | { readonly kind: 'cook-taken' }

export const eveningRefusalText = (refusal: EveningRefusalKind): string => {
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
