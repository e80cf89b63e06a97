import { setTimeout } from 'node:timers/promises'
import Database from 'libsql'

const PAUSE = 100
const TRIES = 3000

/**
 * Does one thing at a time to the copies of a data folder, also when a command of its own process makes one: what is erased
 * must be out of every copy, and one that is being made would not be seen. Waits five minutes at the most.
 * The lock is a transaction on a file of its own, which the operating system lets go of however the process ends.
 */
export const holdCopies = async <T>(dataFolder: string, work: () => Promise<T>): Promise<T> => {
  const held = new Database(`${dataFolder}/copies-lock.db`, { timeout: 0 })
  try {
    for (let tries = 1; !hasTaken(held); tries += 1) {
      if (tries === TRIES) throw new Error('another program is busy with the copies of the database')
      await setTimeout(PAUSE)
    }
    return await work()
  } finally {
    held.close()
  }
}

const hasTaken = (held: Database.Database): boolean => {
  try {
    held.exec('BEGIN EXCLUSIVE')
    return true
  } catch (cause) {
    if (cause instanceof Error && 'code' in cause && String(cause.code).startsWith('SQLITE_BUSY')) return false
    throw cause
  }
}
