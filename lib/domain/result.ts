/** An expected outcome: a value, or the failures that a person can act on. Bugs throw instead. */
export type Result<T, E> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: E }

export const ok = <T>(value: T): Result<T, never> => ({ ok: true, value })
export const fail = <E>(error: E): Result<never, E> => ({ ok: false, error })

/** One refused field of a document: where it is ("dishes[2].course") and which rule it broke. */
export interface Refusal {
  readonly path: string
  readonly kind: 'shape' | 'duplicate-id' | 'unknown-id' | 'order' | 'carry-missing' | 'welcome-twice' | 'up-to'
  /** What is wrong, in plain English; the path is not repeated in it. */
  readonly why: string
}
