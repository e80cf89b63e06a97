import { readdirSync } from 'node:fs'
import { setTimeout } from 'node:timers/promises'
import Database from 'libsql'
import { live } from '#server/live.ts'

/** How often the log is asked to be emptied while somebody still reads from it, and the milliseconds between. */
const TRIES = 50
const PAUSE = 100

/**
 * Leaves nothing of deleted rows in the database: SQLite keeps their bytes in its free pages and its write-ahead log until
 * they are written over. All is written anew, and the log is emptied. (sqlite.org/lang_vacuum.html, pragma wal_checkpoint)
 */
const scrubDatabase = async (): Promise<void> => {
  const { db } = live()
  await db.$executeRawUnsafe('VACUUM')
  for (let tries = 0; tries < TRIES; tries += 1) {
    const [found] = await db.$queryRaw<{ busy: bigint }[]>`PRAGMA wal_checkpoint(TRUNCATE)`
    if (Number(found?.busy) === 0) return
    await setTimeout(PAUSE)
  }
  console.error('the write-ahead log could not be emptied after an erasure: it is at the next stop')
}

/** Whose rows go out of copies of the database. */
interface Erased {
  readonly eveningId: string
  readonly guests: readonly string[]
  readonly invitation: string | null
}

/** Takes guests out of the copies that were made before migrations; what is too old to have had guests is left alone. */
const scrubCopies = ({ eveningId, guests, invitation }: Erased): void => {
  const { copies } = live()
  for (const name of copyNames(copies)) {
    const db = new Database(`${copies}/${name}`)
    try {
      // Not by way of a log beside it, which would keep the bytes.
      db.exec('PRAGMA journal_mode = DELETE')
      const tables = new Set(
        (db.prepare("SELECT name FROM sqlite_schema WHERE type = 'table'").all([]) as { name: string }[]).map((row) => row.name),
      )
      const drop = (table: string, column: string, id: string) =>
        tables.has(table) && db.prepare(`DELETE FROM "${table}" WHERE eveningId = ? AND ${column} = ?`).run([eveningId, id])
      for (const guest of guests) {
        drop('GuestWords', 'guestId', guest)
        drop('Guest', 'id', guest)
      }
      if (invitation !== null) drop('Invitation', 'id', invitation)
      db.exec('VACUUM')
    } finally {
      db.close()
    }
  }
}

const copyNames = (folder: string): readonly string[] => {
  try {
    return readdirSync(folder).filter((name) => name.endsWith('.db'))
  } catch (cause) {
    // There was never a migration of a database with something in it.
    if (cause instanceof Error && 'code' in cause && cause.code === 'ENOENT') return []
    throw cause
  }
}

/** After rows were deleted: leaves nothing of them in the database, nor of these guests in its copies. */
export const scrub = async (erased: Erased): Promise<void> => {
  await scrubDatabase()
  scrubCopies(erased)
}
