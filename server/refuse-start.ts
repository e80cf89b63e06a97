/** Why the server does not start, in words that say what to do. Everything else that is thrown is a bug. */
export class RefuseStart extends Error {}

const SAYS: Readonly<Record<string, string>> = {
  EACCES: 'it may not be written by this user: give it to the user who starts Tableward, or set DATA_DIR to another folder',
  EPERM: 'it may not be written by this user: give it to the user who starts Tableward, or set DATA_DIR to another folder',
  EROFS: 'it is on a disk that can only be read: set DATA_DIR to a folder on another one',
  ENOTDIR: 'part of its path is a file: set DATA_DIR to a folder',
  EEXIST: 'there is a file of that name: set DATA_DIR to a folder',
  ENOENT: 'the folder that it would be in does not exist: make that first, or set DATA_DIR to another one',
  ENOSPC: 'the disk is full: make room, or set DATA_DIR to a folder on another disk; nothing that was saved is lost',
  EDQUOT: 'your quota of disk space is used up: make room; nothing that was saved is lost',
  SQLITE_FULL: 'the disk is full: make room, or set DATA_DIR to a folder on another disk; nothing that was saved is lost',
  SQLITE_READONLY: 'it may not be written by this user: give it to the user who starts Tableward',
  SQLITE_CANTOPEN: 'the database in it cannot be opened: look at who may read and write its files',
  SQLITE_NOTADB: 'its database file is not a database: put back a copy from the folder copies in it',
  SQLITE_CORRUPT: 'its database file is damaged: put back a copy from the folder copies in it',
}

/** Runs something that writes into the data folder; what a person can put right becomes a refusal that says how. */
export const orRefuse = <T>(folder: string, act: () => T): T => {
  try {
    return act()
  } catch (cause) {
    throw asRefusal(folder, cause)
  }
}

export const asRefusal = (folder: string, cause: unknown): unknown => {
  const code = codeOf(cause)
  // SQLite's extended codes begin with the plain one: SQLITE_CANTOPEN_ISDIR.
  const says = SAYS[code] ?? SAYS[code.split('_').slice(0, 2).join('_')]
  return says ? new RefuseStart(`The data folder ${folder} cannot be used: ${says} (${code}).`, { cause }) : cause
}

/** Errors that come through Prisma or from a thread have lost their code, but not their words. */
const WORDS: readonly (readonly [RegExp, string])[] = [
  [/database or disk is full/, 'SQLITE_FULL'],
  [/readonly database/, 'SQLITE_READONLY'],
  [/unable to open (?:connection|database)/i, 'SQLITE_CANTOPEN'],
  [/file is not a database/, 'SQLITE_NOTADB'],
  [/disk image is malformed/, 'SQLITE_CORRUPT'],
]

const codeOf = (cause: unknown): string => {
  if (!(cause instanceof Error)) return ''
  const code = 'code' in cause ? String(cause.code) : ''
  return code in SAYS ? code : (WORDS.find(([words]) => words.test(cause.message))?.[1] ?? code)
}
