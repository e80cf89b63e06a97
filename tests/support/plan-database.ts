import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'libsql'

export interface PlanDatabase {
  readonly file: string
  /** Rows of an evening and of its members, who are u-NAME and m-NAME. */
  add(eveningId: string, members: readonly string[]): void
  /** What `PRAGMA integrity_check` says. */
  integrity(): string
  count(table: 'PlanUpdate' | 'PlanSnapshot' | 'PlanClient' | 'PlanOp', eveningId: string): number
  remove(): void
}

/** A database of its own with the project's tables, in a folder that is removed at the end. */
export const planDatabase = (folder = mkdtempSync(join(tmpdir(), 'tableward-plan-'))): PlanDatabase => {
  const file = join(folder, 'plans.db')
  const migrations = new URL('../../prisma/migrations/', import.meta.url)
  const withDb = <T>(work: (db: InstanceType<typeof Database>) => T): T => {
    const db = new Database(file, { timeout: 5000 })
    try {
      return work(db)
    } finally {
      db.close()
    }
  }
  withDb((db) => {
    db.exec('PRAGMA journal_mode = WAL')
    const names = readdirSync(migrations, { withFileTypes: true }).filter((entry) => entry.isDirectory())
    for (const { name } of names.toSorted((a, b) => (a.name < b.name ? -1 : 1)))
      db.exec(readFileSync(new URL(`${name}/migration.sql`, migrations), 'utf8'))
  })
  return {
    file,
    add(eveningId, members) {
      withDb((db) => {
        db.prepare('INSERT INTO Evening (id, epoch, summary) VALUES (?, ?, ?)').run([eveningId, 'epoch-1', '{}'])
        for (const name of members) {
          db.prepare('INSERT OR IGNORE INTO User (id, email, name, passwordHash) VALUES (?, ?, ?, ?)').run([
            `u-${name}`,
            `${name}@example.org`,
            name,
            '-',
          ])
          db.prepare('INSERT INTO Member (id, eveningId, userId, role) VALUES (?, ?, ?, ?)').run([
            memberIn(eveningId, name),
            eveningId,
            `u-${name}`,
            'cook',
          ])
        }
      })
    },
    integrity: () =>
      withDb((db) => (db.prepare('PRAGMA integrity_check').get([]) as { integrity_check: string }).integrity_check),
    count: (table, eveningId) =>
      withDb((db) => (db.prepare(`SELECT count(*) AS n FROM ${table} WHERE eveningId = ?`).get([eveningId]) as { n: number }).n),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  }
}

/** The member row of somebody in an evening. */
export const memberIn = (eveningId: string, name: string): string => `m-${name}-${eveningId}`
