import { setTimeout } from 'node:timers/promises'
import type { Erased } from '#server/backup/copies.ts'
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

/** After rows were deleted: leaves nothing of them in the database, nor in any copy of it. */
export const scrub = async (erased: readonly Erased[]): Promise<void> => {
  await scrubDatabase()
  await live().backups.clean(erased)
}
