import { existsSync, mkdirSync, readdirSync, rmSync } from 'node:fs'
import Database from 'libsql'
import { BUSY_MS } from '#server/db/open.ts'
import { settleDatabase } from '#server/db/whole.ts'
import { reasonOf } from '#server/sync/reason.ts'

// What is done to the files of copies. All of it waits for the disk: a running server has it done in a thread.

/** Rows that were erased: of this table, where these columns have these values. */
export interface Erased {
  readonly table: 'Evening' | 'Guest' | 'GuestWords' | 'Invitation' | 'Member' | 'User'
  readonly where: Readonly<Record<string, string>>
}

/**
 * Copies a database while it is written to, as it is at one moment. Killed at any moment there is the whole copy or none:
 * it has its name only when it is whole and on the disk. `then`: what is done next on the same connection.
 */
export const copyDatabase = (from: string, to: string, then: (db: Database.Database) => void = () => undefined): void => {
  if (!existsSync(from)) throw new Error(`there is no database ${from}`)
  const partly = `${to}.partly`
  for (const end of ['', '-journal']) rmSync(`${partly}${end}`, { force: true })
  const db = new Database(from, { timeout: BUSY_MS })
  try {
    // Not prepared: a statement that is not collected yet would hold the database open after this.
    db.exec(`VACUUM INTO '${partly.replaceAll("'", "''")}'`)
    settleDatabase(partly, to)
    then(db)
  } finally {
    db.close()
  }
}

/** Copies a database into a folder, which is made if need be, and removes all but the newest ones. Gives the copy's file. */
export const keepBackup = (from: string, folder: string, name: string, keep: number): string => {
  mkdirSync(folder, { recursive: true, mode: 0o700 })
  for (const left of readdirSync(folder)) if (BEGUN.test(left)) rmSync(`${folder}/${left}`, { force: true })
  copyDatabase(from, `${folder}/${name}`)
  for (const old of backupNames(folder).slice(0, -keep)) rmSync(`${folder}/${old}`, { force: true })
  return `${folder}/${name}`
}

const BEGUN = /^tableward-[\dTZ-]+\.db\.partly(-journal)?$/
const BACKUP = /^tableward-(\d{4}-\d\d-\d\d)T(\d\d)-(\d\d)-(\d\d)-(\d{3})Z\.db$/

/** How a backup made at this moment is called. */
export const backupName = (ms: number): string => `tableward-${new Date(ms).toISOString().replace(/[:.]/g, '-')}.db`

/** When a backup was made, from its name. */
export const madeAt = (name: string): number => Date.parse(name.replace(BACKUP, '$1T$2:$3:$4.$5Z'))

/** The backups of a folder, oldest first; none when there is no such folder. */
export const backupNames = (folder: string): readonly string[] => namesIn(folder).filter((name) => BACKUP.test(name))

const namesIn = (folder: string): readonly string[] => {
  try {
    return readdirSync(folder).sort()
  } catch (cause) {
    if (cause instanceof Error && 'code' in cause && cause.code === 'ENOENT') return []
    throw cause
  }
}

/** Where copies lie: those of before migrations and restores, in a folder of the server's own; and the backups, which may lie among other files. */
export interface CopyFolders {
  readonly copies: string
  readonly backups: string
}

/** Takes erased rows out of every copy there is, so that no byte of them is left; what is too old to have had them is left alone. */
export const cleanCopies = ({ copies, backups }: CopyFolders, erased: readonly Erased[]): void => {
  const own = namesIn(copies).filter((name) => name.endsWith('.db'))
  const files = new Set([...own.map((name) => `${copies}/${name}`), ...backupNames(backups).map((name) => `${backups}/${name}`)])
  const failed = [...files].flatMap((file) => cleanCopy(file, erased))
  if (failed.length > 0) throw new Error(`not out of every copy, remove these by hand: ${failed.join(', ')}`)
}

/** Gives the file when it could not be done. */
const cleanCopy = (file: string, erased: readonly Erased[]): readonly string[] => {
  const db = new Database(file)
  try {
    // Not by way of a log beside it, which would keep the bytes; nor in pages that are free.
    for (const setting of ['journal_mode = DELETE', 'secure_delete = ON', 'foreign_keys = ON']) db.exec(`PRAGMA ${setting}`)
    const rows = db.prepare("SELECT name FROM sqlite_schema WHERE type = 'table'").all([]) as { name: string }[]
    const tables = new Set(rows.map(({ name }) => name))
    db.exec('BEGIN')
    for (const { table, where } of erased) {
      const columns = Object.keys(where).map((column) => `"${column}" = ?`)
      if (tables.has(table)) db.prepare(`DELETE FROM "${table}" WHERE ${columns.join(' AND ')}`).run(Object.values(where))
    }
    db.exec('COMMIT')
    db.exec('VACUUM')
    return []
  } catch (cause) {
    console.error(`erased rows may still be in the copy ${file}:`, reasonOf(cause))
    return [file]
  } finally {
    db.close()
  }
}
