import { randomBytes } from 'node:crypto'
import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  statSync,
  writeFileSync,
  writeSync,
} from 'node:fs'
import Database from 'libsql'
import { orRefuse, RefuseStart } from './refuse-start.ts'

export interface DataFolder {
  readonly path: string
  readonly databaseFile: string
  /** Where copies of the database go before it is changed. */
  readonly copies: string
  /** Signs the sessions; made at first start. */
  readonly secret: string
  /** Lets another process have the folder. */
  release(): void
}

/** Makes the data folder if need be and takes it for this process alone. Throws RefuseStart when it cannot be had. */
export const openDataFolder = (path: string, givenSecret: string | null): DataFolder =>
  orRefuse(path, () => {
    // Not recursive: a mistyped path is told, not built.
    if (!existsSync(path)) mkdirSync(path, { mode: 0o700 })
    if (!statSync(path).isDirectory()) throw new RefuseStart(`The data folder ${path} is not a folder: set DATA_DIR to one.`)
    const release = lock(path)
    return {
      path,
      databaseFile: `${path}/tableward.db`,
      copies: `${path}/copies`,
      secret: givenSecret ?? secretOf(path),
      release,
    }
  })

/**
 * The lock is a transaction on a database file of its own. The operating system lets go of it when the process ends,
 * however it ends, so there is no stale lock and no guessing by process numbers.
 * Nothing else in this process may open lock.db: closing a file drops the process's locks on it.
 */
const lock = (path: string): (() => void) => {
  const held = new Database(`${path}/lock.db`, { timeout: 0 })
  try {
    held.exec('BEGIN EXCLUSIVE')
  } catch (cause) {
    held.close()
    if (!isBusy(cause)) throw cause
    const holder = existsSync(`${path}/lock.pid`) ? ` (process ${readFileSync(`${path}/lock.pid`, 'utf8').trim()})` : ''
    throw new RefuseStart(
      `Tableward already runs on the data folder ${path}${holder}. Stop it first, or set DATA_DIR to another folder.`,
    )
  }
  writeFileSync(`${path}/lock.pid`, `${process.pid}\n`)
  return () => held.close()
}

const isBusy = (cause: unknown): boolean =>
  cause instanceof Error && 'code' in cause && String(cause.code).startsWith('SQLITE_BUSY')

const secretOf = (path: string): string => {
  const file = `${path}/secret`
  if (existsSync(file)) {
    const secret = readFileSync(file, 'utf8').trim()
    if (secret.length >= 32) return secret
    throw new RefuseStart(`${file} is not a secret of Tableward: delete it and everybody signs in again.`)
  }
  const secret = randomBytes(32).toString('base64url')
  writePrivately(file, `${secret}\n`)
  return secret
}

/** Writes a file that only this user may read: whole or not at all, and on the disk when it returns. */
export const writePrivately = (file: string, text: string): void => {
  const fd = openSync(`${file}.new`, 'w', 0o600)
  try {
    writeSync(fd, text)
    fsyncSync(fd)
  } finally {
    closeSync(fd)
  }
  renameSync(`${file}.new`, file)
}
