import { randomUUID } from 'node:crypto'
import { copyFileSync, existsSync, mkdirSync, rmSync } from 'node:fs'
import Database from 'libsql'
import type { DataFolder } from '#server/data-folder.ts'
import { appliedTo, withoutLog } from '#server/db/migrate.ts'
import { migrationNames } from '#server/db/schema-engine.ts'
import { settleDatabase } from '#server/db/whole.ts'
import { RefuseStart } from '#server/refuse-start.ts'
import { reasonOf } from '#server/sync/reason.ts'
import { copyDatabase } from './copies.ts'
import { keepClosed } from './keep-closed.ts'

export interface Restored {
  readonly evenings: number
  /** The database as it was before; null when there was none. */
  readonly before: string | null
}

interface How {
  readonly migrations: string
  /** Names what is kept of before: a time without colons. */
  readonly stamp: string
}

/**
 * Puts a backup in the database's place. The folder must be this process's own. Every evening gets a new epoch: devices that
 * know what came after the backup set their copy aside instead of bringing it in. What was closed or erased since stays so.
 * Killed at any moment there is the database of before or the restored one.
 */
export const restoreBackup = (
  { databaseFile, copies }: Pick<DataFolder, 'databaseFile' | 'copies'>,
  backup: string,
  { migrations, stamp }: How,
): Restored => {
  if (!existsSync(backup)) throw new RefuseStart(`There is no file ${backup}.`)
  const next = `${databaseFile}.restored`
  for (const end of ['', '-journal', '-wal', '-shm']) rmSync(`${next}${end}`, { force: true })
  copyBackup(backup, next)
  checkKnown(next, backup, migrationNames(migrations))
  mkdirSync(copies, { recursive: true, mode: 0o700 })
  const before = existsSync(databaseFile) ? setAside(databaseFile, `${copies}/before-restore-${stamp}`) : null
  const evenings = changeNext(next, before?.whole ? before.file : null)
  settleDatabase(next, databaseFile)
  return { evenings, before: before?.file ?? null }
}

const copyBackup = (backup: string, next: string): void => {
  try {
    copyDatabase(backup, next)
  } catch (why) {
    if (isDamage(why)) throw new RefuseStart(`${backup} is not a whole backup of Tableward: take another one.`, { cause: why })
    throw why
  }
}

const isDamage = (why: unknown): boolean => /malformed|not a database|is damaged/.test(reasonOf(why))

const checkKnown = (next: string, backup: string, known: readonly string[]): void => {
  const db = new Database(next)
  try {
    const applied = appliedTo(db)
    if (applied.length === 0) throw new RefuseStart(`${backup} is not a backup of Tableward: take another file.`)
    const beyond = applied.filter((name) => !known.includes(name))
    if (beyond.length > 0)
      throw new RefuseStart(`${backup} was made by a newer Tableward (it has ${beyond.join(', ')}): restore it with that one.`)
  } finally {
    db.close()
  }
}

/** Keeps the database of before, and takes its log away: left beside the restored one, it would be read into the wrong database. */
const setAside = (databaseFile: string, kept: string): { readonly file: string; readonly whole: boolean } => {
  try {
    copyDatabase(databaseFile, `${kept}.db`, (db) => withoutLog(databaseFile, db))
    return { file: `${kept}.db`, whole: true }
  } catch (why) {
    if (!isDamage(why)) throw why
    for (const end of ['', '-wal'])
      if (existsSync(`${databaseFile}${end}`)) copyFileSync(`${databaseFile}${end}`, `${kept}.damaged${end}`)
    for (const end of ['-wal', '-shm']) rmSync(`${databaseFile}${end}`, { force: true })
    return { file: `${kept}.damaged`, whole: false }
  }
}

/** Gives each evening a new epoch, and closes what was closed since; how many evenings there are. */
const changeNext = (next: string, before: string | null): number => {
  const db = new Database(next)
  try {
    db.exec('BEGIN')
    const evenings = db.prepare('SELECT id FROM Evening').all([]) as { id: string }[]
    const give = db.prepare('UPDATE Evening SET epoch = ? WHERE id = ?')
    for (const { id } of evenings) give.run([randomUUID(), id])
    db.exec('COMMIT')
    if (before !== null) keepClosed(db, before)
    // Not even in free pages is what was erased since.
    db.exec('VACUUM')
    return evenings.length
  } finally {
    db.close()
  }
}
