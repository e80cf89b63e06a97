import type { Refusal } from '#lib/domain/result.ts'

/** Why something about an evening was not done. An evening where one has no seat is "not-found", as if there were none. */
export type EveningRefusal =
  | { readonly kind: 'not-found' }
  | { readonly kind: 'not-allowed' }
  | { readonly kind: 'invalid'; readonly refusals: readonly Refusal[] }
  | { readonly kind: 'no-such-account' }
  /** Only somebody with an account may do or be that. */
  | { readonly kind: 'needs-account' }
  /** Somebody with an account comes in by it and not by a link. */
  | { readonly kind: 'has-account' }
  | { readonly kind: 'already-member' }
  | { readonly kind: 'last-host' }
  | { readonly kind: 'unknown-cook' }
  | { readonly kind: 'cook-taken' }
  | { readonly kind: 'too-many' }
  /** What was typed to confirm is not the name. */
  | { readonly kind: 'not-the-name' }
