import { copyFileSync, existsSync, mkdirSync, renameSync, rmSync } from 'node:fs'
import Database from 'libsql'
import { RefuseStart } from '#server/refuse-start.ts'
import { migrationNames, openEngine, readMigrations } from './schema-engine.ts'

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
  const known = migrationNames(migrations)
  const isNew = !existsSync(databaseFile)
  const before = isNew ? [] : appliedTo(databaseFile)
  const beyond = before.filter((name) => !known.includes(name))
  if (beyond.length > 0)
    throw new RefuseStart(
      `${databaseFile} was made by a newer Tableward (it has ${beyond.join(', ')}): start that one, or put back a copy from ${places.copies}.`,
    )
  if (known.every((name) => before.includes(name))) return { applied: [], copy: null }

  const copy = isNew ? null : copyOf(places)
  const next = `${databaseFile}.next`
  removeDatabase(next)
  if (copy) copyFileSync(copy, next)
  const engine = await openEngine(places.schemaFile, next)
  const applied = await engine.apply(readMigrations(migrations)).finally(() => engine.free())
  checkWhole(next)
  renameSync(next, databaseFile)
  return { applied, copy }
}

/** Copies what is committed, also what is still in the write-ahead log, and leaves the database without that log. */
const copyOf = (places: Places): string => {
  mkdirSync(places.copies, { recursive: true, mode: 0o700 })
  const copy = `${places.copies}/${places.stamp}.db`
  const partly = `${copy}.partly`
  rmSync(partly, { force: true })
  withDatabase(places.databaseFile, (db) => {
    db.prepare('VACUUM INTO ?').run([partly])
    // The changed copy takes this file's place: a log left beside it would be read into the wrong database.
    db.pragma('journal_mode = DELETE')
  })
  if (existsSync(`${places.databaseFile}-wal`)) throw new Error(`${places.databaseFile} is open elsewhere`)
  checkWhole(partly)
  renameSync(partly, copy)
  return copy
}

const removeDatabase = (file: string): void => {
  for (const end of ['', '-journal', '-wal', '-shm']) rmSync(`${file}${end}`, { force: true })
}

/** Throws RefuseStart when the file is not a whole database. */
export const checkWhole = (file: string): void => {
  const [integrity, orphans] = withDatabase(file, (db) => [
    db.prepare('PRAGMA integrity_check').all() as { integrity_check: string }[],
    db.prepare('PRAGMA foreign_key_check').all(),
  ])
  if (integrity.length !== 1 || integrity[0]?.integrity_check !== 'ok' || orphans.length > 0)
    throw new RefuseStart(`${file} is damaged: put back a copy from the folder copies beside it.`)
}

const appliedTo = (file: string): string[] =>
  withDatabase(file, (db) => {
    const has = db.prepare("SELECT 1 FROM sqlite_schema WHERE name = '_prisma_migrations'").all()
    if (has.length === 0) return []
    const rows = db
      .prepare('SELECT migration_name FROM _prisma_migrations WHERE finished_at IS NOT NULL AND rolled_back_at IS NULL')
      .all() as { migration_name: string }[]
    return rows.map((row) => row.migration_name)
  })

const withDatabase = <T>(file: string, act: (db: Database.Database) => T): T => {
  const db = new Database(file, { timeout: 5000 })
  try {
    return act(db)
  } finally {
    db.close()
  }
}
