import { pathToFileURL } from 'node:url'
import { PrismaLibSql } from '@prisma/adapter-libsql'
import Database from 'libsql'
import { PrismaClient } from '#prisma/client/client.ts'
import { RefuseStart } from '#server/refuse-start.ts'

/** How long a write waits for another one, in milliseconds. */
export const BUSY_MS = 5000

/**
 * Opens the migrated database. libsql's connections begin with synchronous = FULL and foreign keys on, and the client
 * opens a new one after each transaction: both are looked at here, as a setting made once would not reach them.
 */
export const openDatabase = (file: string): PrismaClient => {
  const first = new Database(file, { timeout: BUSY_MS })
  try {
    first.exec('PRAGMA journal_mode = WAL')
    const found = ['journal_mode', 'synchronous', 'foreign_keys'].map((name) =>
      String(Object.values(first.prepare(`PRAGMA ${name}`).get() as object)[0]),
    )
    if (found.join() !== 'wal,2,1')
      throw new RefuseStart(`${file} cannot be kept safely here (journal, synchronous, foreign keys: ${found.join(', ')}).`)
  } finally {
    first.close()
  }
  return new PrismaClient({ adapter: new PrismaLibSql({ url: pathToFileURL(file).href, timeout: BUSY_MS }) })
}
