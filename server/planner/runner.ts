import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'

/** One piece of planning. quick: the first answer, in about 100 ms. better: the whole budget, when nobody waits for a first one. */
export interface Slice {
  readonly eveningId: string
  /** That of the problem which `evening` makes. */
  readonly hash: string
  readonly evening: Evening
  readonly kind: 'quick' | 'better'
}

export type Report =
  /** `whole` is false when it was stopped before its budget was spent: good, but not as good as it gets. */
  | { readonly kind: 'order'; readonly order: RunningOrder; readonly whole: boolean }
  /** The planning itself said no: planning the same again would say it again. */
  | { readonly kind: 'refused'; readonly why: string }
  /** The thread is gone, or answered nothing in time. */
  | { readonly kind: 'crashed'; readonly why: string }

/** Where slices are worked out: worker threads in the server, by hand in tests. */
export interface Runner {
  /** How many slices may be under way at once. */
  readonly room: number
  /** Starts a slice; `report` is called once. The answer stops it early: it then reports what it has. */
  start(slice: Slice, report: (report: Report) => void): () => void
  close(): Promise<void>
}
