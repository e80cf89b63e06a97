import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import type { Start } from '#lib/order/start.ts'
import type { Stage } from './stage.ts'

/** One stage of planning one evening. */
export interface Slice {
  readonly eveningId: string
  /** That of the problem which `evening` makes. */
  readonly hash: string
  readonly evening: Evening
  readonly kind: Stage
  readonly start: Start
  /** What the stages before have come to. */
  readonly order: RunningOrder | null
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
  /** Whether it can do the last stage. */
  readonly canProve: boolean
  /** Starts a slice; `report` is called once. The answer stops it early: it then reports what it has. */
  start(slice: Slice, report: (report: Report) => void): () => void
  close(): Promise<void>
}
