import { chmodSync, closeSync, fsyncSync, openSync, renameSync } from 'node:fs'
import { dirname } from 'node:path'
import Database from 'libsql'
import { RefuseStart } from '#server/refuse-start.ts'

/** Throws RefuseStart when the file is not a whole database. */
export const checkWhole = (file: string): void => {
  const db = new Database(file)
  try {
    const integrity = db.prepare('PRAGMA integrity_check').all() as { integrity_check: string }[]
    const orphans = db.prepare('PRAGMA foreign_key_check').all()
    if (integrity.length !== 1 || integrity[0]?.integrity_check !== 'ok' || orphans.length > 0)
      throw new RefuseStart(`${file} is damaged: put back a copy (npm run restore).`)
  } finally {
    db.close()
  }
}

/**
 * Lets a database that was just written take a name: whole, on the disk, and for this user's eyes alone. VACUUM INTO does not
 * wait for the disk itself (sqlite.org/lang_vacuum.html).
 */
export const settleDatabase = (written: string, file: string): void => {
  checkWhole(written)
  chmodSync(written, 0o600)
  sync(written)
  renameSync(written, file)
  sync(dirname(file))
}

const sync = (path: string): void => {
  const fd = openSync(path, 'r')
  try {
    fsyncSync(fd)
  } finally {
    closeSync(fd)
  }
}
