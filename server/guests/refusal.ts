import type { Refusal } from '#lib/domain/result.ts'

/** Why something about guests was not done. An evening where one has no seat is "not-found", as if there were none. */
export type GuestRefusal =
  | { readonly kind: 'not-found' }
  | { readonly kind: 'not-allowed' }
  | { readonly kind: 'invalid'; readonly refusals: readonly Refusal[] }
  /** The guest or the invitation is no longer there. */
  | { readonly kind: 'gone' }
  /** The invitation was withdrawn, or its guests erased what they had told. */
  | { readonly kind: 'withdrawn' }
  | { readonly kind: 'too-many' }
  /** Guests were told an earlier day when they agreed that their answers are kept. */
  | { readonly kind: 'promised' }
  /** No mail server is set, or the invitation has no address. */
  | { readonly kind: 'no-mail' }
