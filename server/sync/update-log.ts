import type { Place } from './touched.ts'

/** What is stored of one plan. */
export interface StoredPlan {
  /** The evening row's epoch. */
  readonly epoch: string
  /** Snapshot first, then the updates since, in their order. Empty: the evening has no plan. */
  readonly updates: readonly Uint8Array[]
  /** How many of them, and how many bytes, a compaction would save. */
  readonly sinceSnapshot: { readonly count: number; readonly bytes: number }
  /** The last one's number. */
  readonly seq: number
  /** Which member each Yjs client id belongs to. */
  readonly owners: readonly (readonly [client: number, memberId: string])[]
  readonly ops: readonly StoredOp[]
}

export interface StoredOp {
  readonly op: string
  readonly memberId: string
  /** JSON of an Outcome. */
  readonly outcome: string
}

/** What is stored in one commit, whole or not at all. */
export interface LogEntry {
  readonly bytes: Uint8Array | null
  /** Who sent it; null: the server itself. */
  readonly memberId: string | null
  /** Client ids that from now on belong to that member. */
  readonly clients: readonly number[]
  readonly op: StoredOp | null
  /** Who changed something where; null: nobody but the server. */
  readonly change: Change | null
}

export interface Change {
  readonly by: string
  readonly places: readonly Place[]
}

/**
 * Where plans are kept. Entries of one plan are stored in the order in which they are given. When one could not be stored,
 * every later one of that plan is refused too, until it is loaded again: nobody builds on what is not there.
 */
export interface UpdateLog {
  /** Null when there is no such evening. */
  load(eveningId: string): Promise<StoredPlan | null>
  /** Stores the first snapshot. Rejects when the evening is unknown or has a plan already. */
  create(eveningId: string, bytes: Uint8Array): Promise<void>
  /** Resolves with the entry's number when it is on disk. */
  append(eveningId: string, entry: LogEntry): Promise<number>
  /** Puts the snapshot in place of all updates up to and with `seq`, in one transaction. */
  compact(eveningId: string, bytes: Uint8Array, seq: number): Promise<void>
  close(): Promise<void>
}
