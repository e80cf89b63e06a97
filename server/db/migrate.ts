import { copyFileSync, existsSync, mkdirSync, rmSync } from 'node:fs'
import Database from 'libsql'
import { RefuseStart } from '#server/refuse-start.ts'
import { migrationNames, openEngine, readMigrations } from './schema-engine.ts'
import { settleDatabase } from './whole.ts'

export interface Places {
  readonly databaseFile: string
  /** Where a copy of the database goes before it is changed. */
  readonly copies: string
  readonly schemaFile: string
  readonly migrations: string
  /** Names a copy: a time without colons. */
  readonly stamp: string
}

export interface Migrated {
  readonly applied: readonly string[]
  /** The copy that was made first; null when there was nothing to copy or nothing to apply. */
  readonly copy: string | null
}

/**
 * Brings the database to the schema of this code. The work is done on a copy that takes the database's place when it is
 * whole: a kill at any moment leaves the old database or the new one. The database must not be open meanwhile.
 */
export const migrateDatabase = async (places: Places): Promise<Migrated> => {
  const { databaseFile, migrations } = places
  const copy = existsSync(databaseFile) ? copyIfBehind(places) : null
  if (copy === 'up to date') return { applied: [], copy: null }

  const next = `${databaseFile}.next`
  for (const end of ['', '-journal', '-wal', '-shm']) rmSync(`${next}${end}`, { force: true })
  if (copy) copyFileSync(copy, next)
  const engine = await openEngine(places.schemaFile, next)
  const applied = await engine.apply(readMigrations(migrations)).finally(() => engine.free())
  settleDatabase(next, databaseFile)
  return { applied, copy }
}

/**
 * Copies the database when there are migrations to apply, also what is still in its write-ahead log, and takes that log
 * away: left beside the changed copy, it would be read into the wrong database.
 * All on one connection. A closed one lives on until its statements are collected, and would hold the log.
 */
const copyIfBehind = (places: Places): string | 'up to date' => {
  const { databaseFile, copies } = places
  const known = migrationNames(places.migrations)
  const db = new Database(databaseFile, { timeout: 1000 })
  try {
    const before = appliedTo(db)
    const beyond = before.filter((name) => !known.includes(name))
    if (beyond.length > 0)
      throw new RefuseStart(
        `${databaseFile} was made by a newer Tableward (it has ${beyond.join(', ')}): start that one, or put back a copy from ${copies}.`,
      )
    if (known.every((name) => before.includes(name))) return 'up to date'

    mkdirSync(copies, { recursive: true, mode: 0o700 })
    const copy = `${copies}/${places.stamp}.db`
    rmSync(`${copy}.partly`, { force: true })
    db.prepare('VACUUM INTO ?').run([`${copy}.partly`])
    settleDatabase(`${copy}.partly`, copy)
    withoutLog(databaseFile, db)
    return copy
  } finally {
    db.close()
  }
}

/** Succeeds only when nobody else has the database open. */
export const withoutLog = (databaseFile: string, db: Database.Database): void => {
  try {
    db.exec('PRAGMA journal_mode = DELETE')
  } catch (cause) {
    throw new RefuseStart(`${databaseFile} is open in another program: close that first.`, { cause })
  }
  if (existsSync(`${databaseFile}-wal`)) throw new RefuseStart(`${databaseFile} is open in another program: close that first.`)
}

/** The names of the migrations that a database has. */
export const appliedTo = (db: Database.Database): string[] => {
  const has = db.prepare("SELECT 1 FROM sqlite_schema WHERE name = '_prisma_migrations'").all()
  if (has.length === 0) return []
  const rows = db
    .prepare('SELECT migration_name FROM _prisma_migrations WHERE finished_at IS NOT NULL AND rolled_back_at IS NULL')
    .all() as { migration_name: string }[]
  return rows.map((row) => row.migration_name)
}
