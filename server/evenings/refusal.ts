import type { Refusal } from '#lib/domain/result.ts'

/** Why something about an evening was not done. An evening where one has no seat is "not-found", as if there were none. */
export type EveningRefusal =
  | { readonly kind: 'not-found' }
  | { readonly kind: 'not-allowed' }
  | { readonly kind: 'invalid'; readonly refusals: readonly Refusal[] }
  | { readonly kind: 'no-such-account' }
  | { readonly kind: 'already-member' }
  | { readonly kind: 'last-host' }
  | { readonly kind: 'unknown-cook' }
  | { readonly kind: 'cook-taken' }
