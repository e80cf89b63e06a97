import Database from 'libsql'
import { reasonOf } from './reason.ts'
import type { LogEntry, StoredOp, StoredPlan } from './update-log.ts'

/** What became of one entry: its number, or why it is not stored. */
export type Appended = { readonly ok: true; readonly seq: number } | { readonly ok: false; readonly why: string }

export interface Append {
  readonly eveningId: string
  readonly entry: LogEntry
}

interface UpdateRow {
  readonly seq: number
  readonly bytes: Buffer
}

/** The plan's tables, read and written on one connection of their own. Everything here blocks: it runs in a worker thread. */
export interface PlanTables {
  load(eveningId: string): StoredPlan | null
  create(eveningId: string, bytes: Uint8Array): void
  /** Stores entries in one transaction. Those of a plan of which an earlier one failed are refused. */
  append(entries: readonly Append[]): Appended[]
  compact(eveningId: string, bytes: Uint8Array, seq: number): void
  close(): void
}

/** The database's busy timeout: the other connection of this process writes too, briefly. */
const BUSY_MS = 5000

/** Changes of one place by one person are told together when they fall into one span. */
const SPAN_MS = 10 * 60_000

/** So many of an evening's changes can be looked up; older ones are forgotten. */
const CHANGES_KEPT = 3000

/** A command is known by its operation for sixty days: a device that was away for longer asks it as a new one. */
const OPS_KEPT_MS = 60 * 86_400_000

export const openPlanTables = (databaseFile: string): PlanTables => {
  const db = new Database(databaseFile, { timeout: BUSY_MS })
  db.exec('PRAGMA journal_mode = WAL')
  db.exec('PRAGMA synchronous = FULL')
  db.exec('PRAGMA foreign_keys = ON')
  const sql = {
    epoch: db.prepare('SELECT epoch FROM Evening WHERE id = ? AND deletedAt IS NULL'),
    snapshot: db.prepare('SELECT bytes, seq FROM PlanSnapshot WHERE eveningId = ?'),
    updates: db.prepare('SELECT seq, bytes FROM PlanUpdate WHERE eveningId = ? AND seq > ? ORDER BY seq'),
    anyUpdate: db.prepare('SELECT seq FROM PlanUpdate WHERE eveningId = ? LIMIT 1'),
    owners: db.prepare('SELECT clientId, memberId FROM PlanClient WHERE eveningId = ?'),
    ops: db.prepare('SELECT op, memberId, outcome FROM PlanOp WHERE eveningId = ?'),
    addUpdate: db.prepare('INSERT INTO PlanUpdate (eveningId, bytes, memberId, at) VALUES (?, ?, ?, ?)'),
    addOwner: db.prepare('INSERT INTO PlanClient (eveningId, clientId, memberId, at) VALUES (?, ?, ?, ?)'),
    addOp: db.prepare('INSERT INTO PlanOp (eveningId, op, memberId, outcome, at) VALUES (?, ?, ?, ?, ?)'),
    addSnapshot: db.prepare('INSERT INTO PlanSnapshot (eveningId, bytes, seq, at) VALUES (?, ?, 0, ?)'),
    setSnapshot: db.prepare('UPDATE PlanSnapshot SET bytes = ?, seq = ?, at = ? WHERE eveningId = ? AND seq <= ?'),
    dropOps: db.prepare('DELETE FROM PlanOp WHERE eveningId = ? AND at < ?'),
    addChange:
      db.prepare(`INSERT INTO PlanChange (eveningId, memberId, root, entry, field, span, times, at) VALUES (?, ?, ?, ?, ?, ?, 1, ?)
      ON CONFLICT (eveningId, span, memberId, root, entry, field) DO UPDATE SET times = times + 1, at = excluded.at`),
    dropChanges: db.prepare(`DELETE FROM PlanChange WHERE eveningId = ? AND id <=
      (SELECT id FROM PlanChange WHERE eveningId = ? ORDER BY id DESC LIMIT 1 OFFSET ?)`),
    dropUpdates: db.prepare('DELETE FROM PlanUpdate WHERE eveningId = ? AND seq <= ?'),
  }
  const stopped = new Set<string>()
  const at = (ms = Date.now()) => new Date(ms).toISOString()

  const transact = <T>(work: () => T): T => {
    db.exec('BEGIN IMMEDIATE')
    try {
      const value = work()
      db.exec('COMMIT')
      return value
    } catch (cause) {
      // A full disk may have rolled back by itself.
      if (db.inTransaction) db.exec('ROLLBACK')
      throw cause
    }
  }

  const store = ({ eveningId, entry }: Append): number => {
    // An array always: a lone buffer as parameter ends the process.
    for (const client of entry.clients) sql.addOwner.run([eveningId, String(client), entry.memberId, at()])
    if (entry.op) sql.addOp.run([eveningId, entry.op.op, entry.op.memberId, entry.op.outcome, at()])
    if (!entry.bytes) return 0
    for (const { root, entry: id, field } of entry.change?.places ?? [])
      sql.addChange.run([eveningId, entry.change?.by ?? null, root, id, field, Math.floor(Date.now() / SPAN_MS), at()])
    return Number(sql.addUpdate.run([eveningId, Buffer.from(entry.bytes), entry.memberId, at()]).lastInsertRowid)
  }

  const storeOrStop = (append: Append): Appended => {
    if (stopped.has(append.eveningId)) return { ok: false, why: 'an earlier update of this plan could not be stored' }
    db.exec('SAVEPOINT entry')
    try {
      const seq = store(append)
      db.exec('RELEASE entry')
      return { ok: true, seq }
    } catch (cause) {
      if (!db.inTransaction) throw cause
      db.exec('ROLLBACK TO entry')
      db.exec('RELEASE entry')
      stopped.add(append.eveningId)
      return { ok: false, why: reasonOf(cause) }
    }
  }

  return {
    load(eveningId) {
      const evening = sql.epoch.get([eveningId]) as { epoch: string } | undefined
      if (!evening) return null
      stopped.delete(eveningId)
      const snapshot = sql.snapshot.get([eveningId]) as UpdateRow | undefined
      const rows = sql.updates.all([eveningId, snapshot?.seq ?? 0]) as UpdateRow[]
      const owners = sql.owners.all([eveningId]) as { clientId: string; memberId: string }[]
      const ops = sql.ops.all([eveningId]) as StoredOp[]
      const updates = rows.map((row) => new Uint8Array(row.bytes))
      return {
        epoch: evening.epoch,
        updates: snapshot ? [new Uint8Array(snapshot.bytes), ...updates] : updates,
        sinceSnapshot: { count: updates.length, bytes: updates.reduce((sum, update) => sum + update.length, 0) },
        seq: rows.at(-1)?.seq ?? snapshot?.seq ?? 0,
        owners: owners.map((row) => [Number(row.clientId), row.memberId]),
        ops: ops.map(({ op, memberId, outcome }) => ({ op, memberId, outcome })),
      }
    },
    create(eveningId, bytes) {
      transact(() => {
        if (!sql.epoch.get([eveningId])) throw new Error(`there is no evening ${eveningId}`)
        if (sql.snapshot.get([eveningId]) || sql.anyUpdate.get([eveningId]))
          throw new Error(`the evening ${eveningId} has a plan already`)
        sql.addSnapshot.run([eveningId, Buffer.from(bytes), at()])
      })
    },
    append(entries) {
      try {
        return transact(() => entries.map(storeOrStop))
      } catch (cause) {
        for (const { eveningId } of entries) stopped.add(eveningId)
        return entries.map(() => ({ ok: false, why: reasonOf(cause) }))
      }
    },
    compact(eveningId, bytes, seq) {
      transact(() => {
        if (sql.setSnapshot.run([Buffer.from(bytes), seq, at(), eveningId, seq]).changes !== 1)
          throw new Error(`the evening ${eveningId} has no snapshot before update ${seq}`)
        sql.dropUpdates.run([eveningId, seq])
        sql.dropChanges.run([eveningId, eveningId, CHANGES_KEPT])
        sql.dropOps.run([eveningId, at(Date.now() - OPS_KEPT_MS)])
      })
    },
    close() {
      db.close()
    },
  }
}
