import type { LogEntry, StoredOp, StoredPlan, UpdateLog } from '#server/sync/update-log.ts'

interface Plan {
  epoch: string
  snapshot: { bytes: Uint8Array; seq: number } | null
  updates: { seq: number; bytes: Uint8Array }[]
  owners: [number, string][]
  ops: StoredOp[]
}

/** An update log in memory whose commits are cranked by hand: what is not committed is lost with the process. */
export interface MemoryLog extends UpdateLog {
  /** An evening's row. */
  add(eveningId: string, epoch?: string): void
  /** Puts on disk what was handed in so far, or the first so many of it. */
  commit(most?: number): void
  /** From now on every commit fails, or no longer does. */
  setFull(full: boolean): void
  /** Whether each entry is stored as soon as it is handed in. */
  setEager(eager: boolean): void
  /** The process dies: what was not committed is gone, and nobody hears of it. */
  kill(): void
  readonly waiting: number
}

export const memoryLog = (): MemoryLog => {
  const plans = new Map<string, Plan>()
  const stopped = new Set<string>()
  let seq = 0
  let full = false
  let eager = false
  let waiting: (() => void)[] = []

  const store = (eveningId: string, entry: LogEntry): number => {
    const plan = plans.get(eveningId)
    if (!plan) throw new Error('no such evening')
    if (full) throw new Error('database or disk is full')
    if (entry.clients.some((client) => plan.owners.some(([owned]) => owned === client)))
      throw new Error('a client id has an owner')
    if (entry.op && plan.ops.some((op) => op.op === entry.op?.op)) throw new Error('an operation is stored already')
    for (const client of entry.clients) plan.owners.push([client, entry.memberId ?? ''])
    if (entry.op) plan.ops.push(entry.op)
    if (!entry.bytes) return 0
    seq += 1
    plan.updates.push({ seq, bytes: entry.bytes.slice() })
    return seq
  }

  return {
    get waiting() {
      return waiting.length
    },
    add(eveningId, epoch = 'epoch-1') {
      plans.set(eveningId, { epoch, snapshot: null, updates: [], owners: [], ops: [] })
    },
    commit(most = Number.POSITIVE_INFINITY) {
      for (const run of waiting.splice(0, Math.min(most, waiting.length))) run()
    },
    setFull(next) {
      full = next
    },
    setEager(next) {
      eager = next
    },
    kill() {
      waiting = []
      stopped.clear()
    },
    async load(eveningId): Promise<StoredPlan | null> {
      const plan = plans.get(eveningId)
      if (!plan) return null
      stopped.delete(eveningId)
      const since = plan.updates.map(({ bytes }) => bytes)
      return {
        epoch: plan.epoch,
        updates: plan.snapshot ? [plan.snapshot.bytes, ...since] : since,
        sinceSnapshot: { count: since.length, bytes: since.reduce((sum, bytes) => sum + bytes.length, 0) },
        seq: plan.updates.at(-1)?.seq ?? plan.snapshot?.seq ?? 0,
        owners: [...plan.owners],
        ops: [...plan.ops],
      }
    },
    async create(eveningId, bytes) {
      const plan = plans.get(eveningId)
      if (!plan) throw new Error(`there is no evening ${eveningId}`)
      if (plan.snapshot || plan.updates.length > 0) throw new Error(`the evening ${eveningId} has a plan already`)
      plan.snapshot = { bytes, seq: 0 }
    },
    append: (eveningId, entry) =>
      new Promise((resolve, reject) => {
        const run = () => {
          if (stopped.has(eveningId)) reject(new Error('an earlier update of this plan could not be stored'))
          else
            try {
              resolve(store(eveningId, entry))
            } catch (cause) {
              stopped.add(eveningId)
              reject(cause)
            }
        }
        if (eager) run()
        else waiting.push(run)
      }),
    async compact(eveningId, bytes, upTo) {
      const plan = plans.get(eveningId)
      if (!plan?.snapshot || plan.snapshot.seq > upTo) throw new Error('no snapshot before that')
      if (full) throw new Error('database or disk is full')
      plan.snapshot = { bytes, seq: upTo }
      plan.updates = plan.updates.filter((update) => update.seq > upTo)
    },
    async close() {
      waiting = []
    },
  }
}
